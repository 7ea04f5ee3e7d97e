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

    // Hooke: a frame of 50 N/mm gives way 0.72 mm under the 36 N of a finish 38 mm deep; the bit, 41 mm out of its collet, adds 0.0422 (FL³/(3EI) worked by hand: I = 32.69 mm⁴). A stiff
    // frame leaves the bit alone.
    [Theory]
    [InlineData(50, 0.7622)]
    [InlineData(1e9, 0.0422)]
    public void Frame_and_bit_give_way_one_after_the_other(double stiffness, double together) =>
        Assert.Equal(together, SideLoad.GivingWay(36, 41, TestJobs.Bit(), stiffness), 1e-4);

    // Castigliano: the end of a cantilever moves by the sum of moment times unit moment over EI along it. The section's second moment is summed from strips of a circle; neither sum knows
    // the formula. Moduli: carbide 600 kN/mm² (from memory), steel 205 (any handbook); core 0.8 (from memory).
    [Theory]
    [InlineData(6.35, 38, 36, BitSubstance.Carbide, 600_000)]
    [InlineData(3.175, 16, 12, BitSubstance.Carbide, 600_000)]
    [InlineData(12.7, 60, 90, BitSubstance.Steel, 205_000)]
    public void A_bit_bends_as_the_sum_over_its_slices(double diameter, double length, double force, BitSubstance substance, double modulus)
    {
        const int Slices = 4000;
        double radius = 0.8 * diameter / 2;
        double inertia = 0;
        double energy = 0;
        for (int i = 0; i < Slices; i++)
        {
            double y = radius * ((2 * (i + 0.5) / Slices) - 1);
            inertia += y * y * 2 * Math.Sqrt((radius * radius) - (y * y)) * 2 * radius / Slices;
            double x = length * (i + 0.5) / Slices;
            energy += force * x * x * length / Slices;
        }

        double bends = energy / (modulus * inertia);
        Assert.Equal(bends, SideLoad.Bending(force, length, diameter, substance), bends * 1e-4);
    }

    // Tabs hold four times the force of a full pass (judgment), each by shear over length times height at 2 N/mm² (strength of materials; the strength from memory). By hand: hardboard pushes
    // with 35 N/mm², passes of 5.9/2 = 2.95 mm take 0.11364 mm a tooth (2,500 mm/min at 11,000 rpm, two flutes), so 11.73 N. Tabs of 1 x 1 mm hold 2 N: 24; of 2 x 1 mm 4 N: 12; of
    // 8 x 1.96 mm 31 N: two would do, and three it is, as many as hold a plate.
    [Theory]
    [InlineData(1.0, 1.0, 24)]
    [InlineData(2.0, 1.0, 12)]
    [InlineData(null, null, 3)]
    public void Tabs_are_as_many_as_hold_the_force(double? length, double? height, int tabs)
    {
        CutChoices cut = TestJobs.NoChoices with { TabLength = length, TabHeight = height };
        CutSettings s = CutSettings.For(TestJobs.Pattern(TestJobs.Scoop(), cut: cut), TestJobs.Machine, 300);
        Assert.Equal((11000, 2500, 2.95), (s.Speed, s.Feed, Math.Round(s.Steps[0], 9)));
        Assert.Equal(tabs, s.TabCount);
    }

    // A bit goes down at a quarter to a half of its feed (common practice), never faster than the machine's own limit; here three tenths of 2,500 mm/min are 750, and the machine stands 600.
    [Fact]
    public void Straight_down_goes_slower_and_no_faster_than_the_machine()
    {
        Make make = TestJobs.Pattern(TestJobs.Scoop());
        Assert.Equal(600, CutSettings.For(make, TestJobs.Machine, 300).Plunge);
        CutSettings free = CutSettings.For(make, TestJobs.Machine with { MaxPlunge = 5000 }, 300);
        Assert.Equal(750, free.Plunge);
        Assert.InRange(free.Plunge, free.Feed / 4, free.Feed / 2);
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
