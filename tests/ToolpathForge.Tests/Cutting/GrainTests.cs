using System.Collections.Immutable;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Cutting;

/// <summary>
/// A belly whose quarter ellipse has the semi-axes 200 along and 120 across the grain, piece towards the centre: grain angles worked from the
/// ellipse's normal (b cos t, a sin t) by hand.
/// </summary>
public class GrainTests
{
    private static Point2 EdgeAt(double degrees, bool mirrored = false)
    {
        double t = degrees * Math.PI / 180;
        var outwards = new Point2(120 * Math.Cos(t), 200 * Math.Sin(t));
        outwards = outwards.Unit();
        if (mirrored)
        {
            outwards = new Point2(-outwards.X, outwards.Y);
        }

        return outwards.Left;
    }

    [Theory]
    [InlineData(0, 90, GrainClass.EndGrain)]
    [InlineData(15, -65.94, GrainClass.Against)]
    [InlineData(30, -46.10, GrainClass.Against)]
    [InlineData(45, -30.96, GrainClass.Against)]
    [InlineData(60, -19.11, GrainClass.Against)]
    [InlineData(75, -9.13, GrainClass.Against)]
    [InlineData(90, 0, GrainClass.Along)]
    public void Drawn_with_its_tip_at_the_right_the_curve_lies_against_the_grain(double t, double angle, GrainClass kind)
    {
        double found = Grain.Angle(EdgeAt(t), new Point2(1, 0));
        Assert.Equal(angle, found, 2);
        Assert.Equal(kind, Grain.ClassOf(found));
    }

    [Theory]
    [InlineData(15, 65.94)]
    [InlineData(45, 30.96)]
    [InlineData(75, 9.13)]
    public void Mirrored_it_lies_with_the_grain(double t, double angle) =>
        Assert.Equal(angle, Grain.Angle(EdgeAt(t, mirrored: true), new Point2(1, 0)), 2);

    // Grain sloping by 10°: as drawn, only the outline mirrored, both mirrored.
    [Fact]
    public void Sloping_grain_shifts_the_angle_and_changes_sign_when_the_piece_is_mirrored()
    {
        Point2 sloping = Point2.Direction(10 * Math.PI / 180);
        Assert.Equal(-40.96, Grain.Angle(EdgeAt(45), sloping), 2);
        Assert.Equal(20.96, Grain.Angle(EdgeAt(45, mirrored: true), sloping), 2);
        Assert.Equal(40.96, Grain.Angle(EdgeAt(45, mirrored: true), new Point2(-sloping.X, sloping.Y)), 2);
    }

    // Slope of 1 in 8: 38.1 at one end and 23.8 at the other.
    [Fact]
    public void A_slope_of_one_in_eight_differs_between_the_ends()
    {
        double slope = Math.Atan(1.0 / 8);
        Assert.Equal(38.1, Grain.Angle(EdgeAt(45, mirrored: true), Point2.Direction(-slope)), 1);
        Assert.Equal(23.8, Grain.Angle(EdgeAt(45, mirrored: true), Point2.Direction(slope)), 1);
    }

    [Fact]
    public void Stretches_cover_the_contour_and_change_where_the_angle_does()
    {
        // A quarter circle walked from along the grain to across it, then a line across: piece on the left.
        var contour = new Contour([new Vertex(0, 0, Math.Tan(Math.PI / 8)), new Vertex(100, 100, 0), new Vertex(100, 150, 0)], false);
        ImmutableArray<GrainStretch> stretches = Grain.Along(contour, 0);
        Assert.Equal([GrainClass.Along, GrainClass.With, GrainClass.EndGrain], stretches.Select(s => s.Class));
        double quarter = 50 * Math.PI;
        Assert.Equal(quarter * 5 / 90, stretches[0].To, 9);
        Assert.Equal(quarter * 70 / 90, stretches[1].To, 9);
        Assert.Equal(quarter + 50, stretches[2].To, 9);
        Assert.Equal(stretches.Select(s => s.To).SkipLast(1), stretches.Select(s => s.From).Skip(1));
    }

    // An end cut of 20° stands at 70° to the fibres, on the limit itself; one of 15° does not, and a curve only passes through.
    [Theory]
    [InlineData(20, true)]
    [InlineData(19.5, true)]
    [InlineData(15, false)]
    [InlineData(22.5, false)]
    public void A_straight_edge_near_a_limit_is_told(double degrees, bool close)
    {
        Point2 end = new Point2(100, 100) + (Point2.Direction((90 - degrees) * Math.PI / 180) * 50);
        var contour = new Contour([new Vertex(0, 0, Math.Tan(Math.PI / 8)), new Vertex(100, 100, 0), new Vertex(end, 0)], false);
        Assert.Equal(close, Grain.Along(contour, 0).Any(s => s.Close));
    }

    // Dense sampling by the definition gives the same classes as the analytic breaks.
    [Theory]
    [InlineData(0.35, 0.2)]
    [InlineData(-0.8, 1.1)]
    [InlineData(1, -0.4)]
    public void Stretches_agree_with_sampling(double bulge, double fibre)
    {
        var contour = new Contour([new Vertex(0, 0, bulge), new Vertex(60, 25, -bulge / 2), new Vertex(90, -10, 0), new Vertex(95, 40, 0)], false);
        var ruler = new PathRuler(contour);
        foreach (GrainStretch stretch in Grain.Along(contour, fibre))
        {
            for (int i = 1; i < 50; i++)
            {
                double angle = Grain.Angle(ruler.DirectionAt(stretch.From + (stretch.Length * i / 50)), Point2.Direction(fibre));
                Assert.Equal(stretch.Class, Grain.ClassOf(angle));
                Assert.InRange(angle, stretch.Least - 1e-6, stretch.Most + 1e-6);
            }
        }
    }
}
