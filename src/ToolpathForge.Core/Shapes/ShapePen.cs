using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A corner that is to be rounded.</summary>
/// <param name="Before">Index of the curve that arrives at it.</param>
/// <param name="Radius">mm.</param>
/// <param name="At">Where the job asks for it.</param>
internal readonly record struct Rounding(int Before, double Radius, Place At);

/// <summary>
/// Draws a profile as it is seen on a right-hand piece: from the lower edge, to the right towards the tip (run) and up the board (depth). The board is
/// on the left, so a curve that turns right is hollow, a scoop, and one that turns left is round, a belly.
/// </summary>
internal sealed class ShapePen
{
    private readonly List<Curve> _curves = [];
    private readonly List<Rounding> _roundings = [];

    /// <summary>What has been drawn, in order.</summary>
    internal IReadOnlyList<Curve> Curves => _curves;

    /// <summary>The corners to be rounded, in order.</summary>
    internal IReadOnlyList<Rounding> Roundings => _roundings;

    /// <summary>Where the pen stands: run so far and depth so far, mm.</summary>
    internal Point2 At => _curves.Count > 0 ? _curves[^1].End : default;

    /// <summary>The way the pen arrived; null before the first curve.</summary>
    internal Point2? Heading => _curves.Count > 0 ? _curves[^1].DirectionAt(1) : null;

    /// <summary>A curve that begins where the pen stands.</summary>
    internal void Add(Curve curve) => _curves.Add(curve);

    /// <summary>A straight line.</summary>
    internal void Line(double run, double depth) => _curves.Add(new LineCurve(At, At + new Point2(run, depth)));

    /// <summary>A quarter of an ellipse: a scoop rises square from the edge and ends along the board, a belly the other way round.</summary>
    internal void Quarter(double run, double depth, bool scoop)
    {
        Point2 at = At;
        _curves.Add(scoop
            ? new EllipseCurve(at + new Point2(run, 0), new Point2(-run, 0), new Point2(0, depth), 0, Math.PI / 2)
            : new EllipseCurve(at + new Point2(0, depth), new Point2(0, -depth), new Point2(run, 0), 0, Math.PI / 2));
    }

    /// <summary>A quarter of a circle, the same two ways.</summary>
    internal void QuarterRound(double radius, bool scoop) => Arc(scoop ? new Point2(0, 1) : new Point2(1, 0), radius, Math.PI / 2, scoop);

    /// <summary>An arc that leaves in a direction.</summary>
    /// <param name="heading">Unit direction at its beginning.</param>
    /// <param name="radius">More than 0, mm.</param>
    /// <param name="turn">How far it turns, radians, more than 0.</param>
    /// <param name="scoop">Whether it turns right.</param>
    internal void Arc(Point2 heading, double radius, double turn, bool scoop)
    {
        Point2 outwards = scoop ? heading.Left : heading.Right;
        _curves.Add(new ArcCurve(At - (outwards * radius), radius, outwards.Angle, scoop ? -turn : turn));
    }

    /// <summary>An arc to a point, by the angle between its chord and its first direction: the inscribed angle, half of what it turns.</summary>
    /// <param name="run">From here along the board, mm.</param>
    /// <param name="depth">From here up the board, mm.</param>
    /// <param name="halfTurn">Radians, more than 0, less than π.</param>
    /// <param name="scoop">Whether it turns right.</param>
    internal void ArcBy(double run, double depth, double halfTurn, bool scoop)
    {
        var chord = new Point2(run, depth);
        Point2 heading = chord.Unit().Rotated(scoop ? halfTurn : -halfTurn);
        Arc(heading, chord.Length / (2 * Math.Sin(halfTurn)), 2 * halfTurn, scoop);
    }

    /// <summary>Asks for the corner between what was drawn last and what comes next to be rounded.</summary>
    internal void Round(double radius, Place at)
    {
        if (radius > 0)
        {
            _roundings.Add(new Rounding(_curves.Count - 1, radius, at));
        }
    }
}
