using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Fitting;

/// <summary>
/// How many arcs a quarter ellipse takes, a = 200. The counts for joints on the curve and for the fewest tangent arcs were worked out from the definitions, apart from this
/// code; joints off the curve save two arcs in five of the sixteen cells.
/// </summary>
public class EllipseCountTests
{
    private const double Quarter = Math.PI / 2;

    public static TheoryData<double, double, int, int, int> Cells => new()
    {
        // ratio, tolerance, joints on the curve, any joint, fewest tangent arcs
        { 1.2, 0.1, 4, 4, 4 },
        { 1.2, 0.01, 10, 10, 7 },
        { 1.2, 0.001, 18, 18, 13 },
        { 1.2, 0.0001, 38, 38, 27 },
        { 5.0 / 3, 0.1, 6, 6, 5 },
        { 5.0 / 3, 0.01, 12, 12, 9 },
        { 5.0 / 3, 0.001, 24, 24, 17 },
        { 5.0 / 3, 0.0001, 52, 50, 35 },
        { 2.5, 0.1, 6, 6, 5 },
        { 2.5, 0.01, 14, 12, 9 },
        { 2.5, 0.001, 28, 26, 19 },
        { 2.5, 0.0001, 58, 56, 39 },
        { 4, 0.1, 8, 6, 5 },
        { 4, 0.01, 14, 14, 10 },
        { 4, 0.001, 28, 28, 19 },
        { 4, 0.0001, 58, 58, 40 },
    };

    [Theory]
    [MemberData(nameof(Cells))]
    public void As_few_arcs_as_the_best_biarc_chain(double ratio, double tolerance, int onCurve, int anyJoint, int fewest)
    {
        EllipseCurve upright = new(default, new Point2(200, 0), new Point2(0, 200 / ratio), 0, 1);
        var chain = new BiarcChain((from, to) => SpiralBiarc.OnCurve(upright, from, to), 1e-14, 1e-12);
        Assert.Equal(onCurve, 2 * chain.Fit(0, Quarter, tolerance).Count);

        FittedContour fit = ArcFit.Fit(new Outline([EllipseFitTests.Quarter(200, 200 / ratio)], false), tolerance);
        Assert.Equal(anyJoint, fit.Contour.SegmentCount);
        Assert.True(fit.Bound <= tolerance);
        Assert.True(fit.Contour.SegmentCount <= 1.5 * fewest);

        // The result is a spiral itself: its radii grow from the long axis to the short one.
        for (int i = 0; i + 1 < fit.Contour.SegmentCount; i++)
        {
            Assert.True(fit.Contour[i].Radius < fit.Contour[i + 1].Radius);
        }
    }

    [Theory]
    [MemberData(nameof(Cells))]
    public void The_fewest_tangent_arcs_follow_the_formula(double ratio, double tolerance, int onCurve, int anyJoint, int fewest)
    {
        double measure = FewestArcs.Measure(200, 200 / ratio);
        Assert.Equal(fewest, (int)Math.Ceiling(Math.Cbrt(measure * measure * measure / (72 * Math.Sqrt(3) * tolerance)) + 0.635));

        // A lower guess for biarcs: never above what they take, at most two below.
        int guess = 2 * (int)Math.Ceiling(measure / Math.Cbrt(40.5 * tolerance) / 2);
        Assert.InRange(onCurve - guess, 0, 2);
        Assert.InRange(anyJoint, fewest, onCurve);
        if (fewest <= 10)
        {
            Assert.True(new FewestArcs(200, 200 / ratio, fewest).LeastDeviation() <= tolerance);
            Assert.True(new FewestArcs(200, 200 / ratio, fewest - 1).LeastDeviation() > tolerance);
        }
    }

    [Theory]
    [InlineData(1.2, 5.994660)]
    [InlineData(5.0 / 3, 7.940016)]
    [InlineData(2.5, 8.847439)]
    [InlineData(4, 9.076526)]
    public void The_measure_by_quadrature(double ratio, double value) => Assert.Equal(value, FewestArcs.Measure(200, 200 / ratio), 1e-5);

    [Theory]
    [InlineData(3, 0.306830550)]
    [InlineData(4, 0.105947524)]
    [InlineData(5, 0.048430511)]
    [InlineData(8, 0.010059761)]
    [InlineData(9, 0.006864150)]
    public void The_yardstick_gives_the_worked_deviations(int arcs, double deviation) =>
        Assert.Equal(deviation, new FewestArcs(200, 120, arcs).LeastDeviation(), 1e-8);

    [Theory]
    [InlineData(1.2, 0.1, 2)]
    [InlineData(1.2, 0.01, 5)]
    [InlineData(5.0 / 3, 0.1, 3)]
    [InlineData(5.0 / 3, 0.01, 6)]
    [InlineData(2.5, 0.1, 3)]
    [InlineData(2.5, 0.01, 6)]
    [InlineData(4, 0.1, 3)]
    [InlineData(4, 0.01, 7)]
    public void Exhaustive_search_finds_no_chain_of_fewer_biarcs(double ratio, double tolerance, int biarcs)
    {
        // Every span between any two of the nodes of a grid, every joint: the shortest way from end to end.
        const int Nodes = 24;
        var search = new BiarcSearch(200, 200 / ratio);
        double At(int i) => Quarter * i / Nodes;
        var fewest = new int[Nodes + 1];
        for (int to = 1; to <= Nodes; to++)
        {
            fewest[to] = int.MaxValue;
            bool held = false;
            for (int from = 0; from < to; from++)
            {
                bool holds = search.LeastDeviation(At(from), At(to)) <= tolerance;

                // A shorter span never departs farther: what makes the longest span the right one to take.
                Assert.False(held && !holds);
                held |= holds;
                if (holds)
                {
                    fewest[to] = Math.Min(fewest[to], fewest[from] + 1);
                }
            }
        }

        Assert.True(fewest[Nodes] >= biarcs);

        // Off the grid: the longest spans, each with its end pushed on by a part in 20,000 of the quadrant, still do not get there with one biarc fewer.
        double reached = 0;
        for (int i = 0; i < biarcs - 1; i++)
        {
            double low = reached, high = Quarter;
            while (high - low > 1e-5)
            {
                double middle = (low + high) / 2;
                (low, high) = search.LeastDeviation(reached, middle) <= tolerance ? (middle, high) : (low, middle);
            }

            reached = low + (Quarter / 20_000);
        }

        Assert.True(reached < Quarter);
    }
}
