using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Svg;

/// <summary>Reads where an element puts what is in it. What cannot be read is told, and the element left out: anywhere else than meant would be worse.</summary>
internal sealed class SvgPlacing(ReadingBook book)
{
    /// <summary>The transform of an element; null when it is to be left out.</summary>
    /// <param name="node">The element.</param>
    /// <param name="around">What shares of lengths are of.</param>
    internal Affine? Transform(SvgNode node, SvgExtent around)
    {
        if (node.Property("transform") is not { } text)
        {
            return Affine.Identity;
        }

        if (SvgTransform.Read(text) is not { } map)
        {
            Unusable(node, "transform", text);
            return null;
        }

        if (node.Property("transform-origin") is { } origin && Origin(origin, around) is not (0, 0))
        {
            if (Origin(origin, around) is not var (x, y))
            {
                Unusable(node, "transform-origin", origin);
                return null;
            }

            map = Affine.Shift(x, y).Of(map).Of(Affine.Shift(-x, -y));
        }

        // Pressed flat, an element is not drawn (SVG 1.1, 14.2.4).
        if (map.Determinant == 0)
        {
            book.Ignore(node.Name, IgnoreReason.Hidden);
            return null;
        }

        return map;
    }

    /// <summary>From the coordinates within a nested svg or a symbol to those around it, and what shares within are of; null when it draws nothing.</summary>
    /// <param name="node">The svg or symbol.</param>
    /// <param name="use">What uses it, whose size counts before its own; null for none.</param>
    /// <param name="around">What shares of its own lengths are of.</param>
    internal (Affine Map, SvgExtent Around)? View(SvgNode node, SvgNode? use, SvgExtent around)
    {
        var own = new SvgSizes(node, around, book);
        SvgSizes? users = use is null ? null : new SvgSizes(use, around, book);
        double width = users?.Radius("width", around.Width) ?? own.Radius("width", around.Width) ?? around.Width;
        double height = users?.Radius("height", around.Height) ?? own.Radius("height", around.Height) ?? around.Height;
        Affine shift = Affine.Shift(own.X("x"), own.Y("y"));
        if (own.Failed || users?.Failed == true)
        {
            return null;
        }

        if (width == 0 || height == 0)
        {
            book.Ignore(node.Name, IgnoreReason.Hidden);
            return null;
        }

        if (node["viewBox"] is not { } text)
        {
            return (shift, new SvgExtent(width, height));
        }

        // A view fills all of its place: the place must have a size.
        if (SvgView.Read(text) is not { } view || double.IsNaN(width) || double.IsNaN(height))
        {
            Unusable(node, "viewBox", text);
            return null;
        }

        string? fit = node["preserveAspectRatio"];
        if (view.Fit(width, height, fit) is not { } map)
        {
            Unusable(node, "preserveAspectRatio", fit ?? "");
            return null;
        }

        return (shift.Of(map), new SvgExtent(view.Width, view.Height));
    }

    private static (double X, double Y)? Origin(string text, SvgExtent around)
    {
        string[] words = text.Split((char[])[' ', '\t', '\n', '\r', ','], StringSplitOptions.RemoveEmptyEntries);
        return words.Length is 2 or 3
            && SvgLength.Read(words[0]) is { } x && SvgLength.Read(words[1]) is { } y
            && x.Of(around.Width) is var left && y.Of(around.Height) is var top && double.IsFinite(left) && double.IsFinite(top)
            ? (left, top)
            : null;
    }

    private void Unusable(SvgNode node, string key, string text) =>
        book.Repair(RepairFindings.ValueUnusable, node.Line, Arg.Of("what", node.Shown), Arg.Of("key", key), Arg.Of("text", $"'{SvgNode.Told(text)}'"));
}
