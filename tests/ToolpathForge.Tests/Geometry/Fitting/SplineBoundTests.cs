using CsCheck;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Geometry.Fitting;

public class SplineBoundTests
{
    private static readonly Gen<Point2> GenPole = Gen.Select(Gen.Double[-100, 100], Gen.Double[-100, 100], (x, y) => new Point2(x, y));

    private static readonly Gen<double> GenTolerance = Gen.Double[-3.5, 0.5].Select(e => Math.Pow(10, e));

    internal static readonly Gen<SplineCurve> GenBezier = GenPole.Array[4].Select(p => SplineCurve.Bezier(p));

    // Handles of no length, poles in a line, poles that coincide, near-cusps.
    internal static readonly Gen<SplineCurve> GenAwkward =
        from p in GenPole.Array[4]
        from kind in Gen.Int[0, 6]
        from small in Gen.Double[-10, -1].Select(e => Math.Pow(10, e))
        select SplineCurve.Bezier(kind switch
        {
            0 => [p[0], p[0], p[2], p[3]],
            1 => [p[0], p[1], p[3], p[3]],
            2 => [p[0], p[0], p[3], p[3]],
            3 => [p[0], p[0] + ((p[3] - p[0]) * 0.3), p[0] + ((p[3] - p[0]) * 0.6), p[3]],
            4 => [p[0], p[0] + ((p[3] - p[0]) * 1.6), p[0] - ((p[3] - p[0]) * 0.6), p[3]],
            5 => Cusp(p[0], p[1], p[2], small),
            _ => [p[0], p[0] + (p[1] * small), p[3] + (p[2] * small), p[3]],
        });

    internal static readonly Gen<SplineCurve> GenSpline =
        from degree in Gen.Int[2, 4]
        from n in Gen.Int[degree + 1, 10]
        from poles in GenPole.Array[n]
        from steps in Gen.Int[0, 3].Array[n - degree]
        from rational in Gen.Bool
        from weights in Gen.Double[0.3, 3].Array[n]
        select SplineCurve.BSpline(degree, poles, Knots(degree, n, steps), rational ? weights : []);

    internal static double[] Knots(int degree, int poles, int[] steps)
    {
        // Clamped; a step of 0 doubles a knot, but no inner knot stands more often than the degree.
        var knots = new List<double>(Enumerable.Repeat(0.0, degree + 1));
        for (int i = 0; i < poles - degree - 1; i++)
        {
            bool full = knots.Count(k => k == knots[^1]) >= degree;
            knots.Add(knots[^1] + (full ? Math.Max(1, steps[i]) : steps[i]));
        }

        knots.AddRange(Enumerable.Repeat(knots[^1] + 1, degree + 1));
        return [.. knots];
    }

    // Both handles cross over so that the speed at the middle vanishes but for a little.
    private static Point2[] Cusp(Point2 a, Point2 b, Point2 c, double small)
    {
        Point2 along = (b - a) * 0.25, up = c * 0.3;
        return [a, a + (along * (4.0 / 1)) + up + (along * small), a + up, a + (along * 4)];
    }

    private static void Holds(Curve curve, double tolerance)
    {
        if (curve.Start.DistanceTo(curve.End) < 1e-6)
        {
            return;
        }

        var outline = new Outline([curve], false);
        FittedContour fit = ArcFit.Fit(outline, tolerance);
        Assert.InRange(fit.Bound, 0, tolerance);
        Assert.InRange(Departure.OfCurves(outline, fit.Contour, 800), 0, fit.Bound + 1e-11);
        Assert.InRange(Departure.OfContour(fit, outline, Math.Max(2, 30 / fit.Contour.SegmentCount)), 0, fit.Bound + 1e-9);
        Assert.Equal(curve.Start, fit.Contour.Start);
        Assert.Equal(curve.End, fit.Contour.End);
    }

    [Fact]
    public void Beziers_keep_their_bound() =>
        Gen.Select(GenBezier, GenTolerance).Sample((c, tolerance) => Holds(c, tolerance), iter: LongRun.Iterations(30, 300));

    [Fact]
    public void Beziers_with_cusps_straight_parts_and_handles_of_no_length_keep_their_bound() =>
        Gen.Select(GenAwkward, GenTolerance).Sample((c, tolerance) => Holds(c, tolerance), iter: LongRun.Iterations(30, 300));

    [Fact]
    public void Splines_keep_their_bound() =>
        Gen.Select(GenSpline, GenTolerance).Sample((c, tolerance) => Holds(c, tolerance), iter: LongRun.Iterations(30, 300));
}
