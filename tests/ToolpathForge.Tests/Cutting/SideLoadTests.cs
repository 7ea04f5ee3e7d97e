using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;
using ToolpathForge.Jobs;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cutting;

public class SideLoadTests
{
    // FL³/(3EI) worked by hand: carbide 600 GPa, steel 205 GPa, core 0.8 of the diameter.
    [Theory]
    [InlineData(6.35, BitSubstance.Carbide, 25, 40, 0.0106)]
    [InlineData(6.35, BitSubstance.Carbide, 38, 40, 0.0373)]
    [InlineData(6.35, BitSubstance.Steel, 38, 40, 0.1092)]
    [InlineData(3.175, BitSubstance.Carbide, 15, 20, 0.0184)]
    [InlineData(12.7, BitSubstance.Steel, 50, 80, 0.0311)]
    public void Bits_bend_as_worked(double diameter, BitSubstance substance, double length, double force, double bends) =>
        Assert.Equal(bends, SideLoad.Bending(force, length, diameter, substance), 4);

    // Chip thinning: 10 % engagement takes chips 0.6 of the feed a tooth (any machining handbook).
    [Fact]
    public void A_tenth_of_the_diameter_thins_the_chip_to_0_6() => Assert.Equal(0.6, SideLoad.ThickestChip(1, 1, 10), 9);

    // A frame of 50 N/mm gives way 0.72 mm under the 36 N of a finish 38 mm deep: far more than the bit.
    [Fact]
    public void A_light_frame_gives_way_more_than_its_bit()
    {
        Assert.Equal(0.72, 36.0 / 50, 9);
        Assert.True(SideLoad.Bending(36, 41, 6.35, BitSubstance.Carbide) < 0.1);
    }

    [Fact]
    public void The_finish_goes_in_steps_until_the_push_is_below_a_third_of_the_allowance()
    {
        Make make = TestJobs.BoardEnd(TestJobs.Belly(), thickness: 25.4);
        foreach (double stiffness in (double[])[10, 30, 50, 200, 2000])
        {
            CutSettings s = CutSettings.For(make, TestJobs.Machine with { Stiffness = stiffness }, 0);
            Assert.True(s.GivesWay < s.Allowance / 3 || s.FinishSteps.Length == 12);
            Assert.Equal(s.Steps[^1], s.FinishSteps[^1], 9);
            Assert.True(s.FinishSteps.Length == 1 || s.CleanUp);
            Assert.Equal(s.FinishSteps.Length + (s.CleanUp ? 1 : 0), s.FinishDepths.Count());
        }

        Assert.Single(CutSettings.For(make, TestJobs.Machine with { Stiffness = 5000 }, 0).FinishSteps);
    }

    [Fact]
    public void A_compression_bit_starts_no_shallower_than_its_up_cut_part()
    {
        Bit bit = TestJobs.Bit(6.35, 28.6) with { Kind = BitKind.Compression, UpCutLength = 6 };
        CutSettings s = CutSettings.For(TestJobs.BoardEnd(TestJobs.Belly(), thickness: 18, bit: bit), TestJobs.Machine, 0);
        Assert.InRange(s.Steps[0], 6, 18.4);
    }

    // Even steps worked by hand: 18.5 by 6.35 in three of 6.1667; by half of it in six of 3.0833; 25.9 by three quarters of 12.7 in three of 8.6333.
    [Theory]
    [InlineData(18.5, 6.35, 3, 6.1667)]
    [InlineData(18.5, 3.175, 6, 3.0833)]
    [InlineData(25.9, 9.525, 3, 8.6333)]
    public void Steps_are_even(double total, double limit, int count, double step)
    {
        var steps = CutSettings.EvenSteps(total, limit);
        Assert.Equal(count, steps.Length);
        Assert.Equal(step, steps[0], 4);
        Assert.Equal(total, steps[^1]);
    }
}
