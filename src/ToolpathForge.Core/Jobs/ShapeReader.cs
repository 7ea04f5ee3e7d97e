using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads a shape table by the questions of its shape.</summary>
internal static class ShapeReader
{
    /// <summary>The shape with every question answered; null when a finding says why not.</summary>
    /// <param name="table">The table.</param>
    /// <param name="width">Design width, mm; null while it is not known.</param>
    /// <param name="context">The file.</param>
    internal static ShapeSpec? Read(TableValue table, double? width, TableContext context)
    {
        Shape? shape = table.Find("kind")?.Value is TextValue kind ? ShapeList.All.FirstOrDefault(s => s.Id == kind.Text) : null;
        if (shape is null)
        {
            // Without its kind no other key can be judged.
            Fields.Read(table with { Entries = [.. table.Entries.Where(e => e.Name == "kind")] }, JobKeys.ShapeTable(null), context);
            return null;
        }

        TableKeys keys = JobKeys.ShapeTable(shape);
        var fields = Fields.Read(table, keys, context);
        bool sound = fields.IsSound && width is not null;
        var answers = ImmutableDictionary.CreateBuilder<string, Answer>(StringComparer.Ordinal);
        foreach (Question question in shape.Questions.Where(q => fields.Has(q.Key)))
        {
            FieldValue value = fields[question.Key];
            if (width is { } w && value.IsShare)
            {
                sound &= ShareInRange(value, keys.Find(question.Key)!, w, context);
            }

            answers[question.Key] = new Answer(
                question.Kind == AnswerKind.Size ? new Measure(value.Amount, value.IsShare) : default,
                question.Kind == AnswerKind.Angle ? new Angle(value.Amount) : default,
                value.Text,
                value.At);
        }

        return sound ? new ShapeSpec(shape, answers.ToImmutable(), table.At) : null;
    }

    private static bool ShareInRange(FieldValue value, Key key, double width, TableContext context)
    {
        double size = value.Amount * width;
        if (size >= key.Least && size <= key.Most)
        {
            return true;
        }

        bool small = size < key.Least;
        context.Add(FieldReader.RangeFinding(small, key, value.At, size, small ? key.Least : key.Most));
        return false;
    }
}
