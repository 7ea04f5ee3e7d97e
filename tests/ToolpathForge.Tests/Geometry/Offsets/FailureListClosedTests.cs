using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>
/// Closed shapes that broke offset engines, by name (from public issue threads of open libraries, retold), each told in every way of <see cref="Variants"/>.
/// Expected areas by formula where there is one; a polygon library's opinion on all.
/// </summary>
public class FailureListClosedTests
{
    private static readonly Random Fixed = new(20);

    [Fact]
    public void Case_01_rectangle_shrunk_beyond_its_middle_leaves_nothing()
    {
        OffsetResult result = ClosedCase.Check([Rectangle(0, 0, 120, 40)], -30, 0, 0);
        Assert.Equal(LoopFate.Vanished, Assert.Single(result.Events).Fate);
    }

    [Fact]
    public void Case_02_square_shrunk_far_beyond_its_middle_does_not_turn_inside_out() =>
        ClosedCase.Check([Rectangle(-1, -1, 11, 11)], -50, 0, 0);

    [Fact]
    public void Case_03_large_square_grown_by_more_than_half_its_side() =>
        ClosedCase.Check([Rectangle(0, 0, 10_000, 10_000)], 5_001, 1e8 + (4 * 1e4 * 5_001) + (Math.PI * 5_001 * 5_001), 1);

    [Fact]
    public void Case_04_small_hole_grows_when_its_plate_shrinks() =>
        ClosedCase.Check([Rectangle(0, 0, 100, 60), Contour.Circle(new Point2(50, 30), 2)], -3, (94 * 54) - (25 * Math.PI), 2);

    [Fact]
    public void Case_05_near_triangle_with_cut_tips_does_not_vanish()
    {
        OffsetResult result = ClosedCase.Check(
            [Contour.Polygon(new(0, 0), new(40, 0), new(40.6, 1.6), new(20.85, 30), new(19.15, 30), new(-0.6, 1.6))], -2, count: 1);
        Assert.True(result.ToRegion().Area > 300);
    }

    [Fact]
    public void Case_06_hole_that_touches_the_shell_in_a_vertex()
    {
        Contour[] loops = [Rectangle(0, 0, 20, 20), Contour.Polygon(new(0, 10), new(8, 6), new(8, 14))];

        // Scaled down the distance would be a millionth of a millimetre and less.
        ClosedCase.Check(loops, 0.001, count: 2, leastScale: 0.1);
        ClosedCase.Check(loops, -0.001, count: 1, leastScale: 0.1);
    }

    [Fact]
    public void Case_07_tiny_bulges_whose_parallels_meet_in_one_point()
    {
        // Three arms about the middle; their inside corners lie just the distance from it.
        var vertices = new List<Vertex>();
        for (int i = 0; i < 3; i++)
        {
            double along = 2 * Math.PI * i / 3;
            vertices.Add(new Vertex(Point2.Direction(along - (Math.PI / 3)) * 2, 0.0933));
            vertices.Add(new Vertex(Point2.Direction(along - 0.3) * 20, 0));
            vertices.Add(new Vertex(Point2.Direction(along + 0.3) * 20, -0.0933));
        }

        Contour arms = new(vertices.ToArray(), true);
        Assert.True(ClosedCase.Check([arms], -2).ToRegion().Area > 100);
        ClosedCase.Check([arms], 2, count: 1);
    }

    [Fact]
    public void Case_12_the_same_outline_far_away_gives_the_same_contours()
    {
        Contour star = RandomShapes.Star(new Random(12), 24, 0.6);
        var shift = new Point2(987_654, -912_345);
        foreach (double distance in (double[])[3, -3])
        {
            OffsetResult near = Offsetter.Closed(star, distance);
            OffsetResult far = Offsetter.Closed(Variants.Mapped([star], 0, 1, shift)[0], distance);
            Assert.Equal(near.Loops.Length, far.Loops.Length);
            for (int k = 0; k < near.Loops.Length; k++)
            {
                Assert.Equal(near.Loops[k].Origins.AsEnumerable(), far.Loops[k].Origins.AsEnumerable());
                for (int i = 0; i < near.Loops[k].Contour.SegmentCount; i++)
                {
                    // Corners between nearly parallel pieces move along both; so each is held to the other's line, not to the other's corner.
                    Assert.InRange(near.Loops[k].Contour[i].Distance(far.Loops[k].Contour[i].PointAt(0.5) - shift), 0, 1e-7);
                }
            }
        }
    }

    [Fact]
    public void Case_13_doubled_first_vertex_with_bulges_next_to_nothing()
    {
        Contour doubled = new([new(0, 0, 1e-12), new(0, 0, -1e-12), new(30, 0, 1e-13), new(30, 20, 0), new(0, 20, 0), new(0, 0, 1e-12)], true);
        ClosedCase.Check([doubled], -2, 26 * 16, 1);
        ClosedCase.Check([doubled], 2, 600 + 200 + (4 * Math.PI), 1);
    }

