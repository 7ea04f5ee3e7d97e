using ToolpathForge.Catalogue;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Checks.Hand;

public class HandWorkTests
{
    private static readonly Bit s_top = Catalogues.Shipped.Bits.Find("top-bearing-1/2-long")!;

    // L 25.4, t 12.7, s 18: 31.70 to 37.10 mm by the table of depths (worked from c, o and m of common practice); 5.4 mm of window of which the least that cuts through is taken.
    [Theory]
    [InlineData(LengthUnit.Millimetre, 32)]
    [InlineData(LengthUnit.Inch, 31.75)]
    public void The_depth_to_set_is_the_least_mark_that_cuts_through(LengthUnit unit, double best)
    {
        Bit bit = s_top with { FluteLength = 25.4, OverallLength = 90 };
        NamedWindow one = Assert.Single(HandSettings.Of(new HandQuestion(bit, 18) { Pattern = 12.7 }).Windows);
        Assert.Equal(31.70, one.Window.Least, 0.001);
        Assert.Equal(best, one.Window.Best(one.CutsThrough, unit), 6);
        Assert.True(one.Window.Holds(one.Window.Best(one.CutsThrough, unit)));
        Assert.Equal(0, Math.IEEERemainder(one.Window.Best(one.CutsThrough, unit), RuleText.Step(unit)), 9);
    }

    [Fact]
    public void Every_depth_to_set_holds_whatever_the_unit()
    {
        for (double board = 12; board < 45; board += 0.7)
        {
            foreach (NamedWindow named in HandSettings.Of(new HandQuestion(s_top, board) { Pattern = 12.7 }).Windows.Where(w => w.Window.IsOpen))
            {
                Assert.All(Enum.GetValues<LengthUnit>(), unit => Assert.True(named.Window.Holds(named.Window.Best(named.CutsThrough, unit))));
            }
        }
    }

    // By diameter, common practice of router bit makers' tables: to 1 in 24,000, to 2 in 18,000, to 2 1/2 in 16,000, to 3 1/2 in 12,000 rpm.
    [Theory]
    [InlineData(0.5, 24000)]
    [InlineData(1, 24000)]
    [InlineData(1.75, 18000)]
    [InlineData(2, 18000)]
    [InlineData(2.5, 16000)]
    [InlineData(3.5, 12000)]
    [InlineData(4, 10000)]
    public void Large_bits_turn_slower(double inches, double most) => Assert.Equal(most, SpeedByDiameter.Most(inches * 25.4));

    [Fact]
    public void A_speed_by_hand_is_held_against_diameter_and_row()
    {
        Bit large = s_top with { Diameter = 44.45, MaxSpeed = 24000, Bearing = s_top.Bearing! with { Diameter = 44.45 } };
        SettingsAnswer fast = HandSettings.Of(new HandQuestion(large, 25.4) { Pattern = 6, Speed = 24000 });
        Assert.Contains(fast.Findings, f => f.Kind.Code == "hand-speed-high" && f.Kind.Severity == Severity.Stop);
        Assert.DoesNotContain(HandSettings.Of(new HandQuestion(large, 25.4) { Pattern = 6, Speed = 18000 }).Findings, f => f.Kind.Code.StartsWith("hand-speed", StringComparison.Ordinal));
        Assert.Contains(HandSettings.Of(new HandQuestion(large, 25.4) { Pattern = 6 }).Findings, f => f.Kind.Code == "hand-speed-set");
        Assert.Contains(HandSettings.Of(new HandQuestion(s_top with { MaxSpeed = 16000 }, 25.4) { Pattern = 6, Speed = 18000 }).Findings, f => f.Kind.Code == "hand-speed-high");
    }

    // 18 gauge brads are sold in 5/8 to 2 in; 3/8 in must be in the board (common practice): 1/4 in + 3/8 in = 5/8 in; 3/4 in + 3/8 in = 1 1/8 in, so 1 1/4 in.
    [Theory]
    [InlineData(6.35, 38.1, 0.625)]
    [InlineData(12.7, 38.1, 1.0)]
    [InlineData(19.05, 38.1, 1.25)]
    [InlineData(19.05, 12, null)]
    public void Brads_are_as_long_as_pattern_and_board_ask(double pattern, double board, double? inches)
    {
        Assert.Equal(inches, Brads.Length(pattern, board));
        Assert.Contains(inches is null ? "tape" : "brads", Brads.Say(pattern, board), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false, GrainClass.With)]
    [InlineData(true, GrainClass.Against)]
    public void A_curve_is_with_the_grain_at_the_right_and_against_it_at_the_left(bool leftHand, GrainClass expected) =>
        Assert.Equal(expected, HandGrain.Of(Belly, 0, leftHand));

    // The flat end of the curve runs along the board: fibres that slope one way lift there, by the definition of the grain angle; those that slope the other way do not.
    [Fact]
    public void Sloping_grain_is_heard() =>
        Assert.NotEqual(HandGrain.Of(Belly, 12, false) == GrainClass.Against, HandGrain.Of(Belly, -12, false) == GrainClass.Against);

    private static Profile Belly
    {
        get
        {
            ShapeSpec spec = TestJobs.Belly(80, 60);
            return spec.Shape.Scale(spec, 140, [])!;
        }
    }
}
