using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Svg;

/// <summary>Reads the lengths of one element, in the units around it; remembers whether any could not be read.</summary>
internal sealed class SvgSizes(SvgNode node, SvgExtent around, ReadingBook book)
{
    internal SvgExtent Around => around;

    /// <summary>Whether a length was unusable; it has been told then, and the element is to be left out.</summary>
    internal bool Failed { get; private set; }

    /// <summary>A place along X; 0 when it is not given.</summary>
    internal double X(string name) => Length(name, around.Width) ?? 0;

    /// <summary>A place along Y; 0 when it is not given.</summary>
    internal double Y(string name) => Length(name, around.Height) ?? 0;

    /// <summary>A width, not less than 0; 0 when it is not given.</summary>
    internal double Width(string name) => Radius(name, around.Width) ?? 0;

    /// <summary>A height, not less than 0; 0 when it is not given.</summary>
    internal double Height(string name) => Radius(name, around.Height) ?? 0;

    /// <summary>A size, not less than 0; null when it is not given.</summary>
    internal double? Radius(string name, double whole)
    {
        double? size = Length(name, whole);
        if (size < 0)
        {
            Fail(name);
            return null;
        }

        return size;
    }

    private double? Length(string name, double whole)
    {
        // Along with path data, SVG 2 lets a style give these sizes as well.
        string? text = name is "x1" or "x2" or "y1" or "y2" ? node[name] : node.Property(name);
        if (text is null || text.AsSpan().Trim() is "auto")
        {
            return null;
        }

        if (SvgLength.Read(text) is not { } length || (length.IsShare && double.IsNaN(whole)))
        {
            Fail(name);
            return null;
        }

        if (length.IsPhysical)
        {
            book.SeeOwnUnit(node.Line, SvgNode.Told(text));
        }

        double size = length.Of(whole);
        return double.IsFinite(size) ? size : null;
    }

    private void Fail(string name)
    {
        Failed = true;
        book.Repair(RepairFindings.ValueUnusable, node.Line, Arg.Of("what", node.Shown), Arg.Of("key", name), Arg.Of("text", $"'{SvgNode.Told(node.Property(name) ?? "")}'"));
    }
}