    [Fact]
    public void Case_14_offset_of_an_offset_has_no_false_half_circle()
    {
        Contour angle = Contour.Polygon(new(0, 0), new(40, 0), new(40, 12), new(12, 12), new(12, 40), new(0, 40));
        foreach (double distance in (double[])[2, -2])
        {
            OffsetLoop once = Assert.Single(ClosedCase.Check([angle], distance, count: 1).Loops);
            OffsetLoop twice = Assert.Single(ClosedCase.Check([once.Contour], distance, count: 1).Loops);
            OffsetResult direct = Offsetter.Closed(angle, 2 * distance);
            Assert.Equal(direct.ToRegion().Area, twice.Contour.SignedArea, 6);
            Assert.DoesNotContain(Enumerable.Range(0, twice.Contour.SegmentCount), i => Math.Abs(twice.Contour[i].Sweep) > (Math.PI / 2) + 1e-6);
        }
    }

    [Fact]
    public void Case_15_dense_and_repeated_vertices_and_once_more_on_the_result()
    {
        var points = new List<Point2>();
        Contour outline = RandomShapes.Star(new Random(15), 9, 0.4);
        for (int i = 0; i < outline.SegmentCount; i++)
        {
            for (int k = 0; k < 60; k++)
            {
                Point2 p = outline[i].PointAt(k / 60.0);
                points.Add(p);
                if (k % 7 == 0)
                {
                    points.Add(p);
                    points.Add(p);
                }
            }
        }

        OffsetResult once = ClosedCase.Check([Contour.Polygon(points.ToArray())], -3);
        ClosedCase.Check([.. once.ToRegion().Loops], -3);
    }

    [Theory]
    [InlineData(0.4)]
    [InlineData(0.5)]
    [InlineData(0.6)]
    public void Case_16_islands_and_rings_shrunk_step_by_step(double step)
    {
        Contour[][] shapes =
        [
            [Rectangle(0, 0, 20, 20), Rectangle(14, 9, 16, 11)],
            [Rectangle(0, 0, 20, 20), Rectangle(14, 9, 16, 11), Rectangle(4, 4, 6, 6)],
            [Rectangle(0, 0, 40, 40), Rectangle(5, 5, 35, 35), Rectangle(10, 10, 30, 30), Rectangle(15, 15, 25, 25)],
        ];
        foreach (Contour[] shape in shapes)
        {
            var region = Region.Of(shape);
            Region at = region;
            for (int k = 1; !at.IsEmpty && k < 40; k++)
            {
                OffsetResult next = Offsetter.Closed(at, -step);
                Assert.Null(next.Unproven);
                OffsetResult direct = Offsetter.Closed(region, -step * k);
                Assert.Null(direct.Unproven);
                at = next.ToRegion();

                // Each step may lose what the check grants, along the whole boundary.
                Assert.Equal(direct.ToRegion().Area, at.Area, Accuracy.OffsetCheck * k * 320);
            }

            Assert.True(at.IsEmpty);
            ClosedCase.Check(shape, -step * 3);
        }
    }

    [Fact]
    public void Case_17_two_arcs_of_one_circle_end_to_end_in_opposite_sense()
    {
        // There and back on one circle: no area, but everything near it when grown.
        double bulge = Math.Tan(Math.PI / 8);
        Contour thereAndBack = new([new(10, 0, bulge), new(0, 10, -bulge)], true);
        Assert.Equal((10 * Math.PI) + Math.PI, Offsetter.Closed(thereAndBack, 1).ToRegion().Area, 6);
        Assert.Empty(Offsetter.Closed(thereAndBack, -1).Loops);

        // A sickle whose inside runs on the same circle as part of its outside.
        Contour path = new([new(10, 0, bulge), new(0, 10, -Math.Tan(Math.PI / 16)), new(Math.Sqrt(50), Math.Sqrt(50), 0)], false);
        Assert.Equal((10 * Math.PI) + Math.PI, Offsetter.BothSides(path, 1, EndStyle.Round).ToRegion().Area, 6);
    }

