using CsCheck;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Findings;

namespace ToolpathForge.Tests.Checks.Settings;

/// <summary>Set-ups of a hand router: what is told, one wrong thing at a time.</summary>
public class HandSettingsTests
{
    private static readonly Bit s_top = Catalogues.Shipped.Bits.Find("top-bearing-1/2-long")!;
    private static readonly Bit s_tip = Catalogues.Shipped.Bits.Find("tip-bearing-1/2")!;
    private static readonly Bit s_straight = Catalogues.Shipped.Bits.Find("straight-1/2")!;

    private static HandQuestion Right => new(s_top, 25.4) { Pattern = 6, Depth = 33, End = EndSide.Right, InsideRadius = 40, Bite = 1.6, Speed = 18000 };

    private static string Codes(SettingsAnswer answer) => string.Join(' ', answer.Findings.Select(f => f.Kind.Code));

    [Fact]
    public void A_right_set_up_has_no_findings()
    {
        SettingsAnswer answer = HandSettings.Of(Right);
        Assert.Empty(answer.Findings);
        Assert.All(answer.Rows, r => Assert.Equal(Verdict.Fits, r.Verdict));
        Assert.Contains("with the grain", answer.Feed, StringComparison.Ordinal);
        Assert.True(answer.Windows.Single().Window.IsOpen);
    }

    [Fact]
    public void What_is_left_out_is_told_as_what_may_be_set()
    {
        SettingsAnswer answer = HandSettings.Of(new HandQuestion(s_top, 25.4) { Pattern = 6 });
        Assert.Empty(answer.Findings);
        Assert.Equal(Verdict.SetIt, answer.Rows.Single(r => r.Setting == "depth").Verdict);
    }

    public static TheoryData<string, string> Wrong => new()
    {
        { "no guide", "hand-no-guide" },
        { "nothing to follow", "hand-nothing-to-follow" },
        { "thin pattern", "hand-pattern-thin" },
        { "cutter short", "hand-two-passes" },
        { "board thick", "hand-board-thick" },
        { "edge shallow", "hand-edge-shallow" },
        { "edge", "" },
        { "reach", "hand-out-of-reach" },
        { "too deep", "hand-depth-outside" },
        { "too shallow", "hand-depth-outside" },
        { "hollow", "hand-curve-tight" },
        { "small bearing", "hand-guide-small" },
        { "large bearing", "hand-guide-large" },
        { "bushing", "hand-guide-large" },
        { "bushing long", "hand-guide-large hand-bushing-long" },
        { "bite", "hand-bite-large" },
        { "grain", "hand-against-grain" },
        { "tip bearing", "" },
        { "tip bearing, thin pattern", "hand-pattern-thin" },
        { "tip bearing, thin pattern, hanging", "" },
        { "tip bearing, thick board", "hand-board-thick" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void One_wrong_thing_is_told_and_nothing_else(string what, string codes)
    {
        HandQuestion q = Right;
        HandQuestion tip = q with { Bit = s_tip, Board = 18, Pattern = 12.7, Depth = null };
        q = what switch
        {
            "no guide" => q with { Bit = s_straight },
            "nothing to follow" => q with { Pattern = null },
            "thin pattern" => q with { Pattern = 3.2, Depth = null },
            "cutter short" => q with { Board = 32, Pattern = 12.7, Depth = null },
            "board thick" => q with { Board = 60, Depth = null, Bit = s_top with { OverallLength = 150 } },
            "edge shallow" => q with { Pattern = null, Machined = 8, Board = 38.1, Depth = null },
            "edge" => q with { Pattern = null, Machined = 16, Board = 38.1, Depth = 40 },
            "reach" => q with { ColletHeight = 15, Depth = null },
            "too deep" => q with { Depth = 33.7 },
            "too shallow" => q with { Depth = 32.3 },
            "hollow" => q with { InsideRadius = 6 },
            "small bearing" => q with { Bit = s_top with { Bearing = s_top.Bearing! with { Diameter = 12 } } },
            "large bearing" => q with { Bit = s_top with { Bearing = s_top.Bearing! with { Diameter = 15.875 } } },
            "bushing" => q with { Bit = s_straight, Bushing = 30, BushingLength = 5, Depth = 40 },
            "bushing long" => q with { Bit = s_straight, Bushing = 30, BushingLength = 5.7, Depth = 40, Pattern = 6.1 },
            "bite" => q with { Bite = 4 },
            "grain" => q with { End = EndSide.Left },
            "tip bearing" => tip,
            "tip bearing, thin pattern" => tip with { Pattern = 6 },
            "tip bearing, thin pattern, hanging" => tip with { Pattern = 6, MayHang = true },
            "tip bearing, thick board" => tip with { Board = 25 },
            _ => throw new ArgumentException(what, nameof(what)),
        };
        Assert.Equal(codes, Codes(HandSettings.Of(q)));
    }

    [Fact]
    public void The_second_pass_follows_from_the_depth_of_the_first()
    {
        HandQuestion q = new(s_top with { FluteLength = 19.05, OverallLength = 80 }, 32) { Pattern = 12.7, Depth = 30.5 };
        DepthWindow second = HandSettings.Of(q).Windows[1].Window;
        Assert.Equal(19.05 + (30.5 - 12.7) - 1, second.Most, 9);
        Assert.Equal(33, second.Least, 9);
    }

    // Where no depth serves there is a reason that stops; where nothing stops, every pass has depths, and its middle keeps every limit.
    [Fact]
    public void A_closed_window_always_has_a_reason()
    {
        Gen<HandQuestion> any =
            from flute in Gen.Double[8, 55]
            from overall in Gen.Double[60, 140]
            from height in Gen.Double[2, 8]
            from gap in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.1, 2])
            from pattern in Gen.Double[1, 20]
            from board in Gen.Double[8, 80]
            from collet in Gen.Double[-5, 20]
            from machined in Gen.OneOf(Gen.Const(0.0), Gen.Double[2, 40])
            from tip in Gen.Bool
            from hang in Gen.Bool
            select new HandQuestion((tip ? s_tip : s_top) with { FluteLength = flute, OverallLength = overall, Bearing = new Bearing(12.7, height, gap) }, board)
            {
                Pattern = pattern,
                Machined = machined > 0 && !tip ? machined : null,
                ColletHeight = collet,
                MayHang = hang,
            };
        any.Sample(q =>
        {
            SettingsAnswer answer = HandSettings.Of(q);
            bool stopped = answer.Findings.Any(f => f.Kind.Severity == Severity.Stop);
            Assert.Equal(answer.Windows.All(w => w.Window.IsOpen), !stopped);
            Assert.All(answer.Windows.Where(w => w.Window.IsOpen), w => Assert.True(w.Window.Holds(w.Window.Middle)));
        });
    }
}
