using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Svg;

/// <summary>Reads the shapes of a file: path and the basic ones (SVG 1.1, chapters 8 and 9).</summary>
internal sealed class SvgShapes(ReadingBook book)
{
    private const double Turn = 2 * Math.PI;

    /// <summary>Whether an element is a shape.</summary>
    internal static bool Has(string name) => name is "path" or "rect" or "circle" or "ellipse" or "line" or "polyline" or "polygon";

    /// <summary>What a shape draws, in its own units; nothing when it draws nothing or is left out, which has been told then.</summary>
    /// <param name="node">A shape.</param>
    /// <param name="around">The size of the view around it.</param>
    internal List<SvgRun> Read(SvgNode node, SvgExtent around)
    {
        var sizes = new SvgSizes(node, around, book);
        List<SvgRun> runs = node.Name switch
        {
            "path" => Path(node),
            "rect" => Rect(sizes),
            "circle" => Circle(sizes),
            "ellipse" => Ellipse(sizes),
            "line" => [new SvgRun([SvgSegment.Line(new(sizes.X("x1"), sizes.Y("y1")), new(sizes.X("x2"), sizes.Y("y2")))], false)],
            _ => Points(node, node.Name == "polygon"),
        };
        return sizes.Failed ? [] : runs;
    }

    private List<SvgRun> Path(SvgNode node)
    {
        string text = node["d"] ?? "";
        (List<SvgRun> runs, int broken) = text.AsSpan().Trim() is "none" ? ([], -1) : SvgPathData.Read(text, book.Step);
        if (broken >= 0)
        {
            book.Repair(
                SvgFindings.PathBroken, node.Line, Arg.Of("what", node.Shown), Arg.Of("position", Quantity.Number(broken + 1)), Arg.Of("text", Stands(text, broken)));
        }

        return runs;
    }

    private static string Stands(string text, int at) => at < text.Length ? $"'{SvgNode.Told(text.Substring(at, Math.Min(12, text.Length - at)))}'" : "its end";

    private List<SvgRun> Points(SvgNode node, bool closed)
    {
        string text = node["points"] ?? "";
        var scanner = new SvgScanner(text);
        var row = new List<SvgSegment>();
        Point2? first = null, last = null;
        scanner.Blanks();
        while (!scanner.IsAtEnd && book.Step())
        {
            int at = scanner.At;
            bool read = scanner.Number(out double x);
            scanner.Comma();
            if (!read || !scanner.Number(out double y))
            {
                // As with path data, what stands before the error counts.
                book.Repair(SvgFindings.PathBroken, node.Line, Arg.Of("what", node.Shown), Arg.Of("position", Quantity.Number(at + 1)), Arg.Of("text", Stands(text, at)));
                break;
            }

            var point = new Point2(x, y);
            if (last is { } from)
            {
                row.Add(SvgSegment.Line(from, point));
            }

            first ??= point;
            last = point;
            scanner.Comma();
        }

        if (closed && first is { } zero && last is { } end && zero != end)
        {
            row.Add(SvgSegment.Line(end, zero));
        }

        return row.Count > 0 ? [new SvgRun(row, closed)] : [];
    }

    private static List<SvgRun> Rect(SvgSizes sizes)
    {
        double x = sizes.X("x"), y = sizes.Y("y"), width = sizes.Width("width"), height = sizes.Height("height");
        double? givenX = sizes.Radius("rx", sizes.Around.Width), givenY = sizes.Radius("ry", sizes.Around.Height);
        if (!(width > 0 && height > 0))
        {
            return [];
        }

        // One radius that is not given is the other; both reach no farther than the middle (SVG 1.1, 9.2).
        double rx = Math.Min(givenX ?? givenY ?? 0, width / 2), ry = Math.Min(givenY ?? givenX ?? 0, height / 2);
        if (rx == 0 || ry == 0)
        {
            (rx, ry) = (0, 0);
        }

        double right = x + width, bottom = y + height;
        var row = new List<SvgSegment>(8);
        void Side(Point2 from, Point2 to)
        {
            if (from != to)
            {
                row.Add(SvgSegment.Line(from, to));
            }
        }

        void Corner(double cx, double cy, double start)
        {
            if (rx > 0)
            {
                row.Add(SvgSegment.Round(new(cx, cy), new(rx, 0), new(0, ry), start, Math.PI / 2));
            }
        }

        Side(new(x + rx, y), new(right - rx, y));
        Corner(right - rx, y + ry, -Math.PI / 2);
        Side(new(right, y + ry), new(right, bottom - ry));
        Corner(right - rx, bottom - ry, 0);
        Side(new(right - rx, bottom), new(x + rx, bottom));
        Corner(x + rx, bottom - ry, Math.PI / 2);
        Side(new(x, bottom - ry), new(x, y + ry));
        Corner(x + rx, y + ry, Math.PI);
        return [new SvgRun(row, true)];
    }

    private static List<SvgRun> Circle(SvgSizes sizes)
    {
        double radius = sizes.Radius("r", sizes.Around.Diagonal) ?? 0;
        return Oval(new(sizes.X("cx"), sizes.Y("cy")), radius, radius);
    }

    private static List<SvgRun> Ellipse(SvgSizes sizes)
    {
        // From SVG 2 on a radius that is not given is the other.
        double? rx = sizes.Radius("rx", sizes.Around.Width), ry = sizes.Radius("ry", sizes.Around.Height);
        return Oval(new(sizes.X("cx"), sizes.Y("cy")), rx ?? ry ?? 0, ry ?? rx ?? 0);
    }

    private static List<SvgRun> Oval(Point2 center, double rx, double ry) =>
        rx > 0 && ry > 0 ? [new SvgRun([SvgSegment.Round(center, new(rx, 0), new(0, ry), 0, Turn)], true)] : [];
}