    [Fact]
    public void Case_18_a_region_that_collapses_to_a_line_leaves_nothing_of_no_width()
    {
        ClosedCase.Check([Rectangle(0, 0, 100, 6.35)], -3.175, 0, 0);
        ClosedCase.Check([Contour.Circle(default, 10), Contour.Circle(default, 8)], -1, 0, 0);
        ClosedCase.Check([Rectangle(0, 0, 10, 10)], -5, 0, 0);
        ClosedCase.Check([Contour.Circle(new Point2(1, 2), 5)], -5, 0, 0);

        // Two squares joined by a neck of just two distances: the neck goes, the squares stay.
        Contour dumbbell = Contour.Polygon(
            new(0, 0), new(20, 0), new(20, 8), new(40, 8), new(40, 0), new(60, 0), new(60, 20), new(40, 20), new(40, 12), new(20, 12), new(20, 20), new(0, 20));
        ClosedCase.Check([dumbbell], -2);
    }

    [Fact]
    public void Case_20_slivers_and_spikes_next_to_arcs_never_come_too_near()
    {
        var vertices = new List<Vertex>();
        const int Parts = 24;
        for (int i = 0; i < Parts; i++)
        {
            double angle = 2 * Math.PI * i / Parts;
            double bulge = Math.Tan(Math.PI / Parts / 2 * 0.9);
            vertices.Add(new Vertex(Point2.Direction(angle) * 30, (i & 1) == 0 ? bulge : -0.4));
            if (i % 3 == 0)
            {
                // A spike 5 high and a few micrometres wide, then a stair of micrometres.
                double width = 1e-6 * (1 + i);
                Point2 at = Point2.Direction(angle + 0.24) * (29.9 + (0.1 * Fixed.NextDouble()));
                Point2 tangent = at.Unit().Left;
                vertices.Add(new Vertex(at));
                vertices.Add(new Vertex(at + (at.Unit() * 5)));
                vertices.Add(new Vertex(at + (tangent * width)));
                vertices.Add(new Vertex(at + (tangent * (width + 2e-6)) + (at.Unit() * 1e-6)));
                vertices.Add(new Vertex(at + (tangent * (width + 4e-6))));
            }
        }

        Contour spiky = new(vertices.ToArray(), true);
        foreach (double distance in (double[])[1, -1, 4, -4, 0.01])
        {
            OffsetResult result = ClosedCase.Check([spiky], distance, leastScale: 0.1);
            foreach (OffsetLoop loop in result.Loops)
            {
                for (int i = 0; i < loop.Contour.SegmentCount; i++)
                {
                    for (int k = 0; k < 5; k++)
                    {
                        Point2 p = loop.Contour[i].PointAt(k / 5.0);
                        double least = Enumerable.Range(0, spiky.SegmentCount).Min(s => spiky[s].Distance(p));
                        Assert.InRange(least, Math.Abs(distance) - Accuracy.OffsetCheck, Math.Abs(distance) + Accuracy.OffsetCheck);
                    }
                }
            }
        }
    }

    [Fact]
    public void Case_21_wrong_direction_stray_points_and_numbers_out_of_range()
    {
        Contour hole = Contour.Circle(new Point2(10, 10), 3);
        ClosedCase.Check([Rectangle(0, 0, 20, 20).Reversed(), hole], -1, (18 * 18) - (16 * Math.PI), 2);
        Contour stray = Contour.Polygon(new(10, 10), new(10, 10), new(10, 10));
        Assert.Equal(18 * 18, Offsetter.Closed(Region.Of(Rectangle(0, 0, 20, 20), stray), -1).ToRegion().Area, 9);
        Assert.Empty(Offsetter.Closed(stray, 1).Loops);
        Assert.Throws<ArgumentException>(() => Contour.Polygon(new(0, 0), new(1e25, 0), new(0, 1e25)));
        Assert.Throws<ArgumentException>(() => Contour.Polygon(new(0, 0), new(double.NaN, 0), new(0, 1)));
        Assert.Throws<ArgumentException>(() => Offsetter.Closed(hole, 1e25));
        Assert.Throws<ArgumentException>(() => Offsetter.Closed(hole, double.NaN));
    }

    [Fact]
    public void Case_21_a_hundred_nested_curves()
    {
        var loops = new Contour[100];
        for (int k = 0; k < loops.Length; k++)
        {
            loops[k] = Contour.Circle(new Point2(0.1 * k, 0), 10 + (2 * k));
        }

        // Ring k runs from radius r to r + 2 with k odd outside: each grows by 0.25 at either side.
        double expected = 0;
        for (int k = 1; k < loops.Length; k += 2)
        {
            double outer = 10 + (2 * k) + 0.25;
            double inner = 10 + (2 * (k - 1)) - 0.25;
            expected += Math.PI * ((outer * outer) - (inner * inner));
        }

        ClosedCase.Check(loops, 0.25, expected, 100, polygons: false);
        OffsetResult merged = Offsetter.Closed(Region.Of(loops), 2);
        Assert.Null(merged.Unproven);
    }

    private static Contour Rectangle(double x0, double y0, double x1, double y1) => Contour.Polygon(new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1));
}
