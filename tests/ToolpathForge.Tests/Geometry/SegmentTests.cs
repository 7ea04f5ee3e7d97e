using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry;

public class SegmentTests
{
    [Fact]
    public void Semicircle_has_the_radius_and_centre_of_its_definition()
    {
        var s = new Segment(new Point2(1, 0), new Point2(-1, 0), 1);
        Assert.Equal(1, s.Radius, 12);
        Assert.Equal(0, s.Center.Length, 12);
        Assert.Equal(Math.PI, s.Length, 12);
        Assert.Equal(1, s.Box.MaxY, 12);
        Assert.Equal(0, s.Box.MinY, 12);
        Assert.Equal(0, s.PointAt(0.5).DistanceTo(new Point2(0, 1)), 12);
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(-0.3)]
    [InlineData(1)]
    [InlineData(-0.02)]
    public void Part_and_reverse_stay_on_the_circle(double bulge)
    {
        var s = new Segment(new Point2(3, 4), new Point2(10, -2), bulge);
        Segment part = s.Part(0.2, 0.7);
        Assert.Equal(s.Radius, part.Radius, 9);
        Assert.Equal(s.Length * 0.5, part.Length, 9);
        Assert.Equal(0, s.Reversed.PointAt(0.25).DistanceTo(s.PointAt(0.75)), 9);
        Assert.Equal(s.Sweep, -s.Reversed.Sweep, 12);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-0.4)]
    [InlineData(1e-4)]
    [InlineData(-5e-9)]
    public void Points_of_an_arc_lie_on_it_however_shallow(double bulge)
    {
        // Radius up to 5e9 mm: rounding about the centre would be 1e-6 mm.
        var s = new Segment(new Point2(-40, 10), new Point2(60, 15), bulge);
        for (double share = 0; share <= 1; share += 0.125)
        {
            Assert.Equal(0, s.Distance(s.PointAt(share)), 1e-12);
            Point2 off = s.PointAt(share) + (s.DirectionAt(share).Left * 3);
            if (share is > 0 and < 1)
            {
                Assert.Equal(3, s.Distance(off), 1e-12);
            }
        }

        Point2 half = s.Part(0, 0.5).PointAt(0.5);
        Assert.Equal(0, half.DistanceTo(s.PointAt(0.25)), s.Part(0, 0.5).IsLine ? Accuracy.StraightSagitta : 1e-12);
        Assert.Equal(0, (s.StartDirection - s.DirectionAt(0)).Length, 1e-15);
        Assert.Equal(0, (s.EndDirection - s.DirectionAt(1)).Length, 1e-15);
    }

    [Fact]
    public void Points_and_segments_can_be_written_down()
    {
        Assert.Equal("(1.5, -2)", new Point2(1.5, -2).ToString());
        Assert.Equal("(0, 0) -> (2, 0) bulge 0.5", new Segment(default, new Point2(2, 0), 0.5).ToString());
    }

    [Fact]
    public void Circle_area_length_and_inside()
    {
        Contour c = Contour.Circle(new Point2(5, 5), 10);
        Assert.Equal(Math.PI * 100, c.SignedArea, 9);
        Assert.Equal(Math.PI * 20, c.Length, 9);
        Assert.True(c.Contains(new Point2(14.9, 5)));
        Assert.True(c.Contains(new Point2(5, 14.9)));
        Assert.False(c.Contains(new Point2(12.2, 12.2)));
        Assert.Equal(-Math.PI * 100, c.Reversed().SignedArea, 9);
    }

    [Fact]
    public void Placements_compose_and_invert()
    {
        foreach (bool mirrorA in (bool[])[false, true])
        {
            foreach (bool mirrorB in (bool[])[false, true])
            {
                var a = new Placement(0.7, new Point2(3, -2), mirrorA);
                var b = new Placement(-1.9, new Point2(-8, 5), mirrorB);
                var p = new Point2(1.5, 2.5);
                Assert.Equal(0, a.After(b).Apply(p).DistanceTo(a.Apply(b.Apply(p))), 12);
                Assert.Equal(0, a.Inverse().Apply(a.Apply(p)).DistanceTo(p), 12);
            }
        }
    }
}
