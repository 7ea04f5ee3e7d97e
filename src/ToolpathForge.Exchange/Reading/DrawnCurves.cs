using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Reading;

/// <summary>Exact curves from the ways in which drawings describe them.</summary>
internal static class DrawnCurves
{
    /// <summary>
    /// The arc from a point to another by its bulge, the tangent of a quarter of its sweep, which may be beyond 1. A rise that nobody could cut, or no bulge, is a line.
    /// </summary>
    internal static Curve Bulged(Point2 from, Point2 to, double bulge, double scale)
    {
        Point2 chord = to - from;
        double length = chord.Length;
        if (!(Math.Abs(bulge) * length * scale / 2 >= Accuracy.StraightSagitta))
        {
            return new LineCurve(from, to);
        }

        // From the chord's middle the centre lies to its left by half the chord times the cotangent of half the sweep, (1 - b²)/2b.
        Point2 center = from.Towards(to, 0.5) + (chord.Left * ((1 - (bulge * bulge)) / (4 * bulge)));
        return new ArcCurve(center, length * (1 + (bulge * bulge)) / (4 * Math.Abs(bulge)), (from - center).Angle, 4 * Math.Atan(bulge));
    }

    /// <summary>Curves as one path; closed when it says so or when its end meets its beginning.</summary>
    internal static Outline Path(ImmutableArray<Curve> curves, bool closed) =>
        new(curves, closed || curves[^1].End.DistanceTo(curves[0].Start) <= Accuracy.SamePoint);

    /// <summary>Whether a curve is too small for anything, mm.</summary>
    internal static bool IsNothing(Curve curve) => curve switch
    {
        LineCurve line => line.From.DistanceTo(line.To) <= Accuracy.SamePoint,
        ArcCurve arc => arc.Radius * Math.Abs(arc.Sweep) <= Accuracy.SamePoint,
        EllipseCurve e => Math.Min(e.Major.Length, e.Minor.Length) <= Accuracy.SamePoint || Math.Max(e.Major.Length, e.Minor.Length) * Math.Abs(e.Sweep) <= Accuracy.SamePoint,
        SplineCurve spline => spline.Poles.All(p => p.DistanceTo(spline.Poles[0]) <= Accuracy.SamePoint),
        _ => false,
    };

    /// <summary>Whether all of a curve is nearer to zero than the largest coordinate that is taken. Written so that what is not a number is refused.</summary>
    internal static bool IsWithinReach(Curve curve) => curve switch
    {
        LineCurve line => IsWithinReach(line.From) && IsWithinReach(line.To),
        ArcCurve arc => double.IsFinite(arc.Radius)
            && IsRoundWithinReach(arc, new Point2(arc.Radius, 0), new Point2(0, arc.Radius), arc.StartAngle, arc.Sweep),
        EllipseCurve e => IsRoundWithinReach(e, e.Major, e.Minor, e.StartParameter, e.Sweep),
        SplineCurve spline => spline.Poles.All(IsWithinReach),
        _ => false,
    };

    internal static bool IsWithinReach(Point2 p) => Math.Abs(p.X) <= Accuracy.LargestCoordinate && Math.Abs(p.Y) <= Accuracy.LargestCoordinate;

    // A coordinate of P·cos u + Q·sin u is greatest or least where tan u = Q/P; in between it runs one way.
    private static bool IsRoundWithinReach(Curve curve, Point2 p, Point2 q, double start, double sweep)
    {
        bool within = IsWithinReach(curve.Start) && IsWithinReach(curve.End);
        foreach (double extreme in (ReadOnlySpan<double>)[Math.Atan2(q.X, p.X), Math.Atan2(q.Y, p.Y)])
        {
            for (int half = 0; half < 2; half++)
            {
                double u = extreme + (half * Math.PI);
                double share = (u - start) / sweep;
                double turns = 2 * Math.PI / Math.Abs(sweep);
                share -= Math.Floor(share / turns) * turns;
                within &= share > 1 || IsWithinReach(curve.PointAt(share));
            }
        }

        return within;
    }
}
