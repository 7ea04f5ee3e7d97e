using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Gets a drawing that a table names, and turns down one that nothing can be cut from.</summary>
internal static class NamedDrawing
{
    private const int MostListed = 20;

    /// <summary>What the drawing holds; null when a finding says why it cannot be had.</summary>
    /// <param name="fields">A table with the keys layer, unit and gap of <see cref="OutlineKeys.Drawing"/>.</param>
    /// <param name="key">The key that names the drawing.</param>
    /// <param name="drawings">Where drawings come from.</param>
    /// <param name="context">The file.</param>
    /// <param name="inMillimetres">Whether a drawing without a unit is turned down.</param>
    internal static DrawingContents? Read(Fields fields, string key, IDrawings drawings, TableContext context, bool inMillimetres)
    {
        if (!fields.Has(key))
        {
            return null;
        }

        string name = fields.Text(key);
        string? layer = fields.Has("layer") ? fields.Text("layer") : null;
        DrawingAnswer answer = drawings.Find(new DrawingRequest(name, fields.Has("unit") ? fields.Text("unit") : null, layer, fields.AmountOrNull("gap")));
        foreach (Finding finding in answer.Findings)
        {
            context.Add(finding.Place == Place.None ? finding with { Place = fields.Where(key) } : finding);
        }

        var file = Arg.Of("file", TextPiece.Short(name));
        if (answer.Contents is not { } contents)
        {
            if (answer.Findings.IsEmpty)
            {
                context.Add(Finding.Of(DrawingFindings.Missing, fields.Where(key), file));
            }

            return null;
        }

        if (layer is not null && !contents.Layers.Contains(layer, StringComparer.Ordinal))
        {
            context.Add(UnknownLayer(layer, contents.Layers, fields.Where("layer"), file));
            return null;
        }

        if (inMillimetres && !contents.UnitIsKnown)
        {
            context.Add(Finding.Of(DrawingFindings.UnitNeeded, fields.Where(key), file));
            return null;
        }

        return answer.Findings.Any(f => f.Kind.Severity == Severity.Stop) ? null : contents;
    }

    private static Finding UnknownLayer(string layer, ImmutableArray<string> layers, Place at, Arg file)
    {
        var text = Arg.Of("text", TextPiece.Short(layer));
        if (NearWord.Find(layer, layers) is { } near)
        {
            return Finding.Of(DrawingFindings.LayerUnknownNear, at, file, text, Arg.Of("near", TextPiece.Short(near)));
        }

        string words = layers.IsEmpty ? "none" : string.Join(", ", layers.Take(MostListed).Select(TextPiece.Short)) + (layers.Length > MostListed ? " and more" : "");
        return Finding.Of(DrawingFindings.LayerUnknown, at, file, text, Arg.Of("words", words));
    }
}
