using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Svg;

/// <summary>Segments of a shape, each from where the one before ends, in the shape's own units.</summary>
/// <param name="Segments">In order; none for a shape that draws nothing.</param>
/// <param name="IsClosed">Whether the last ends where the first begins.</param>
internal sealed record SvgRun(List<SvgSegment> Segments, bool IsClosed);

/// <summary>What a segment is.</summary>
internal enum SvgSegmentKind
{
    /// <summary>From A to B.</summary>
    Line,

    /// <summary>A Bézier curve of control points A, B, C.</summary>
    Quadratic,

    /// <summary>A Bézier curve of control points A, B, C, D.</summary>
    Cubic,

    /// <summary>A piece of an ellipse with centre A and half axes B and C: A + B·cos u + C·sin u, u from Start through Sweep.</summary>
    Round,
}

/// <summary>A segment before it is put in place. Its numbers may be of any size: what is too far away shows only in place.</summary>
internal readonly record struct SvgSegment(SvgSegmentKind Kind, Point2 A, Point2 B, Point2 C, Point2 D, double Start, double Sweep)
{
    internal static SvgSegment Line(Point2 from, Point2 to) => new(SvgSegmentKind.Line, from, to, default, default, 0, 0);

    internal static SvgSegment Quadratic(Point2 from, Point2 by, Point2 to) => new(SvgSegmentKind.Quadratic, from, by, to, default, 0, 0);

    internal static SvgSegment Cubic(Point2 from, Point2 by, Point2 near, Point2 to) => new(SvgSegmentKind.Cubic, from, by, near, to, 0, 0);

    internal static SvgSegment Round(Point2 center, Point2 major, Point2 minor, double start, double sweep) =>
        new(SvgSegmentKind.Round, center, major, minor, default, start, sweep);

    /// <summary>The exact curve where a mapping puts it; null when it is not wholly within reach.</summary>
    internal Curve? Placed(Affine map)
    {
        switch (Kind)
        {
            case SvgSegmentKind.Line:
                return Reached(new LineCurve(map.Point(A), map.Point(B)));
            case SvgSegmentKind.Quadratic:
                return Spline([map.Point(A), map.Point(B), map.Point(C)]);
            case SvgSegmentKind.Cubic:
                return Spline([map.Point(A), map.Point(B), map.Point(C), map.Point(D)]);
            default:
                Point2 center = map.Point(A), p = map.Vector(B), q = map.Vector(C);
                Curve round = Affine.Ellipse(center, p, q, Start, Sweep);

                // What rises less than anything can be cut is a line; its centre would lie too far away to be held exactly.
                double rise = (p.Length + q.Length) * (1 - Math.Cos(Math.Min(Math.Abs(Sweep) / 2, Math.PI)));
                return rise >= Accuracy.StraightSagitta ? Reached(round) : Reached(new LineCurve(round.Start, round.End));
        }
    }

    private static SplineCurve? Spline(ReadOnlySpan<Point2> poles)
    {
        foreach (Point2 pole in poles)
        {
            if (!DrawnCurves.IsWithinReach(pole))
            {
                return null;
            }
        }

        return SplineCurve.Bezier(poles);
    }

    private static Curve? Reached(Curve curve) => DrawnCurves.IsWithinReach(curve) ? curve : null;
}
