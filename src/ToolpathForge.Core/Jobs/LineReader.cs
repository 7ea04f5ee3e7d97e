using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads the one open line of a drawing that a shape is made of.</summary>
internal static class LineReader
{
    /// <summary>Everything that looks at a shape compares each of its parts with every other.</summary>
    private const int MostParts = 2000;

    private const int MostListed = 5;

    /// <summary>The line; null when a finding says why there is none that could be taken.</summary>
    /// <param name="fields">The shape's table.</param>
    /// <param name="key">The key that names the drawing.</param>
    /// <param name="drawings">Where drawings come from.</param>
    /// <param name="context">The file.</param>
    internal static LineOfDrawing? Read(Fields fields, string key, IDrawings drawings, TableContext context)
    {
        if (NamedDrawing.Read(fields, key, drawings, context, inMillimetres: false) is not { } drawing)
        {
            return null;
        }

        Place at = fields.Where(key);
        var file = Arg.Of("file", TextPiece.Short(fields.Text(key)));
        var closed = Quantity.Number(drawing.Regions.Sum(r => r.Loops.Length));
        if (drawing.Open.Length != 1)
        {
            context.Add(drawing.Open.IsEmpty
                ? new Finding(DrawingFindings.NothingOpen, at, closed, null, [file])
                : Several(drawing, at, file));
            return null;
        }

        Outline line = drawing.Open[0];
        int parts = line.Curves.Sum(c => c is SplineCurve spline ? spline.Knots.Distinct().Count() - 1 : 1);
        if (parts > MostParts)
        {
            context.Add(Finding.Of(DrawingFindings.LineTooFine, at, Quantity.Number(parts), Quantity.Number(MostParts), file));
            return null;
        }

        if (!drawing.Regions.IsEmpty)
        {
            context.Add(new Finding(DrawingFindings.ClosedLeft, at, closed, null, [file]));
        }

        return new LineOfDrawing(line, drawing.UnitIsKnown);
    }

    private static Finding Several(DrawingContents drawing, Place at, Arg file)
    {
        // In the order in which the drawing's lines are kept: from left to right.
        IEnumerable<string> ends = drawing.Open.Take(MostListed).Select(o => $"{Written(o.Curves[0].Start)} to {Written(o.Curves[^1].End)}");
        string words = string.Join("; ", ends) + (drawing.Open.Length > MostListed ? "; and more" : "");
        return Finding.Of(DrawingFindings.SeveralOpen, at, Quantity.Number(drawing.Open.Length), Quantity.Number(1), file, Arg.Of("words", words));
    }

    // Places of the drawing are told in its own numbers, or in mm where its unit is known, as trace tells them.
    private static string Written(Point2 p) => FormattableString.Invariant($"{p.X + 0.0:0.###}, {p.Y + 0.0:0.###}");
}
