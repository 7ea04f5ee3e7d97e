using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Drawings;

/// <summary>
/// What a shop drawing shows, in millimetres of the thing drawn, X to the right and Y up. Elements lie on each other in order, the last on top.
/// <para>
/// Two sizes meet in a drawing. What is drawn (edges, paths, areas) is in the thing's own millimetres and shrinks with the scale; what explains it
/// (lettering, arrowheads, distances of dimension lines, pens, dashes) is in millimetres of paper and does not.
/// <see cref="Draughting"/> brings both together for one scale and leaves nothing but <see cref="Mark"/>s, which every writer understands.
/// </para>
/// </summary>
/// <param name="Title">What it shows, in a few words; read out to those who cannot see it.</param>
/// <param name="Description">A sentence or two for those who cannot see it; may be empty.</param>
/// <param name="Elements">From the bottom to the top.</param>
public sealed record Drawing(string Title, string Description, ImmutableArray<DrawingElement> Elements);

/// <summary>Anything that can be put into a <see cref="Drawing"/>.</summary>
public abstract record DrawingElement;

/// <summary>An element that is drawn as it stands: after <see cref="Draughting"/> only these are left.</summary>
public abstract record Mark : DrawingElement;

/// <summary>A line of straight pieces and arcs.</summary>
/// <param name="Role">What the line means; gives pen and layer.</param>
/// <param name="Path">The line, open or closed.</param>
public sealed record Stroke(LineRole Role, Contour Path) : Mark;

/// <summary>A line of exact curves.</summary>
/// <param name="Role">What the line means; gives pen and layer.</param>
/// <param name="Path">The line, open or closed.</param>
public sealed record ExactStroke(LineRole Role, Outline Path) : Mark;

/// <summary>A tinted area without a border. Inside is what a ray leaves through an odd number of rings.</summary>
/// <param name="Tone">What the area is; gives the tint.</param>
/// <param name="Rings">Closed outlines; <see cref="Outlines.Of"/> makes one from a contour.</param>
public sealed record Fill(Tone Tone, ImmutableArray<Outline> Rings) : Mark
{
    /// <summary>An area with one ring.</summary>
    /// <param name="tone">What the area is.</param>
    /// <param name="ring">A closed outline.</param>
    public Fill(Tone tone, Outline ring)
        : this(tone, [ring])
    {
    }
}

/// <summary>A small area filled with the ink of a line: an arrowhead, a block of the scale bar.</summary>
/// <param name="Role">Whose ink.</param>
/// <param name="Ring">A closed contour.</param>
public sealed record Solid(LineRole Role, Contour Ring) : Mark;

/// <summary>A line of text as strokes, in place.</summary>
/// <param name="Role">What it belongs to; gives ink and layer.</param>
/// <param name="Written">The text and its strokes.</param>
/// <param name="PenWidth">Width of the pen, mm of paper.</param>
public sealed record Lettered(LineRole Role, WrittenText Written, double PenWidth) : Mark;

/// <summary>Conversions to exact outlines.</summary>
public static class Outlines
{
    /// <summary>The same line as a chain of exact curves, a curve a segment.</summary>
    /// <param name="contour">Lines and arcs.</param>
    public static Outline Of(Contour contour)
    {
        ArgumentNullException.ThrowIfNull(contour);
        var curves = ImmutableArray.CreateBuilder<Curve>(contour.SegmentCount);
        for (int i = 0; i < contour.SegmentCount; i++)
        {
            Segment s = contour[i];
            curves.Add(s.IsLine ? new LineCurve(s.Start, s.End) : new ArcCurve(s.Center, s.Radius, (s.Start - s.Center).Angle, s.Sweep));
        }

        return new Outline(curves.MoveToImmutable(), contour.IsClosed);
    }
}
