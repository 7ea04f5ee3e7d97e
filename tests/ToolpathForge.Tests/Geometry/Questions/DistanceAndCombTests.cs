using CsCheck;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Geometry.Offsets;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Geometry.Questions;

public class DistanceAndCombTests
{
    [Fact]
    public void Circles_apart_one_in_the_other_and_crossing()
    {
        ContourGap apart = ContourDistance.Between(Contour.Circle(default, 5), Contour.Circle(new(12, 16), 3));
        Assert.Equal(12, apart.Distance, 1e-12);
        Assert.Equal(0, apart.OnA.DistanceTo(new Point2(3, 4)), 1e-12);
        Assert.Equal(0, apart.OnB.DistanceTo(new Point2(12 - 1.8, 16 - 2.4)), 1e-12);
        Assert.Equal(1, ContourDistance.Between(Contour.Circle(default, 5), Contour.Circle(new(1, 0), 3)).Distance, 1e-12);
        ContourGap crossing = ContourDistance.Between(Contour.Circle(default, 5), Contour.Circle(new(6, 0), 5));
        Assert.Equal((0, 3.0, 4.0), (crossing.Distance, Math.Round(crossing.OnA.X, 9), Math.Round(Math.Abs(crossing.OnA.Y), 9)));
        Assert.Equal(0, ContourDistance.Between(Contour.Circle(default, 5), Contour.Circle(new(8, 0), 3)).Distance, 1e-12);
    }

    [Fact]
    public void Lines_against_arcs_and_open_ends()
    {
        Contour line = Contour.Polyline(new(-10, 9), new(10, 9));
        ContourGap gap = ContourDistance.Between(line, Contour.Circle(new(2, 0), 5));
        Assert.Equal((4, new Point2(2, 9)), (Math.Round(gap.Distance, 12), gap.OnA));
        Assert.Equal(5, ContourDistance.Between(Contour.Polyline(new(0, 0), new(10, 0)), Contour.Polyline(new(13, 4), new(20, 4))).Distance, 1e-12);
    }

    [Fact]
    public void Distance_agrees_with_looking_point_by_point() =>
        Gen.Select(Gen.Int[0, int.MaxValue], Gen.Double[0, 160]).Sample(
            (seed, away) =>
            {
                var random = new Random(seed);
                Contour a = RandomShapes.Star(random, 3 + random.Next(12), 0.8);
                Contour b = RandomShapes.Star(random, 3 + random.Next(12), 0.8, Point2.Direction(seed) * away);
                ContourGap gap = ContourDistance.Between(a, b);
                Assert.Equal(gap.Distance, ContourDistance.Between(b.Reversed(), a).Distance, 1e-9);
                Assert.Equal(gap.Distance, gap.OnA.DistanceTo(gap.OnB), 1e-9);
                Assert.Equal(0, a[gap.SegmentA].Distance(gap.OnA), 1e-9);
                Assert.Equal(0, b[gap.SegmentB].Distance(gap.OnB), 1e-9);

                // Samples lie at most half a step, a 400th of a segment, from the nearest point.
                double least = double.PositiveInfinity;
                double longest = 0;
                for (int i = 0; i < a.SegmentCount; i++)
                {
                    longest = Math.Max(longest, a[i].Length);
                    for (int k = 0; k <= 200; k++)
                    {
                        least = Math.Min(least, b.Distance(a[i].PointAt(k / 200.0)));
                    }
                }

                Assert.InRange(gap.Distance, least - (longest / 400) - 1e-9, least + 1e-9);
            },
            iter: LongRun.Iterations(100, 5_000));

    [Fact]
    public void Comb_of_an_s_of_two_arcs_with_a_straight_between()
    {
        // A quarter left of radius 10, 5 straight up, a quarter right of radius 20, then a corner.
        double q = Math.Tan(Math.PI / 8);
        var s = new Contour([new(0, 0, q), new(10, 10, 0), new(10, 15, -q), new(30, 35, 0), new(30, 50, 0)], false);
        CurvatureComb comb = CurvatureComb.Of(s, 1);
        Assert.Equal([(0.1, 0), (0, -0.05), (-0.05, 0)], comb.Jumps.Select(j => (Math.Round(j.Before, 12), Math.Round(j.After, 12))));
        Assert.Equal([false, false, true], comb.Jumps.Select(j => j.IsCorner));
        Assert.Equal(Math.PI / 2, comb.Jumps[2].Turn, 1e-9);
        BendChange change = Assert.Single(comb.BendChanges);
        Assert.Equal(0, change.From.DistanceTo(new Point2(10, 10)) + change.To.DistanceTo(new Point2(10, 15)), 1e-9);
        Assert.False(change.ToLeft);
        Assert.Equal(s.Length, comb.Teeth[^1].Along, 1e-9);
        Assert.All(comb.Teeth.Zip(comb.Teeth.Skip(1)), pair => Assert.InRange(pair.Second.Along - pair.First.Along, 0, 1 + 1e-9));
        Assert.All(comb.Teeth.Where(t => t.Piece == 0), t => Assert.Equal(0, (t.At + (t.Normal * 10)).DistanceTo(new Point2(0, 10)), 1e-9));
    }

    [Fact]
    public void Comb_of_an_exact_curve_finds_its_inflection_and_its_greatest_curvature()
    {
        // y = x³ - x over [-1, 1], as a Bézier; it bends over at the origin. Curvature at x = 1: 6/(1 + 4)^1.5.
        SplineCurve cubic = SplineCurve.Bezier(new(-1, 0), new(-1.0 / 3, 4.0 / 3), new(1.0 / 3, -4.0 / 3), new(1, 0));
        CurvatureComb comb = CurvatureComb.Of(new Outline([cubic], false), 0.07);
        BendChange change = Assert.Single(comb.BendChanges);
        Assert.Equal(0, change.To.Length, 1e-9);
        Assert.True(change.ToLeft);
        Assert.Empty(comb.Jumps);
        Assert.Equal(6 / Math.Pow(5, 1.5), comb.Teeth[^1].Curvature, 1e-9);
        Assert.Equal(cubic.Length, comb.Teeth[^1].Along, 1e-9);
    }

    [Fact]
    public void A_fitted_ellipse_shows_its_steps_and_the_exact_one_none()
    {
        var quarter = new Outline([new EllipseCurve(default, new(200, 0), new(0, 120), 0, Math.PI / 2)], false);
        Assert.Empty(CurvatureComb.Of(quarter, 5).Jumps);
        Contour fitted = ArcFit.Fit(quarter, 0.1).Contour;
        CurvatureComb comb = CurvatureComb.Of(fitted, 5);
        Assert.Equal(fitted.SegmentCount - 1, comb.Jumps.Length);
        Assert.All(comb.Jumps, j => Assert.False(j.IsCorner));
        Assert.Empty(comb.BendChanges);
    }

    [Fact]
    public void A_comb_of_a_closed_contour_sees_the_joint_at_its_beginning()
    {
        // A kidney: one hollow arc among round ones; the change back to round lies at the first vertex.
        var kidney = new Contour([new(0, 0, 0.5), new(20, 0, 0.5), new(20, 20, 0.5), new(0, 20, -0.2)], true);
        CurvatureComb comb = CurvatureComb.Of(kidney, 2);
        Assert.Equal([(new Point2(0, 20), false), (new Point2(0, 0), true)], comb.BendChanges.Select(c => (new Point2(Math.Round(c.To.X, 9), Math.Round(c.To.Y, 9)), c.ToLeft)));
        Assert.Equal(4, comb.Jumps.Length);
    }
}
