using CsCheck;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Geometry.Fitting;

public class EllipseBoundTests
{
    private static readonly Gen<EllipseCurve> GenEllipse =
        from a in Gen.Double[-1, 3].Select(e => Math.Pow(10, e))
        from ratio in Gen.OneOf(Gen.Double[1, 1.001], Gen.Double[1, 5], Gen.Double[1, 3].Select(e => Math.Pow(10, e)), Gen.Const(1.0))
        from swap in Gen.Bool
        from mirror in Gen.Bool
        from angle in Gen.OneOf(Gen.Const(0.0), Gen.Double[-3.2, 3.2])
        from start in Gen.OneOf(Gen.Double[-7, 7], Gen.Int[-4, 4].Select(k => k * Math.PI / 2), Gen.Int[-4, 4].Select(k => (k * Math.PI / 2) + 1e-9))
        from sweep in Gen.OneOf(Gen.Double[-6.283, 6.283], Gen.Int[1, 4].Select(k => k * Math.PI / 2), Gen.Double[-6, 0].Select(e => Math.Pow(10, e)))
        let along = Point2.Direction(angle)
        let first = along * (swap ? a / ratio : a)
        let second = (mirror ? along.Right : along.Left) * (swap ? a : a / ratio)
        select new EllipseCurve(new Point2(12, -7), first, second, start, sweep);

    private static readonly Gen<double> GenTolerance = Gen.Double[-4, 1].Select(e => Math.Pow(10, e));

    [Fact]
    public void The_bound_holds_against_dense_sampling_both_ways() =>
        Gen.Select(GenEllipse, GenTolerance).Sample((e, tolerance) =>
        {
            var outline = new Outline([e], false);
            if (e.Start.DistanceTo(e.End) < 1e-7)
            {
                return;
            }

            // The measuring itself rounds: a parameter near 1 moves the point by 1e-16 of the size.
            double rounding = 1e-14 * (20 + e.Major.Length + e.Minor.Length);
            FittedContour fit = ArcFit.Fit(outline, tolerance);
            Assert.True(fit.Bound <= tolerance, $"{fit.Bound} over {tolerance}");
            Assert.InRange(Departure.OfCurves(outline, fit.Contour, 500), 0, fit.Bound + rounding);
            Assert.InRange(Departure.OfContour(fit, outline, Math.Max(2, 30 / fit.Contour.SegmentCount)), 0, fit.Bound + rounding);
            Assert.InRange(Departure.WorstKink(fit), 0, KinkAllowed(fit));
            Assert.Equal(e.Start, fit.Contour.Start);
            Assert.Equal(e.End, fit.Contour.End);
        }, iter: LongRun.Iterations(150, 2_000));

    [Fact]
    public void The_quick_fit_is_bounded_just_as_well() =>
        Gen.Select(GenEllipse, GenTolerance).Sample((e, tolerance) =>
        {
            var outline = new Outline([e], false);
            if (e.Start.DistanceTo(e.End) < 1e-7)
            {
                return;
            }

            double rounding = 1e-14 * (20 + e.Major.Length + e.Minor.Length);
            FittedContour fit = ArcFit.Quick(outline, tolerance);
            Assert.True(fit.Bound <= tolerance, $"{fit.Bound} over {tolerance}");
            Assert.InRange(Departure.OfCurves(outline, fit.Contour, 500), 0, fit.Bound + rounding);
            Assert.InRange(Departure.OfContour(fit, outline, Math.Max(2, 30 / fit.Contour.SegmentCount)), 0, fit.Bound + rounding);
        }, iter: LongRun.Iterations(80, 2_000));

    // Rounding of the coordinates over the shortest chord; a shallow arc that became a line turns by four sagittas over its chord at either end.
    private static double KinkAllowed(FittedContour fit)
    {
        double chord = double.PositiveInfinity;
        bool lines = false;
        for (int i = 0; i < fit.Contour.SegmentCount; i++)
        {
            chord = Math.Min(chord, fit.Contour[i].Chord);
            lines |= fit.Contour[i].IsLine;
        }

        return Accuracy.SameDirection + ((lines ? 8 * Accuracy.StraightSagitta : 1e-12) / chord);
    }
}
