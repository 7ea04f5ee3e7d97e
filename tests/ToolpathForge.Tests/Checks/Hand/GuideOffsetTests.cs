using CsCheck;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Checks.Hand;

public class GuideOffsetTests
{
    // (OD - D)/2: a bearing of 5/16 in on a cutter of 1/4 in, a bushing of 30 mm with a cutter of 12.7.
    [Theory]
    [InlineData(7.9375, 6.35, 0.79375)]
    [InlineData(30, 12.7, 8.65)]
    [InlineData(12.7, 12.7, 0)]
    public void A_larger_guide_keeps_the_cutter_off(double guide, double cutter, double offset) =>
        Assert.Equal(offset, new GuideOffset(guide, cutter).Offset, 9);

    // By construction: roll the guide round the inside and the outside of a circle and measure where the cutter's far edge goes.
    [Fact]
    public void Radii_of_the_work_are_those_of_a_guide_that_rolls_round() => Gen.Select(Gen.Double[5, 40], Gen.Double[3, 40], Gen.Double[21, 200], Gen.Double[0, 6.28]).Sample((guide, cutter, pattern, angle) =>
    {
        var offset = new GuideOffset(guide, cutter);
        Point2 towards = Point2.Direction(angle);
        Point2 inHollow = towards * (pattern - (guide / 2));
        Assert.Equal(offset.WorkInside(pattern), (inHollow + (towards * (cutter / 2))).Length, 1e-9);
        Point2 roundBulge = towards * (pattern + (guide / 2));
        Assert.Equal(offset.WorkOutside(pattern), (roundBulge - (towards * (cutter / 2))).Length, 1e-9);
        Assert.Equal(guide / 2, offset.LeastInside);
    });

    [Fact]
    public void A_bushing_asks_for_no_contact()
    {
        var setUp = new HandSetUp(25.4, new Bearing(30, 4, 0), 12.7, 18, 40, HandMargins.Usual(4));
        DepthWindow window = GuideOffset.Bushing(setUp);
        Assert.Equal((31.7, 37.1), (Math.Round(window.Least, 9), Math.Round(window.Most, 9)));
    }

    // Two shank diameters or 19 mm, and the bearing at the tip takes its part of the reach.
    [Fact]
    public void Reach_is_what_sticks_out_when_the_shank_is_held()
    {
        Assert.Equal((19.0, 25.4), (Grip.Least(6.35), Grip.Least(12.7)));
        Bit top = Catalogues.Shipped.Bits.Find("top-bearing-1/2-long")!;
        Assert.Equal(63.5 - 19, HandSetUp.ReachOf(top, 0), 9);
        Assert.Equal(63.5 - 19 - 4, HandSetUp.ReachOf(top, 4), 9);
        Bit tip = Catalogues.Shipped.Bits.Find("tip-bearing-1/2")!;
        Assert.Equal(57.15 - 19 - 4.7625 - 0.3, HandSetUp.ReachOf(tip, 0), 9);
    }

    // The edge near you, fed from left to right, seen from above: the same classes as the grain's own reading of that edge and its fibres.
    [Fact]
    public void Hand_feed_reads_the_grain_as_the_cut_does() => Gen.Double[-89, 89].Sample(lean =>
    {
        double turn = lean * Math.PI / 180;
        var fibre = new Point2(1, 0);
        Assert.Equal(Grain.ClassOf(Grain.Angle(Point2.Direction(turn), fibre)), HandFeed.ClassOf(EndSide.Right, lean));
        Assert.Equal(Grain.ClassOf(Grain.Angle(Point2.Direction(-turn), fibre)), HandFeed.ClassOf(EndSide.Left, lean));
    });

    [Fact]
    public void A_right_hand_end_is_with_the_grain_and_climbing_is_never_told()
    {
        Assert.Equal(GrainClass.With, HandFeed.ClassOf(EndSide.Right, 35));
        Assert.Equal(GrainClass.Against, HandFeed.ClassOf(EndSide.Left, 35));
        Assert.All(Enum.GetValues<GrainClass>(), k => Assert.Contains("left to right", HandFeed.Say(k), StringComparison.Ordinal));
        Assert.Contains("Never climb by hand", HandFeed.Say(GrainClass.Against), StringComparison.Ordinal);
    }
}
