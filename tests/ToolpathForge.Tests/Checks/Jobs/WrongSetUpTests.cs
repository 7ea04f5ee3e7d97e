using ToolpathForge.Findings;
using ToolpathForge.Planning;

namespace ToolpathForge.Tests.Checks.Jobs;

/// <summary>A right set-up with one thing wrong: exactly the finding that it should have, and no other stop.</summary>
public class WrongSetUpTests
{
    public static TheoryData<string, string, string, string> Boards => new()
    {
        // what is replaced, by what, the finding, what it is about
        { "\"upcut-1/4-long\"", "\"stub\"", "stick-out-too-short", "44 - 19 = 25 of the 25.8" },
        { "\"upcut-1/4-long\"", "\"short-shank\"", "nut-too-low", "45.5 - 19 = 26.5, 0.7 above the stock" },
        { "\"upcut-1/4-long\"", "\"upcut-1/4\"", "bit-too-short", "edges of 25.4" },
        { "\"upcut-1/4-long\"", "\"thick-shank\"", "shank-in-cut", "a shank of 6.35 above a cut of 4" },
        { "\"upcut-1/4-long\"", "\"thin-shank\"", "bit-too-short", "a thin shank follows, and the finish needs the edges" },
        { "\"upcut-1/4-long\"", "\"upcut-1/2\"", "shank-too-thick", "half an inch in a quarter-inch collet" },
        { "\"upcut-1/4-long\"", "\"round-over-1/4\"", "bit-wrong-form", "a bit that rounds edges" },
        { "\"upcut-1/4-long\"", "\"upcut-1/4-lng\"", "unknown-id-near", "a slip of the pen" },
        { "\"desktop-400\"", "\"low\"", "opening-too-low", "37.4 under 30" },
        { "\"desktop-400\"", "\"snug\"", "raised-too-high", "12 + 25.4 + 5 + 25.8 + 3 = 71.2 over 70" },
        { "\"desktop-400\"", "\"sliding\"", "moving-bed-overhang", "16 in over a bed that moves" },
        { "\"desktop-400\"", "\"short-z\"", "outside-travel-z", "30.8 of travel" },
        { "length = \"30\", on-bed = \"14\"", "length = \"380\", on-bed = \"2\"", "board-tips-machine", "a board of 32 ft held by its tip" },
        { "length = \"30\", on-bed = \"14\"", "length = \"30\", on-bed = \"31\"", "on-bed-beyond-board", "more than there is" },
        { "spoilboard = \"12 mm\"", "spoilboard = \"6 mm\"", "spoilboard-thin", "5.6 left of 6" },
        { "overcut = \"0.4 mm\"", "tabs = 4", "tabs-on-board-end", "nothing to stand on" },
        { "overcut = \"0.4 mm\"", "tab-length = \"8 mm\"", "tabs-on-board-end", "nothing to stand on" },
        { "overcut = \"0.4 mm\"", "skin = \"1 mm\"", "skin-on-board", "tears away" },
        { "overcut = \"0.4 mm\"", "speed = 30000", "speed-outside-machine speed-above-bit", "two limits, both true" },
        { "overcut = \"0.4 mm\"", "feed = \"9000 mm/min\"", "feed-outside-machine chip-too-thick", "both follow from the feed" },
        { "overcut = \"0.4 mm\"", "plunge = \"3000 mm/min\"", "plunge-outside-machine", "above 1200" },
        { "depth = \"2 1/2\"", "depth = \"5 1/4\"", "shape-too-deep", "nothing of the end left" },
        { "allowance = \"1/8\"", "allowance = \"1/8\", fence-room = \"1 mm\"", "fence-room", "the bit runs out into the fence" },
        { "western-red-cedar", "mdf", "material-not-timber", "a panel" },
    };

    public static TheoryData<string, string, string, string> Plates => new()
    {
        { "\"downcut-1/4\"", "\"edge-only\"", "bit-cannot-plunge", "no way down" },
        { "\"downcut-1/4\"", "\"upcut-1/2\"", "shank-too-thick", "half an inch in a quarter-inch collet" },
        { "\"downcut-1/4\"", "\"ball-1/4\"", "bit-wrong-form", "no square wall" },
        { "hold = \"4\"", "hold = \"9\"", "outside-travel", "longer than the machine" },
        { "tabs = 4", "tabs = 3, tab-form = \"square\", tab-length = \"4 mm\", tab-height = \"3.6 mm\"", "tab-too-high", "3.6 of 5.6, where three fifths are 3.36" },
        { "tabs = 4", "tabs = 40", "tabs-impossible", "no room for forty" },
        { "tabs = 4, overcut = \"0.3 mm\"", "skin = \"4 mm\"", "skin-too-thick", "no knife goes through" },
        { "run = \"7 1/2\", depth = \"4 1/4\"", "run = \"1/16\", depth = \"1/16\"", "curve-too-tight", "tighter than the bit" },
        { "thickness = \"5.6 mm\"", "flatness = \"0.2 mm\"", "thickness-missing", "a nominal one is never taken" },
        { "overcut = \"0.3 mm\"", "overcut = \"0.3 mm\", speed = 25000", "speed-outside-machine speed-above-bit", "two limits, both true" },
        { "reach = \"1/2\" }", "reach = \"3/8\" }\nmeasured = [{ width = \"7 3/16\" }, { width = \"7.6\" }]", "plate-reach-short", "0.35 in wider and 1/16 past that" },
        { "reach = \"1/2\" }", "reach = \"0.06\" }", "plate-reach-short", "less than 1/16 in past the board" },
        { "reach = \"1/2\" }", "reach = \"3\", base = \"6\" }", "plate-base-tips", "half a base on a seat of 1 1/2" },
        { "unit = \"in\"", "unit = \"in\"\ntolerance = \"0.005 mm\"", "tolerance-too-fine", "three decimals cannot hold it" },
        { "unit = \"in\"", "unit = \"in\"\nspoilboard = \"6 mm\"", "spoilboard-thin", "5.7 left of 6" },
    };

