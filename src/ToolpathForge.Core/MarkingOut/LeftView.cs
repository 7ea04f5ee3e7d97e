using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.MarkingOut;

/// <summary>Shows a layout for a left-hand end: its mirror image, end at your left, with words and figures that are still read from left to right and upwards.</summary>
internal static class LeftView
{
    private static readonly Placement s_mirror = new(0, default, true);

    /// <summary>The mirror image of a paper pattern or of a stick at work.</summary>
    /// <param name="drawing">As a right-hand piece is seen.</param>
    /// <param name="scale">The scale it is laid out for, mm of paper for a mm of the board.</param>
    /// <exception cref="ArgumentException">An element that no layout has.</exception>
    internal static Drawing Of(Drawing drawing, double scale) => drawing with { Elements = [.. drawing.Elements.Select(e => Of(e, scale))] };

    private static DrawingElement Of(DrawingElement element, double scale) => element switch
    {
        Stroke s => s with { Path = s.Path.Placed(s_mirror) },
        ExactStroke s => s with { Path = s.Path.Placed(s_mirror) },
        Fill f => f with { Rings = [.. f.Rings.Select(r => r.Placed(s_mirror))] },
        Solid s => s with { Ring = s.Ring.Placed(s_mirror) },
        CenterMark c => new CenterMark(s_mirror.Apply(c.At)),
        Leader l => l with { Tip = s_mirror.Apply(l.Tip), Elbow = s_mirror.Direction(l.Elbow) },

        // Lettering stands on the other side of its point: the side that it was written towards.
        Text { Turn: 0 } t => t with { At = s_mirror.Apply(t.At), Align = t.Align switch { TextAlign.Start => TextAlign.End, TextAlign.End => TextAlign.Start, var middle => middle } },
        Text t => t with { At = s_mirror.Apply(t.At) + new Point2(t.Height / scale, 0) },
        LinearDimension { Along: MeasuredAlong.Horizontal } d => d with { From = s_mirror.Apply(d.From), To = s_mirror.Apply(d.To) },
        LinearDimension d => d with { From = s_mirror.Apply(d.From), To = s_mirror.Apply(d.To), Offset = -d.Offset, Reference = -d.Reference },
        _ => throw new ArgumentException($"A layout has no {element.GetType().Name}.", nameof(element)),
    };
}
