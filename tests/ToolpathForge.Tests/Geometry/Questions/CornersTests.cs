using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Questions;

public class CornersTests
{
    // An L, counter-clockwise: five outside corners, one inside corner at (40, 30).
    internal static Contour Ell => Contour.Polygon(new(0, 0), new(100, 0), new(100, 30), new(40, 30), new(40, 80), new(0, 80));

    [Fact]
    public void An_L_has_five_outside_corners_and_one_inside_corner()
    {
        Corner[] corners = [.. Corners.Of(Ell)];
        Assert.Equal(6, corners.Length);
        Corner inside = Assert.Single(corners, c => c.Turn < 0);
        Assert.Equal(new Point2(40, 30), inside.At);
        Assert.Equal(3, inside.Vertex);
        Assert.Equal(-Math.PI / 2, inside.Turn, 12);
        Assert.Equal(1.5 * Math.PI, inside.AngleOnLeft, 12);
        Assert.False(inside.IsOutsideFrom(Side.Right));
        Assert.True(inside.IsOutsideFrom(Side.Left));
        Assert.Equal(2 * Math.PI, corners.Sum(c => c.Turn), 12);
    }

    [Fact]
    public void Angles_against_hand_worked_values()
    {
        // Sides 3, 4, 5: angles atan(4/3), 90°, atan(3/4).
        Corner[] corners = [.. Corners.Of(Contour.Polygon(new(0, 0), new(3, 0), new(3, 4)))];
        Assert.Equal(Math.Atan2(4, 3), corners[0].AngleOnLeft, 12);
        Assert.Equal(Math.PI / 2, corners[1].AngleOnLeft, 12);
        Assert.Equal(Math.Atan2(3, 4), corners[2].AngleOnLeft, 12);
    }

    [Fact]
    public void Tangent_joins_are_no_corners_and_the_ends_of_an_open_contour_neither()
    {
        // A straight edge into a quarter arc into a straight edge.
        var smooth = new Contour([new(0, 0, 0), new(50, 0, Math.Tan(Math.PI / 8)), new(60, 10, 0), new(60, 40, 0)], false);
        Assert.Empty(Corners.Of(smooth));
        var kinked = new Contour([new(0, 0, 0), new(50, 0, Math.Tan(Math.PI / 8)), new(60, 10, 0), new(70, 40, 0)], false);
        Corner corner = Assert.Single(Corners.Of(kinked));
        Assert.Equal(-Math.Atan2(10, 30), corner.Turn, 12);
    }

    [Fact]
    public void A_doubled_vertex_hides_no_corner_and_makes_none()
    {
        Contour doubled = Contour.Polygon(new(0, 0), new(10, 0), new(10, 1e-9), new(10, 10), new(0, 10), new(0, 0));
        Assert.Equal(4, Corners.Of(doubled).Length);
        Assert.All(Corners.Of(doubled), c => Assert.Equal(Math.PI / 2, c.Turn, 1e-9));
    }

    [Fact]
    public void The_way_straight_back_is_a_left_turn_of_half_a_turn()
    {
        Corner c = Assert.Single(Corners.Of(Contour.Polyline(new(0, 0), new(10, 0), new(4, 0))));
        Assert.Equal(Math.PI, c.Turn);
        Assert.Equal(double.PositiveInfinity, c.LeftBetweenStraightEdges(3));
    }

    [Theory]
    [InlineData(3.175, 90, 1.315128)] // R(√2 - 1)
    [InlineData(3.175, 120, 3.175)] // R(1/cos 60° - 1) = R
    [InlineData(6.35, 45, 0.523190)] // R(1/cos 22.5° - 1)
    public void Rest_in_a_corner(double radius, double turn, double left) =>
        Assert.Equal(left, new Corner(0, default, -turn * Math.PI / 180).LeftBetweenStraightEdges(radius), 1e-6);

    [Fact]
    public void Tightest_inside_radius_is_a_sharp_corner_else_the_smallest_hollow_arc()
    {
        HollowBend corner = InsideRadius.Tightest(Ell, Side.Right)!.Value;
        Assert.Equal((0, new Point2(40, 30)), (corner.Radius, corner.At));

        // The same L with the inside corner rounded to 6 and an outside corner to 2.
        double q = Math.Tan(Math.PI / 8);
        var rounded = new Contour([new(2, 0, 0), new(100, 0, 0), new(100, 30, 0), new(46, 30, -q), new(40, 36, 0), new(40, 80, 0), new(0, 80, 0), new(0, 2, q)], true);
        HollowBend bend = InsideRadius.Tightest(rounded, Side.Right)!.Value;
        Assert.Equal(6, bend.Radius, 10);
        Assert.Equal(3, bend.Segment);
        Assert.Equal(0, bend.At.DistanceTo(new Point2(46 - (6 * Math.Sqrt(0.5)), 36 - (6 * Math.Sqrt(0.5)))), 10);
        Assert.Equal(0, InsideRadius.Tightest(rounded, Side.Left)!.Value.Radius);
        Assert.Null(InsideRadius.Tightest(Contour.Circle(default, 5), Side.Right));
        Assert.Equal(5, InsideRadius.Tightest(Contour.Circle(default, 5), Side.Left)!.Value.Radius, 12);
    }
}
