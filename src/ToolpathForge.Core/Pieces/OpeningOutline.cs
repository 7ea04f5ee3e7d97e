using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Pieces;

/// <summary>The line round an opening: two half circles, and two straight sides if it is a slot; or as it was drawn.</summary>
internal static class OpeningOutline
{
    /// <summary>The exact edge, clockwise: the material lies on its left.</summary>
    /// <param name="opening">The opening.</param>
    /// <param name="placement">From the piece frame to where it is wanted.</param>
    internal static Outline Exact(Opening opening, Placement placement)
    {
        if (opening.Edge is { } edge)
        {
            return edge.Placed(placement);
        }

        Point2 from = placement.Apply(opening.From);
        Point2 to = placement.Apply(opening.To);
        double radius = opening.Width / 2;
        double along = opening.IsHole ? 0 : (to - from).Angle;
        var first = new ArcCurve(to, radius, along + (Math.PI / 2), -Math.PI);
        var second = new ArcCurve(from, radius, along - (Math.PI / 2), -Math.PI);
        return opening.IsHole
            ? new Outline([first, second], true)
            : new Outline([first, new LineCurve(first.End, second.Start), second, new LineCurve(second.End, first.Start)], true);
    }

    /// <summary>The edge for a drawing: as <see cref="Exact"/>, but a hole is one circle, which a CAD takes for a hole.</summary>
    /// <param name="opening">The opening.</param>
    /// <param name="placement">From the piece frame to where it is wanted.</param>
    internal static Outline Drawn(Opening opening, Placement placement) =>
        opening.IsHole ? Circle(placement.Apply(opening.From), opening.Width) : Exact(opening, placement);

    /// <summary>A circle as one curve, clockwise from its top.</summary>
    /// <param name="middle">Its middle.</param>
    /// <param name="width">Its diameter.</param>
    internal static Outline Circle(Point2 middle, double width) => new([new ArcCurve(middle, width / 2, Math.PI / 2, -2 * Math.PI)], true);

    /// <summary>The way of a bit that keeps a distance from the centre line, counter-clockwise; a single line or point has none.</summary>
    /// <param name="from">One end of the centre line.</param>
    /// <param name="to">The other; the same point for a hole.</param>
    /// <param name="distance">More than 0, mm.</param>
    internal static Contour Ring(Point2 from, Point2 to, double distance)
    {
        Point2 side = from == to ? new Point2(0, -distance) : (to - from).Unit().Right * distance;

        // Begun on the right of the centre line; half circles have a bulge of 1.
        return from == to
            ? new Contour([new Vertex(from + side, 1), new Vertex(from - side, 1)], true)
            : new Contour([new Vertex(from + side, 0), new Vertex(to + side, 1), new Vertex(to - side, 0), new Vertex(from - side, 1)], true);
    }
}
