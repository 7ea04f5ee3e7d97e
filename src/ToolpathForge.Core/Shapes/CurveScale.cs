using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>Curves scaled along X and Y. Stretched by unequal scales an arc is an ellipse, exactly, and an ellipse another one.</summary>
internal static class CurveScale
{
    /// <summary>The curve with a point moved to the origin, then scaled.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="origin">What becomes the origin.</param>
    /// <param name="x">Scale along X, more than 0.</param>
    /// <param name="y">Scale along Y, more than 0.</param>
    internal static Curve Of(Curve curve, Point2 origin, double x, double y)
    {
        Point2 Scaled(Point2 v) => new(v.X * x, v.Y * y);
        Point2 Moved(Point2 p) => Scaled(p - origin);
        return curve switch
        {
            LineCurve line => new LineCurve(Moved(line.From), Moved(line.To)),
            ArcCurve arc when x == y => arc with { Center = Moved(arc.Center), Radius = arc.Radius * x },
            ArcCurve arc => new EllipseCurve(Moved(arc.Center), new Point2(arc.Radius * x, 0), new Point2(0, arc.Radius * y), arc.StartAngle, arc.Sweep),
            EllipseCurve e => WithAxes(Moved(e.Center), Scaled(e.Major), Scaled(e.Minor), e.StartParameter, e.Sweep),
            SplineCurve s => SplineCurve.BSpline(s.Degree, [.. s.Poles.Select(Moved)], s.Knots.AsSpan(), s.Weights.AsSpan()),
            _ => throw new ArgumentException($"A {curve.GetType().Name} cannot be scaled.", nameof(curve)),
        };
    }

    /// <summary>No point, centre, radius or control point of the scaled curve is farther than this from the origin along X and Y together, mm.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="origin">What becomes the origin.</param>
    /// <param name="x">Scale along X.</param>
    /// <param name="y">Scale along Y.</param>
    internal static double Reach(Curve curve, Point2 origin, double x, double y)
    {
        double Of(Point2 v) => (Math.Abs(v.X) * x) + (Math.Abs(v.Y) * y);
        double At(Point2 p) => Of(p - origin);
        return curve switch
        {
            ArcCurve arc => At(arc.Center) + (arc.Radius * (x + y)),
            EllipseCurve e => At(e.Center) + Of(e.Major) + Of(e.Minor),
            SplineCurve s => s.Poles.Max(At),
            _ => Math.Max(At(curve.Start), At(curve.End)),
        };
    }

    // Conjugate half diameters p, q: p cos u + q sin u. The axes are where the derivative of its square vanishes: tan 2u = 2 p·q/(p² - q²) (any text on conics).
    private static EllipseCurve WithAxes(Point2 center, Point2 p, Point2 q, double start, double sweep)
    {
        double shift = p.Dot(q) == 0 ? 0 : Math.Atan2(2 * p.Dot(q), p.LengthSquared - q.LengthSquared) / 2;
        (double sin, double cos) = Math.SinCos(shift);
        return new EllipseCurve(center, (p * cos) + (q * sin), (q * cos) - (p * sin), start - shift, sweep);
    }
}
