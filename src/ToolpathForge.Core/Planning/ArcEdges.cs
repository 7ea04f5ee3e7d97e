using ToolpathForge.Geometry;
using ToolpathForge.Proof;

namespace ToolpathForge.Planning;

/// <summary>Arcs as edges of a proof's target.</summary>
internal static class ArcEdges
{
    /// <summary>Beyond this radius an arc is given by its ends and not by its centre, mm: at a hundred metres the last digit of the centre moves an end by 1e-10 mm, at a million kilometres by more than loops may gape.</summary>
    private const double LargestRadius = 1e5;

    /// <summary>The edge of an arc.</summary>
    /// <param name="arc">The arc.</param>
    /// <param name="cut">Whether the program has to free it.</param>
    internal static TargetEdge Of(ArcCurve arc, bool cut) => arc.Radius <= LargestRadius
        ? new ArcEdge(new PlanePoint(arc.Center.X, arc.Center.Y), arc.Radius, arc.StartAngle, arc.Sweep, cut)
        : ByEnds(arc.Start, arc.End, arc.Sweep, cut);

    // An arc is a rational quadratic curve: its middle pole is where the tangents at its ends meet, with the cosine of half the sweep as its weight; raised once (any text on Bézier curves).
    private static CubicEdge ByEnds(Point2 start, Point2 end, double sweep, bool cut)
    {
        double weight = Math.Cos(sweep / 2);
        Point2 chord = end - start;
        Point2 middle = start.Towards(end, 0.5) + (new Point2(chord.Y, -chord.X) * (Math.Tan(sweep / 2) / 2));
        PlanePoint Between(Point2 at) => new(
            (at.X + (2 * weight * middle.X)) / (1 + (2 * weight)),
            (at.Y + (2 * weight * middle.Y)) / (1 + (2 * weight)));
        double inner = (1 + (2 * weight)) / 3;
        return new CubicEdge(new(start.X, start.Y), Between(start), Between(end), new(end.X, end.Y), 1, inner, inner, 1, cut);
    }
}
