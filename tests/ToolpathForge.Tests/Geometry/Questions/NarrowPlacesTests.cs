using CsCheck;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Geometry.Offsets;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Geometry.Questions;

public class NarrowPlacesTests
{
    private static Contour Plus => Contour.Polygon(
        new(10, 0), new(16, 0), new(16, 10), new(30, 10), new(30, 18), new(16, 18), new(16, 40), new(10, 40), new(10, 18), new(0, 18), new(0, 10), new(10, 10));

    [Fact]
    public void The_arms_of_a_plus_are_its_necks()
    {
        // Two arms 6 wide (up and down), two 8 wide: each has a circle in its middle and one at its mouth between two corners. The crossing of 6 by 8 has its diagonals.
        NarrowPlace[] necks = [.. NarrowPlaces.Necks(Region.Of(Plus), 100)];
        Assert.Equal([6, 6, 6, 6, 8, 8, 8, 8, 10, 10], necks.Select(n => Math.Round(n.Width, 12)));
        Assert.Contains(new Point2(13, 5), necks.Select(n => n.A.Towards(n.B, 0.5)));
        Assert.Contains(new Point2(23, 14), necks.Select(n => n.A.Towards(n.B, 0.5)));
        Assert.Null(NarrowPlaces.Slot(Region.Of(Plus)));
    }

    [Theory]
    [InlineData(4)]
    [InlineData(0.5)]
    public void A_slot_is_as_wide_as_it_was_drawn(double width)
    {
        double h = width / 2;
        var plate = Region.Of(Contour.Polygon(
            new(0, 0), new(60, 0), new(60, 40), new(30 + h, 40), new(30 + h, 20), new(30 - h, 20), new(30 - h, 40), new(0, 40)));
        NarrowPlace slot = NarrowPlaces.Slot(plate)!.Value;
        Assert.Equal(width, slot.Width, 1e-12);
        Assert.Equal(new Point2(30, 30), slot.A.Towards(slot.B, 0.5));

        // Under the slot 20 stay, from its corners down.
        Assert.Equal(20, NarrowPlaces.Neck(plate)!.Value.Width, 1e-12);
    }

    [Fact]
    public void Between_two_discs_lies_a_slot_on_the_line_of_centres_and_none_has_a_neck()
    {
        var discs = Region.Of(Contour.Circle(default, 5), Contour.Circle(Point2.Direction(0.7) * 20, 8));
        NarrowPlace slot = NarrowPlaces.Slot(discs)!.Value;
        Assert.Equal(7, slot.Width, 1e-12);
        Assert.Equal(0, Math.Min(slot.A.DistanceTo(Point2.Direction(0.7) * 5), slot.B.DistanceTo(Point2.Direction(0.7) * 5)), 1e-12);
        Assert.NotEqual(slot.LoopA, slot.LoopB);
        Assert.Null(NarrowPlaces.Neck(discs));
    }

    [Fact]
    public void Between_two_holes_and_between_hole_and_edge_lie_necks()
    {
        var plate = Region.Of(
            Contour.Polygon(new(0, 0), new(100, 0), new(100, 40), new(0, 40)), Contour.Circle(new(40, 18), 10), Contour.Circle(new(66, 18), 10));
        NarrowPlace[] necks = [.. NarrowPlaces.Necks(plate, 15)];
        Assert.Equal([6, 8, 8, 12, 12], necks.Select(n => Math.Round(n.Width, 9)));
        Assert.Equal(0, necks[0].A.Towards(necks[0].B, 0.5).DistanceTo(new Point2(53, 18)), 1e-9);
    }

    [Fact]
    public void A_wedge_a_bulge_and_a_hollow_that_opens_have_none()
    {
        Assert.Null(NarrowPlaces.Neck(Region.Of(Contour.Polygon(new(0, 0), new(100, 0), new(0, 20)))));
        Assert.Null(NarrowPlaces.Neck(Region.Of(Contour.Circle(default, 9))));
        Assert.Null(NarrowPlaces.Slot(Region.Of(CornersTests.Ell)));
        Assert.Null(NarrowPlaces.Neck(Region.Empty));

        // The notch of a heart opens: no slot. Its hole would be one of a disc.
        Assert.Null(NarrowPlaces.Slot(Region.Of(Contour.Polygon(new(0, 0), new(20, 0), new(20, 20), new(10, 8), new(0, 20)))));
    }

