using CsCheck;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Geometry.Fitting;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Geometry.Questions;

public class CurveBendTests
{
    [Theory]
    [InlineData(Math.PI / 4, Math.PI, 2.4)] // over the end of the longer axis, 36/15
    [InlineData(Math.PI / 2 + 0.3, 2, 2.4)]
    [InlineData(3, -6.2, 2.4)]
    [InlineData(5e4 * Math.PI + 0.2, 0.5, 0)]
    [InlineData(Math.PI / 4, Math.PI / 2, 0)] // over the end of the shorter axis only: the tightest places are its own ends
    public void An_ellipse_bends_most_at_the_end_of_its_longer_axis_or_its_own(double start, double sweep, double expected)
    {
        var ellipse = new EllipseCurve(new(3, 4), new(15, 0), new(0, 6), start, sweep);
        Side hollow = sweep > 0 ? Side.Left : Side.Right;
        double atEnds = 1 / Math.Max(Math.Abs(ellipse.CurvatureAt(0)), Math.Abs(ellipse.CurvatureAt(1)));
        CurveBend bend = CurveBend.Tightest(ellipse, hollow)!.Value;
        Assert.Equal(expected > 0 ? expected : atEnds, bend.Radius, 1e-9);
        Assert.Null(CurveBend.Tightest(ellipse, hollow == Side.Left ? Side.Right : Side.Left));
    }

    [Fact]
    public void A_parabola_bends_most_at_its_vertex_and_a_rational_arc_everywhere()
    {
        // Found by looking, which comes no nearer than its steps.
        var slanted = SplineCurve.Bezier(new(-20, 20), new(10, -10), new(30, 45));
        Assert.Equal(Smallest(slanted, Side.Left), CurveBend.Tightest(slanted, Side.Left)!.Value.Radius, 1e-4);

        // y = x²/20 from -10 to 10: radius 10 at the vertex.
        CurveBend plain = CurveBend.Tightest(SplineCurve.Bezier(new(-10, 5), new(0, -5), new(10, 5)), Side.Left)!.Value;
        Assert.Equal(10, plain.Radius, 1e-9);
        Assert.Equal(0, plain.At.Length, 1e-6);
        var quarter = SplineCurve.RationalBezier([new(7, 0), new(7, 7), new(0, 7)], [1, Math.Sqrt(0.5), 1]);
        Assert.Equal(7, CurveBend.Tightest(quarter, Side.Left)!.Value.Radius, 1e-9);
        Assert.Null(CurveBend.Tightest(quarter, Side.Right));
        Assert.Null(CurveBend.Tightest(new LineCurve(new(0, 0), new(1, 1)), Side.Left));
    }

    [Fact]
    public void A_handle_of_no_length_has_no_radius_to_tell() =>
        Assert.Null(CurveBend.Tightest(SplineCurve.Bezier(new(0, 0), new(0, 0), new(10, 0), new(10, 10)), Side.Left));

    [Fact]
    public void No_place_of_a_spline_bends_more() => SplineBoundTests.GenSpline.Sample(
        spline =>
        {
            foreach (Side side in (Side[])[Side.Left, Side.Right])
            {
                // Where it all but stands still there is nothing to compare.
                if (CurveBend.Tightest(spline, side) is { } bend)
                {
                    double looked = Smallest(spline, side);
                    Assert.True(bend.Radius <= looked * (1 + 1e-6), $"{spline}, {side}: {bend.Radius} told, {looked} found");

                    // The place is one of the curve.
                    Assert.True(Nearby(spline, bend) <= 1e-6, $"{spline}, {side}: {bend.At} is not on the curve");
                }
            }
        },
        iter: LongRun.Iterations(100, 5000));

    private static double Smallest(Curve curve, Side side)
    {
        double most = 0;
        for (int i = 0; i <= 4000; i++)
        {
            double k = curve.CurvatureAt(i / 4000.0);
            most = Math.Max(most, side == Side.Left ? k : -k);
        }

        return 1 / most;
    }

    private static double Nearby(SplineCurve curve, CurveBend bend) => ToolpathForge.Tests.Exchange.Reading.Nearest.Distance(curve, bend.At, 4000);
}
