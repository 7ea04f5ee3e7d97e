using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Reading;

/// <summary>A mapping of the plane that keeps straight lines straight: x·<paramref name="X"/> + y·<paramref name="Y"/> + <paramref name="Zero"/>.</summary>
/// <param name="X">Where the first unit vector goes.</param>
/// <param name="Y">Where the second unit vector goes.</param>
/// <param name="Zero">Where the origin goes.</param>
internal readonly record struct Affine(Point2 X, Point2 Y, Point2 Zero)
{
    /// <summary>How far, as a share, a mapping may be from one that keeps angles and still be taken for it: rounding of a few products.</summary>
    private const double SameShare = 1e-14;

    internal static Affine Identity => new(new(1, 0), new(0, 1), default);

    internal static Affine Scale(double x, double y) => new(new(x, 0), new(0, y), default);

    internal static Affine Shift(double x, double y) => new(new(1, 0), new(0, 1), new(x, y));

    /// <summary>Whether circles stay circles.</summary>
    internal bool KeepsAngles
    {
        get
        {
            double size = X.LengthSquared + Y.LengthSquared;
            return Math.Abs(X.Dot(Y)) <= SameShare * size && Math.Abs(X.LengthSquared - Y.LengthSquared) <= SameShare * size;
        }
    }

    /// <summary>Area of what a unit square becomes, negative when mirrored.</summary>
    internal double Determinant => X.Cross(Y);

    internal Point2 Vector(Point2 v) => (X * v.X) + (Y * v.Y);

    internal Point2 Point(Point2 p) => Vector(p) + Zero;

    /// <summary>First the inner mapping, then this one.</summary>
    internal Affine Of(Affine inner) => new(Vector(inner.X), Vector(inner.Y), Point(inner.Zero));

    /// <summary>The image of a curve, exact: a circle becomes an ellipse where it must, and a spline keeps its knots and weights.</summary>
    /// <param name="curve">Any curve.</param>
    internal Curve Map(Curve curve)
    {
        Affine self = this;
        return curve switch
        {
            LineCurve line => new LineCurve(Point(line.From), Point(line.To)),
            ArcCurve arc when KeepsAngles => new ArcCurve(
                Point(arc.Center),
                arc.Radius * Math.Sqrt(Math.Abs(Determinant)),
                Vector(Point2.Direction(arc.StartAngle)).Angle,
                Determinant < 0 ? -arc.Sweep : arc.Sweep),
            ArcCurve arc => Ellipse(Point(arc.Center), X * arc.Radius, Y * arc.Radius, arc.StartAngle, arc.Sweep),
            EllipseCurve ellipse => Ellipse(Point(ellipse.Center), Vector(ellipse.Major), Vector(ellipse.Minor), ellipse.StartParameter, ellipse.Sweep),
            SplineCurve spline => SplineCurve.BSpline(spline.Degree, [.. spline.Poles.Select(self.Point)], spline.Knots.AsSpan(), spline.Weights.AsSpan()),
            _ => throw new ArgumentException("A curve of an unknown kind.", nameof(curve)),
        };
    }

    /// <summary>
    /// The ellipse centre + P·cos u + Q·sin u of two conjugate half diameters, by its axes: they lie where |P·cos u + Q·sin u| has its extremes,
    /// tan 2u = 2·P·Q/(P² - Q²). A circle comes out as an arc.
    /// </summary>
    internal static Curve Ellipse(Point2 center, Point2 p, Point2 q, double start, double sweep)
    {
        double across = 2 * p.Dot(q), along = p.LengthSquared - q.LengthSquared;
        double size = p.LengthSquared + q.LengthSquared;
        if (Math.Abs(across) <= SameShare * size && Math.Abs(along) <= SameShare * size)
        {
            bool left = p.Cross(q) > 0;
            return new ArcCurve(center, Math.Sqrt(size / 2), p.Angle + (left ? start : -start), left ? sweep : -sweep);
        }

        if (Math.Abs(across) <= SameShare * size)
        {
            return new EllipseCurve(center, p, q, start, sweep);
        }

        double turn = Math.Atan2(across, along) / 2;
        (double sin, double cos) = Math.SinCos(turn);
        return new EllipseCurve(center, (p * cos) + (q * sin), (q * cos) - (p * sin), start - turn, sweep);
    }
}
