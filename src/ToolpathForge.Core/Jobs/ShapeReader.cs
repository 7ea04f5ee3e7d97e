using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads a shape table by the questions of its shape.</summary>
internal static class ShapeReader
{
    /// <summary>The shape with its questions answered; null when a finding says why not.</summary>
    /// <param name="table">The table.</param>
    /// <param name="width">Design width, mm; null while it is not known.</param>
    /// <param name="drawings">Where drawings come from.</param>
    /// <param name="context">The file.</param>
    internal static ShapeSpec? Read(TableValue table, double? width, IDrawings drawings, TableContext context)
    {
        Shape? shape = Named(table, ShapeList.All, s => s.Id);
        if (shape is null)
        {
            return WithoutKind<ShapeSpec>(table, JobKeys.ShapeTable(null), context);
        }

        return Answers(table, JobKeys.ShapeTable(shape), shape.Questions, width, drawings, context) is { } answers
            ? new ShapeSpec(shape, answers, table.At)
            : null;
    }

    private static PartSpec? ReadPart(TableValue table, ImmutableArray<ShapePart> kinds, double? width, IDrawings drawings, TableContext context)
    {
        ShapePart? part = Named(table, kinds, p => p.Id);
        if (part is null)
        {
            return WithoutKind<PartSpec>(table, JobKeys.PartTable(null, kinds), context);
        }

        return Answers(table, JobKeys.PartTable(part, kinds), part.Questions, width, drawings, context) is { } answers
            ? new PartSpec(part, answers, table.At)
            : null;
    }

    private static T? Named<T>(TableValue table, ImmutableArray<T> all, Func<T, string> id)
        where T : class =>
        table.Find("kind")?.Value is TextValue kind ? all.FirstOrDefault(t => id(t) == kind.Text) : null;

    // Without its kind no other key can be judged.
    private static T? WithoutKind<T>(TableValue table, TableKeys keys, TableContext context)
        where T : class
    {
        Fields.Read(table with { Entries = [.. table.Entries.Where(e => e.Name == "kind")] }, keys, context);
        return null;
    }

    private static ImmutableDictionary<string, Answer>? Answers(
        TableValue table, TableKeys keys, ImmutableArray<Question> questions, double? width, IDrawings drawings, TableContext context)
    {
        var fields = Fields.Read(table, keys, context);
        bool sound = fields.IsSound && width is not null;
        var answers = ImmutableDictionary.CreateBuilder<string, Answer>(StringComparer.Ordinal);
        foreach (Question question in questions.Where(q => fields.Has(q.Key)))
        {
            FieldValue value = fields[question.Key];
            if (width is { } w && value.IsShare)
            {
                sound &= ShareInRange(value, keys.Find(question.Key)!, w, context);
            }

            ImmutableArray<PartSpec?> parts = question.Kind == AnswerKind.Parts ? [.. value.Tables.Select(t => ReadPart(t, question.PartKinds, width, drawings, context))] : [];
            sound &= !parts.Contains(null);
            LineOfDrawing? line = question.Kind == AnswerKind.Drawing && fields.IsSound ? LineReader.Read(fields, question.Key, drawings, context) : null;
            sound &= question.Kind != AnswerKind.Drawing || line is not null;
            answers[question.Key] = new Answer(
                question.Kind is AnswerKind.Size or AnswerKind.Number or AnswerKind.Length or AnswerKind.Flag ? new Measure(value.Amount, value.IsShare) : default,
                question.Kind == AnswerKind.Angle ? new Angle(value.Amount) : default,
                value.Text,
                value.At)
            {
                Parts = [.. parts.OfType<PartSpec>()],
                Line = line,
            };
        }

        return sound ? answers.ToImmutable() : null;
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
