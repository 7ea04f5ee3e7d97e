using CsCheck;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Fitting;

public class BernsteinTests
{
    // (u - r1)(u - r2).. as a product of lines; the line u - r has the coefficients -r, 1 - r.
    private static Bernstein WithRoots(params double[] roots) =>
        roots.Aggregate(new Bernstein([1]), (p, r) => p * new Bernstein([-r, 1 - r]));

    [Fact]
    public void Sum_product_derivative_and_part_agree_with_the_values() =>
        Gen.Select(Gen.Double[-5, 5].Array[2, 6], Gen.Double[-5, 5].Array[1, 5], Gen.Double[0, 1]).Sample((a, b, u) =>
        {
            var p = new Bernstein(a);
            var q = new Bernstein(b);
            Assert.Equal(p.At(u) + q.At(u), (p + q).At(u), 1e-12);
            Assert.Equal(p.At(u) - q.At(u), (p - q).At(u), 1e-12);
            Assert.Equal(p.At(u) * q.At(u), (p * q).At(u), 1e-11);
            Assert.Equal(p.At(0.2 + (0.5 * u)), p.Part(0.2, 0.7).At(u), 1e-12);
            double h = 1e-6;
            double x = 0.01 + (0.98 * u);
            Assert.Equal((p.At(x + h) - p.At(x - h)) / (2 * h), p.Derivative().At(x), 1e-7);
        });

    [Fact]
    public void Every_root_inside_is_found() =>
        Gen.Double[-0.5, 1.5].Array[1, 6].Sample(roots =>
        {
            double[] inside = [.. roots.Where(r => r is > 1e-6 and < 1 - 1e-6).Order()];
            bool apart = roots.Order().Zip(roots.Order().Skip(1), (x, y) => y - x).All(d => d > 0.01)
                && !roots.Any(r => Math.Abs(r) < 1e-3 || Math.Abs(r - 1) < 1e-3);
            if (apart)
            {
                Bernstein p = WithRoots(roots);
                double[] found = [.. p.Roots(1e-15 * p.Magnitude).Order()];
                Assert.Equal(inside, found, (x, y) => Math.Abs(x - y) < 1e-8);
            }
        });

    // Found by the property above: roots at 1/16, 1/4 and 1/2 are where intervals are cut.
    [Theory]
    [InlineData(0.0625)]
    [InlineData(0.25)]
    [InlineData(0.5)]
    public void A_root_where_intervals_are_cut_is_found(double root)
    {
        Bernstein p = WithRoots(root, 0.788793245125218, 0.1163);
        double[] found = [.. p.Roots(1e-15 * p.Magnitude).Order()];
        Assert.Equal(new[] { root, 0.1163, 0.788793245125218 }.Order(), found, (x, y) => Math.Abs(x - y) < 1e-8);
    }

    [Fact]
    public void A_root_between_ends_that_are_zero_but_for_rounding_is_found()
    {
        // Once an end's rounding passed for a sign, and the root inside was missed.
        Bernstein p = WithRoots(0, 0.3, 1);
        Assert.Equal(0.3, Assert.Single((p + new Bernstein([-1e-17, 0, 0, 1e-17])).Roots(1e-15)), 1e-12);
        Assert.Equal(0.3, Assert.Single((p + new Bernstein([1e-17, 0, 0, -1e-17])).Roots(1e-15)), 1e-12);
    }

    [Fact]
    public void Two_roots_close_together_are_told_apart()
    {
        List<double> found = WithRoots(0.4, 0.40001).Roots(1e-18);
        Assert.Equal([0.4, 0.40001], found, (x, y) => Math.Abs(x - y) < 1e-8);
    }

    [Fact]
    public void Proven_above_means_above()
    {
        Bernstein p = WithRoots(0.4, 0.4) + new Bernstein([0.01]);
        Assert.True(p.IsAbove(0));
        Assert.False(p.IsAbove(0.02));
        Assert.False(WithRoots(0.5).IsAbove(0));
    }
}
