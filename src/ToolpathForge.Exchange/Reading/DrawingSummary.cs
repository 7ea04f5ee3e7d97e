using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Reading;

/// <summary>What a drawing holds, without its curves.</summary>
/// <param name="Format">The form of the file.</param>
/// <param name="Unit">Its unit; null when it states none.</param>
/// <param name="Kinds">How many of each kind were read, by kind.</param>
/// <param name="Layers">How many entities lie on each layer that holds any, by name.</param>
/// <param name="Box">The box round the ends of all curves, mm; in the drawing's own units when it states none.</param>
/// <param name="Ignored">What was left alone.</param>
/// <param name="Repairs">How many repairs it took.</param>
/// <param name="Findings">What is wrong or worth knowing, repairs among them.</param>
public sealed record DrawingSummary(
    string Format,
    DrawingUnit? Unit,
    ImmutableArray<(string Kind, int Count)> Kinds,
    ImmutableArray<(string Layer, int Count)> Layers,
    Box2 Box,
    ImmutableArray<IgnoredCount> Ignored,
    int Repairs,
    ImmutableArray<Finding> Findings)
{
    internal static DrawingSummary Of(ReadDrawing drawing)
    {
        Box2 box = Box2.Empty;
        foreach (Curve curve in drawing.Entities.SelectMany(e => e.Path.Curves))
        {
            box = box.Including(curve.Start).Including(curve.End);
        }

        return new DrawingSummary(
            drawing.Format,
            drawing.Unit,
            Counted(drawing.Entities.Select(e => e.Kind)),
            Counted(drawing.Entities.Select(e => e.Layer)),
            box,
            drawing.Ignored,
            drawing.Repairs.Length,
            [.. drawing.Repairs, .. drawing.Findings]);
    }

    private static ImmutableArray<(string Name, int Count)> Counted(IEnumerable<string> names) =>
        [.. names.GroupBy(n => n, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => (g.Key, g.Count()))];
}
