using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Fitting;

/// <summary>
/// Counts, deviations, nodes and radii of the quarter ellipse, worked out once from the definitions, apart from this code.
/// </summary>
public class EllipseFitTests
{
    internal static EllipseCurve Quarter(double a, double b) => new(default, new Point2(a, 0), new Point2(0, b), 0, Math.PI / 2);

    [Theory]
    [InlineData(1, 2.040994724)]
    [InlineData(2, 0.220849705)]
    [InlineData(3, 0.064287197)]
    [InlineData(4, 0.026740493)]
    [InlineData(5, 0.013497972)]
    [InlineData(6, 0.007721216)]
    [InlineData(12, 0.000935204)]
    public void Balanced_deviation_of_so_many_biarcs(int biarcs, double deviation)
    {
        var upright = new EllipseCurve(default, new Point2(200, 0), new Point2(0, 120), 0, 1);
        List<Biarc> chain = new BiarcChain((from, to) => SpiralBiarc.OnCurve(upright, from, to), 1e-14, 1e-12).Fit(0, Math.PI / 2, deviation + 1e-9);
        Assert.Equal(biarcs, chain.Count);
        Assert.All(chain, b => Assert.Equal(deviation, b.Deviation, 1e-9));
    }

    [Fact]
    public void Three_balanced_biarcs_have_the_worked_nodes_joint_and_radii()
    {
        FittedContour fit = ArcFit.Fit(new Outline([Quarter(200, 120)], false), 0.1);
        double[] nodes = [0, 0.488453040, 0.929607603, Math.PI / 2];
        for (int i = 0; i < nodes.Length; i++)
        {
            Point2 p = fit.Contour.Vertices[2 * i].Point;
            Assert.Equal(nodes[i], Math.Atan2(p.Y / 120, p.X / 200), 1e-9);
        }

        double[] radii = [74.475021, 106.095116, 131.507278, 203.528854, 245.969269, 324.717636];
        for (int i = 0; i < radii.Length; i++)
        {
            Assert.Equal(radii[i], fit.Contour[i].Radius, 1e-6);
        }

        Assert.Equal(0, fit.Contour.Vertices[1].Point.DistanceTo(new Point2(192.265561, 33.048804)), 1e-6);
    }

    [Fact]
    public void Greedy_spans_end_at_the_worked_nodes()
    {
        List<Biarc> chain = new BiarcChain((from, to) => SpiralBiarc.OnCurve(new EllipseCurve(default, new Point2(200, 0), new Point2(0, 120), 0, 1), from, to), 1e-14, 1e-12).Greedy(0, Math.PI / 2, 0.1);
        double[] ends = [0.558359, 1.093346, Math.PI / 2];
        Assert.Equal(ends.Length, chain.Count);
        for (int i = 0; i < ends.Length; i++)
        {
            Assert.Equal(ends[i], chain[i].To, 1e-6);
        }
    }

    [Fact]
    public void Ends_are_the_curves_own_to_the_last_digit()
    {
        var e = new EllipseCurve(new Point2(31.7, -8.3), new Point2(50, 20), new Point2(-8, 20), 0.3, 4.4);
        FittedContour fit = ArcFit.Fit(new Outline([e], false), 0.01);
        Assert.Equal(e.Start, fit.Contour.Start);
        Assert.Equal(e.End, fit.Contour.End);
        Assert.Equal(new Point2(0, 120), ArcFit.Fit(new Outline([Quarter(200, 120)], false), 0.01).Contour.End);
    }

    [Fact]
    public void A_whole_ellipse_is_fitted_alike_in_all_its_quadrants()
    {
        var e = new EllipseCurve(default, new Point2(200, 0), new Point2(0, 120), 0, 2 * Math.PI);
        FittedContour fit = ArcFit.Fit(new Outline([e], true), 0.01);
        Assert.Equal(48, fit.Contour.SegmentCount);
        for (int i = 0; i < 24; i++)
        {
            Assert.Equal(fit.Contour.Vertices[i].Bulge, fit.Contour[47 - i].Bulge);
            Assert.Equal(0, (fit.Contour.Vertices[i].Point + fit.Contour.Vertices[i + 24].Point).Length, 1e-12);
        }
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.001)]
    public void Lines_and_arcs_pass_untouched_and_tangent_joins_stay_tangent(double tolerance)
    {
        // A board end: along the lower edge, a tangent quarter arc, a quarter ellipse that leaves it without a corner, and home.
        var outline = new Outline(
            [
                new LineCurve(new Point2(0, -50), new Point2(100, -50)),
                new ArcCurve(new Point2(100, -20), 30, -Math.PI / 2, Math.PI / 2),
                new EllipseCurve(new Point2(70, -20), new Point2(60, 0), new Point2(0, 80), 0, Math.PI / 2),
                new LineCurve(new Point2(70, 60), new Point2(0, 60)),
                new LineCurve(new Point2(0, 60), new Point2(0, -50)),
            ],
            true);
        FittedContour fit = ArcFit.Fit(outline, tolerance);
        Assert.Equal(fit.Contour.SegmentCount, fit.CurveOf.Length);
        Assert.Equal(new Segment(new Point2(0, -50), new Point2(100, -50)), fit.Contour[0]);
        Assert.Equal(30, fit.Contour[1].Radius, 12);
        for (int i = 0; i < fit.Contour.SegmentCount; i++)
        {
            int next = (i + 1) % fit.Contour.SegmentCount;
            bool corner = fit.CurveOf[next] is 0 or 4 || (fit.CurveOf[next] == 2 && fit.CurveOf[i] == 1);
            double turn = Biarc.AngleBetween(fit.Contour[i].EndDirection, fit.Contour[next].StartDirection);
            if (!corner)
            {
                Assert.Equal(0, turn, Accuracy.SameDirection);
            }
        }
    }

    [Theory]
    [InlineData(2 * Math.PI, 2)]
    [InlineData(-2 * Math.PI, 2)]
    [InlineData(Math.PI, 1)]
    [InlineData(3.5, 2)]
    [InlineData(0.2, 1)]
    public void Arcs_beyond_half_a_turn_are_split(double sweep, int segments)
    {
        var arc = new ArcCurve(new Point2(3, 4), 10, 0.4, sweep);
        FittedContour fit = ArcFit.Fit(new Outline([arc], Math.Abs(sweep) > 6), 0.01);
        Assert.Equal(segments, fit.Contour.SegmentCount);
        Assert.Equal(Math.Abs(sweep) * 10, fit.Contour.Length, 1e-10);
        Assert.Equal(0, fit.Bound, 1e-12);
    }

    [Fact]
    public void Curves_that_do_not_meet_and_unusable_tolerances_are_refused()
    {
        var apart = new Outline([new LineCurve(default, new Point2(1, 0)), new LineCurve(new Point2(1.001, 0), new Point2(2, 0))], false);
        Assert.Throws<ArgumentException>(() => ArcFit.Fit(apart, 0.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => ArcFit.Fit(new Outline([Quarter(2, 1)], false), double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => ArcFit.Fit(new Outline([Quarter(2, 1)], false), 1e-9));
    }
}
