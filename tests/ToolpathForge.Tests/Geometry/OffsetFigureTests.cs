using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry;

/// <summary>Areas and lengths that follow from formulas.</summary>
public class OffsetFigureTests
{
    [Theory]
    [InlineData(-3.175, 146.337349)]
    [InlineData(3.175, 545.319616)]
    public void Circle_of_radius_10(double distance, double area)
    {
        OffsetResult result = Offsetter.Closed(Contour.Circle(new Point2(3, 4), 10), distance);
        Assert.Null(result.Unproven);
        OffsetLoop loop = Assert.Single(result.Loops);
        Assert.Equal(area, loop.Contour.SignedArea, 6);
        Assert.Empty(result.Events);
    }

    [Fact]
    public void Plus_shape_loses_its_arms_to_slits_without_area()
    {
        Contour plus = Contour.Polygon(
            new(10, 0), new(20, 0), new(20, 10), new(30, 10), new(30, 20), new(20, 20), new(20, 30), new(10, 30), new(10, 20), new(0, 20), new(0, 10), new(10, 10));
        OffsetResult result = Offsetter.Closed(plus, -5);
        Assert.Null(result.Unproven);
        Assert.Equal(100 - (25 * Math.PI), Assert.Single(result.Loops).Contour.SignedArea, 6);
    }

    [Fact]
    public void Square_grows_round_and_sharp()
    {
        Contour square = Contour.Polygon(new(0, 0), new(6.35, 0), new(6.35, 6.35), new(0, 6.35));
        Assert.Equal(152.636717, Offsetter.Closed(square, 3.175).ToRegion().Area, 6);
        Assert.Equal(161.29, Offsetter.Closed(square, 3.175, JoinStyle.Sharp).ToRegion().Area, 6);
    }

    [Fact]
    public void Rectangle_of_just_two_distances_leaves_nothing()
    {
        Contour slot = Contour.Polygon(new(0, 0), new(100, 0), new(100, 6.35), new(0, 6.35));
        OffsetResult result = Offsetter.Closed(slot, -3.175);
        Assert.Null(result.Unproven);
        Assert.Empty(result.Loops);
        Assert.Equal(LoopFate.Vanished, Assert.Single(result.Events).Fate);
    }

    [Fact]
    public void Open_line_has_two_sides()
    {
        Contour line = Contour.Polyline(new(0, 0), new(10, 0));
        OffsetLoop left = Assert.Single(Offsetter.OneSide(line, 2).Loops);
        Assert.Equal(0, left.Contour.Start.DistanceTo(new Point2(0, 2)), 9);
        Assert.Equal(0, left.Contour.End.DistanceTo(new Point2(10, 2)), 9);
        OffsetLoop right = Assert.Single(Offsetter.OneSide(line, -2).Loops);
        Assert.Equal(0, right.Contour.Start.DistanceTo(new Point2(0, -2)), 9);
        Assert.Equal(40, Offsetter.BothSides(line, 2, EndStyle.Flat).ToRegion().Area, 9);
        Assert.Equal(40 + (4 * Math.PI), Offsetter.BothSides(line, 2, EndStyle.Round).ToRegion().Area, 9);
    }

    [Fact]
    public void Sets_of_two_squares_and_a_hole()
    {
        Region a = Region.Of(Contour.Polygon(new(0, 0), new(10, 0), new(10, 10), new(0, 10)));
        Region b = Region.Of(Contour.Polygon(new(5, 0), new(15, 0), new(15, 10), new(5, 10)));
        Assert.Equal(150, RegionOps.Union(a, b).Region.Area, 9);
        Assert.Equal(50, RegionOps.Intersection(a, b).Region.Area, 9);
        Assert.Equal(50, RegionOps.Difference(a, b).Region.Area, 9);
        Region hole = Region.Of(Contour.Circle(new Point2(5, 5), 2));
        Region ring = RegionOps.Difference(a, hole).Region;
        Assert.Equal(2, ring.Loops.Length);
        Assert.Equal(100 - (4 * Math.PI), ring.Area, 9);
        Assert.Equal(64 - (9 * Math.PI), Offsetter.Closed(ring, -1).ToRegion().Area, 9);
    }
}