    [Fact]
    public void A_corner_that_points_into_the_material_narrows_it()
    {
        // From the notch's tip at (10, 8) to the lower edge.
        NarrowPlace neck = NarrowPlaces.Neck(Region.Of(Contour.Polygon(new(0, 0), new(20, 0), new(20, 20), new(10, 8), new(0, 20))))!.Value;
        Assert.Equal(8, neck.Width, 1e-12);
        Assert.Equal(0, Math.Min(neck.A.DistanceTo(new Point2(10, 0)), neck.B.DistanceTo(new Point2(10, 0))), 1e-12);
    }

    [Fact]
    public void Turning_moving_mirroring_and_walking_back_change_no_width() =>
        Gen.Select(Gen.Int[0, int.MaxValue], Gen.Double[-3, 3], Gen.Double[-1000, 1000]).Sample(
            (seed, turn, move) =>
            {
                Contour star = RandomShapes.Star(new Random(seed), 5 + (seed % 12), 0.8);
                double[] widths = [.. NarrowPlaces.Necks(Region.Of(star), 200).Select(n => n.Width)];
                Contour moved = new([.. star.Vertices.ToArray().Select(v => new Vertex((v.Point.Rotated(turn)) + new Point2(move, -move), v.Bulge))], true);
                double[] again = [.. NarrowPlaces.Necks(Region.Of(moved.Reversed()), 200).Select(n => n.Width)];

                // Coordinates up to 1050 round to 2.3e-13; a foot on an arc some hundred radii shallow loses two or three digits more.
                Assert.Equal(widths.FirstOrDefault(), again.FirstOrDefault(), 1e-8);
            },
            iter: LongRun.Iterations(100, 5_000));

    // Beyond a neck the shape is often only a hair wider, and then gone altogether a hair later: of random stars one in a hundred within 1e-4 mm.
    private const double Barely = 1e-7;

    // A shape falls into more parts when it has shrunk by half its narrowest neck, and not before. The offset engine knows nothing of necks.
    [Fact]
    public void A_shape_shrinks_whole_until_half_its_narrowest_neck_and_then_parts() =>
        Gen.Int[0, int.MaxValue].Sample(
            seed =>
            {
                Region shape = Region.Of(RandomShapes.Star(new Random(seed), 4 + (seed % 12), 0.85));
                NarrowPlace? neck = NarrowPlaces.Neck(shape);
                double width = neck?.Width ?? double.PositiveInfinity;
                if (neck is { } at)
                {
                    Assert.Equal(0, shape.Loops.Min(l => l.Distance(at.A)), 1e-9);
                    Assert.Equal(0, shape.Loops.Min(l => l.Distance(at.B)), 1e-9);
                    Assert.Equal(width / 2, shape.Loops.Min(l => l.Distance(at.A.Towards(at.B, 0.5))), 1e-6);
                    Assert.True(shape.Contains(at.A.Towards(at.B, 0.5)));
                    Assert.NotEqual(1, Offsetter.Closed(shape, -((width / 2) + Barely)).Loops.Length);
                    Assert.Single(Offsetter.Closed(shape, -((width / 2) - Barely)).Loops);
                }

                // In steps below it, or down to nothing where there is none.
                for (int k = 1; k < 40; k++)
                {
                    double d = neck is null ? k : (width / 2 * k / 40) - 1e-4;
                    int loops = d > 0.001 ? Offsetter.Closed(shape, -d).Loops.Length : 1;
                    Assert.True(loops == 1 || (neck is null && loops == 0), $"{loops} parts at {d}, neck {width}");
                }
            },
            iter: LongRun.Iterations(60, 3_000));
}