    [Theory]
    [MemberData(nameof(Boards))]
    public void A_board_end_with_one_thing_wrong_is_told_so(string from, string to, string codes, string about) => Told(SetUpJobs.Board, from, to, codes, about);

    [Theory]
    [MemberData(nameof(Plates))]
    public void A_pattern_with_one_thing_wrong_is_told_so(string from, string to, string codes, string about) => Told(SetUpJobs.Plate, from, to, codes, about);

    [Fact]
    public void Right_set_ups_have_no_stop_and_no_warning()
    {
        Assert.All((string[])[SetUpJobs.Board, SetUpJobs.Plate], job =>
        {
            (Plan? plan, Finding[] findings) = SetUpJobs.Plan(job);
            Assert.Equal("", string.Join(' ', findings.Where(f => f.Kind.Severity != Severity.Note).Select(f => f.Kind.Code)));
            Assert.Single(plan!.Programs);
        });
    }

    [Fact]
    public void A_machine_without_homing_is_told_the_room_it_needs()
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Plate, ("\"desktop-400\"", "\"lost\"")));
        Finding note = Assert.Single(findings, f => f.Kind.Code == "room-from-zero");
        double Of(string name) => note.Args.Single(a => a.Name == name).Quantity!.Value.Value;

        // A plate lies to the right of and beyond its zero: 4 + 7 1/2 in and more along X, 9 1/4 across and more.
        Assert.Equal(0, Of("left"));
        Assert.Equal(0, Of("near"));
        Assert.InRange(Of("right"), 11.5 * 25.4, 400);
        Assert.InRange(Of("far"), 9.25 * 25.4, 300);
    }

    [Fact]
    public void A_frame_that_gives_way_is_a_warning()
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Board, ("\"desktop-400\"", "\"limp\"")));
        Assert.Contains(findings, f => f.Kind.Code == "finish-pushed-aside");
        Assert.DoesNotContain(findings, f => f.Kind.Severity == Severity.Stop);
    }

    // Of 0.1 mm a quarter-inch bit takes chips a quarter as thick as its feed a tooth (see the settings' own test); more allowance is all it needs.
    [Fact]
    public void A_finish_too_light_to_cut_is_a_warning_that_an_allowance_takes_away()
    {
        string job = SetUpJobs.With(SetUpJobs.Board, ("overcut = \"0.4 mm\"", "overcut = \"0.4 mm\", allowance = \"0.1 mm\""));
        Finding thin = Assert.Single(SetUpJobs.Plan(job).Findings, f => f.Kind.Code == "finish-chip-thin");
        Assert.Equal(Severity.Warn, thin.Kind.Severity);
        Assert.Equal(15, thin.Place.Line);
        Assert.DoesNotContain(SetUpJobs.Plan(SetUpJobs.With(job, ("\"0.1 mm\"", "\"0.4 mm\""))).Findings, f => f.Kind.Code == "finish-chip-thin");
    }

    // By diameter, common practice: 18,000 rpm to 2 in.
    [Fact]
    public void A_wide_bit_that_turns_too_fast_is_told_so()
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(
            SetUpJobs.Board, ("\"desktop-400\"", "\"tall\""), ("upcut-1/4-long", "wheel"), ("overcut = \"0.4 mm\"", "speed = 24000, pass-depth = \"2 mm\"")));
        Finding stop = Assert.Single(findings, f => f.Kind.Severity == Severity.Stop);
        Assert.Equal("speed-too-high-for-size", stop.Kind.Code);
        Assert.Equal((24000.0, 18000.0), (stop.Found!.Value.Value, stop.Allowed!.Value.Value));
    }

    private static void Told(string job, string from, string to, string codes, string about)
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(job, (from, to)));
        string stops = string.Join(' ', findings.Where(f => f.Kind.Severity == Severity.Stop).Select(f => f.Kind.Code));
        Assert.True(stops == codes, $"{about}: '{codes}' was expected, '{stops}' is told.");
    }
}
