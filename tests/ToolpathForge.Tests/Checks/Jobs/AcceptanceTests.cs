using ToolpathForge.Checks.Hand;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.RunSheets;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Checks.Jobs;

/// <summary>Set-ups that a carpenter knows the answer to, worked by hand; figures in the comments.</summary>
public class AcceptanceTests
{
    private static readonly (string, string) s_fir = ("western-red-cedar", "douglas-fir");

    private static Finding[] Stops(Finding[] findings) => [.. findings.Where(f => f.Kind.Severity == Severity.Stop)];

    // 5.6 + 0.3 = 5.9 in passes of at most half a diameter, 3.175: two of 2.95.
    [Fact]
    public void A_hardboard_pattern_takes_two_passes()
    {
        (Plan? plan, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.Plate);
        Assert.Empty(Stops(findings));
        PlannedProgram program = Assert.Single(plan!.Programs);
        Assert.Equal([2.95, 5.9], program.Cut.Settings.Steps.Select(s => Math.Round(s, 9)));
        Assert.Equal(16000, program.Cut.Settings.Speed);
    }

    // 25.4 + 0.4 = 25.8 deep.
    [Fact]
    public void A_cedar_bracket_is_cut_straight_into_the_board()
    {
        (Plan? plan, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.Board);
        Assert.Empty(Stops(findings));
        Assert.Equal(25.8, Assert.Single(plan!.Programs).Cut.Settings.Steps[^1], 9);
    }

    // Between the tracks of two plates on one bed the bit must find room for each, and 2 mm beside each: 2 (R + 2), R half the bit.
    [Theory]
    [InlineData("downcut-1/4", 6.35)]
    [InlineData("downcut-1/2", 12.7)]
    public void Plates_on_one_bed_keep_their_distance(string bit, double diameter)
    {
        (Plan? plan, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(
            SetUpJobs.Plate, ("desktop-400", "tall"), ("\"downcut-1/4\"", $"\"{bit}\""), ("kind = \"pattern\"", "kind = \"pattern\"\ncount = 4")));
        Assert.Empty(Stops(findings));
        Box2[] boxes =
        [
            .. Assert.Single(plan!.Programs).Cut.Clamping.Pieces.Select(p => ArcFit.Fit(p.Exact, 0.01).Contour.Box),
        ];
        Assert.Equal(4, boxes.Length);
        for (int i = 0; i < boxes.Length; i++)
        {
            for (int k = 0; k < i; k++)
            {
                double apart = Math.Max(
                    Math.Max(boxes[i].MinX - boxes[k].MaxX, boxes[k].MinX - boxes[i].MaxX), Math.Max(boxes[i].MinY - boxes[k].MaxY, boxes[k].MinY - boxes[i].MaxY));
                Assert.True(apart >= 2 * ((diameter / 2) + 2), $"{i} and {k} are {apart} apart.");
            }
        }
    }

    // Fir 2x6, 8 ft, both ends, sloping grain, a stand: one program, run twice, the second time end over end.
    [Fact]
    public void Both_ends_of_a_rafter_with_sloping_grain_come_from_one_program()
    {
        (Plan? plan, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(
            SetUpJobs.Board, s_fir, ("\"1x6\"", "\"2x6\"\nends = \"both\""), ("desktop-400", "tall"), ("upcut-1/4-long", "upcut-1/2-long"), ("thickness = \"25.4 mm\", ", ""),
            ("length = \"30\", on-bed = \"14\"", "length = \"96\", on-bed = \"20\", grain-slope = \"1:8\""),
            ("form = \"belly\", run = \"3 1/4\", depth = \"2 1/2\"", "form = \"scoop\", run = \"5\", depth = \"3\""), ("allowance = \"1/8\", waste = \"screwed\"", "allowance = \"1/8\", waste = \"chips\", stand = true")));
        Assert.Empty(Stops(findings));
        Clamping clamping = Assert.Single(plan!.Programs).Cut.Clamping;
        Assert.Equal(2, clamping.Times);
        Assert.Equal([(1, 1), (1, 2)], clamping.Turns.Select(t => (t.Board, t.End)));
    }

    // Fir 2x6, 38.1 thick, scoop 4 x 3, machined 16 deep; then by hand with edges of 25.4, a bearing of 4.76 and 3 of contact: at least 38.1 + 1 = 39.1, at
    // most 25.4 + 16 - 1 = 40.4. Proven as it is: 16 deep, 22.1 left.
    [Fact]
    public void The_machine_starts_and_the_hand_finishes()
    {
        string job = SetUpJobs.With(SetUpJobs.Board, s_fir, ("\"1x6\"", "\"2x6\""), ("thickness = \"25.4 mm\", ", ""), ("cut = { overcut = \"0.4 mm\" }", "hand = { bit = \"top-bearing-1/2\", machined = \"16 mm\" }"),
            ("form = \"belly\", run = \"3 1/4\", depth = \"2 1/2\"", "form = \"scoop\", run = \"4\", depth = \"3\""));
        (Plan? plan, Finding[] findings) = SetUpJobs.Plan(job);
        Assert.Empty(Stops(findings));
        PlannedProgram program = Assert.Single(plan!.Programs);
        Assert.Equal((16.0, 22.1), (program.Cut.Settings.Steps[^1], Math.Round(program.Cut.Settings.Skin, 9)));
        Assert.True(program.Proof.Passed);
        ProfilePiece piece = Assert.IsType<ProfilePiece>(Assert.Single(plan.Pieces));
        SettingsAnswer hand = JobHand.Of(piece.Make, piece.Profile)!;
        DepthWindow window = Assert.Single(hand.Windows).Window;
        Assert.Equal((39.1, 40.4), (Math.Round(window.Least, 9), Math.Round(window.Most, 9)));
        string sheet = RunSheetPage.Write(plan);
        Assert.Contains("Saw the waste off inside the slot, 1/16 in outside the finished edge.", sheet, StringComparison.Ordinal);
        Assert.Contains("board 1 1/2 in + overcut 0.0394 in = 1.5394 in", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("skin", sheet, StringComparison.Ordinal);

        // The same board without the hand is too thick for that bit's edges.
        Assert.Contains(Stops(SetUpJobs.Plan(SetUpJobs.With(job, ("hand = { bit = \"top-bearing-1/2\", machined = \"16 mm\" }", ""))).Findings), f => f.Kind.Code == "bit-too-short");
    }

    // Waste that is sawn off first leaves its margin below the machined edge: up to one bite it is the router's, more is sawn again.
    [Theory]
    [InlineData("3 mm", "", "0.118 in stands outside the finished edge: the router takes it, so there&#39;s nothing more to saw.")]
    [InlineData("5 mm", "", "0.197 in stands outside the finished edge: saw or plane that down to 1/16 in, without touching the edge.")]
    [InlineData("3 mm", ", bite = \"2 mm\"", "0.118 in stands outside the finished edge: saw or plane that down to 5/64 in, without touching the edge.")]
    public void Where_the_waste_is_sawn_off_first_the_hand_is_not_told_to_saw_inside_the_slot(string margin, string more, string says)
    {
        (Plan? plan, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(
            SetUpJobs.Board, s_fir, ("\"1x6\"", "\"2x6\""), ("thickness = \"25.4 mm\", ", ""),
            ("cut = { overcut = \"0.4 mm\" }", $"hand = {{ bit = \"top-bearing-1/2\", machined = \"16 mm\"{more} }}"),
            ("form = \"belly\", run = \"3 1/4\", depth = \"2 1/2\"", "form = \"scoop\", run = \"4\", depth = \"3\""),
            ("waste = \"screwed\"", $"waste = \"sawn\", saw-margin = \"{margin}\"")));
        Assert.Empty(Stops(findings));
        string sheet = RunSheetPage.Write(plan!);
        Assert.Contains(says, sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("inside the slot", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("what held the waste", sheet, StringComparison.Ordinal);
    }

    // What the hand needs of the machine's edge: bearing 0 + 3 + 1, and 38.1 + 1 + 1 - 25.4 = 14.7 deep.
    [Theory]
    [InlineData("machined = \"14.6 mm\"", "hand-edge-shallow")]
    [InlineData("machined = \"14.7 mm\"", "")]
    [InlineData("machined = \"16 mm\", bite = \"6 mm\"", "hand-bite-large")]
    [InlineData("machined = \"16 mm\", bite = \"3.1 mm\", collet-height = \"3 mm\"", "hand-out-of-reach")]
    [InlineData("machined = \"38.1 mm\"", "hand-nothing-left")]
    [InlineData("board = \"38.1 mm\"", "misplaced-key missing-key")]
    public void The_machine_must_cut_deep_enough_for_the_hand(string hand, string codes)
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Board, s_fir, ("\"1x6\"", "\"2x6\""), ("thickness = \"25.4 mm\", ", ""),
            ("cut = { overcut = \"0.4 mm\" }", $"hand = {{ bit = \"top-bearing-1/2\", {hand} }}")));
        Assert.Equal(codes, string.Join(' ', Stops(findings).Select(f => f.Kind.Code).Order(StringComparer.Ordinal)));
        Assert.All(Stops(findings), f => Assert.Equal(15, f.Place.Line));
    }

    // A slot of 3 and a saw that leaves 3.1: a rib of 0.1 would stand beside it, where the bearing runs.
    [Fact]
    public void A_saw_outside_the_slot_is_refused()
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Board, s_fir, ("upcut-1/4-long", "thin-3"), ("thickness = \"25.4 mm\", ", ""),
            ("cut = { overcut = \"0.4 mm\" }", "hand = { bit = \"top-bearing-1/2\", machined = \"9 mm\", bite = \"3.1 mm\" }")));
        Assert.Equal(["hand-saw-outside-slot"], Stops(findings).Select(f => f.Kind.Code));
    }

    // Fir 4x8 is 88.9 thick; 76 of bit less 19 of grip leave 57, and the cut needs 88.9 + 0.5 = 89.4.
    [Fact]
    public void A_bit_that_is_too_short_for_a_post_is_refused()
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(
            SetUpJobs.Board, s_fir, ("\"1x6\"", "\"4x8\""), ("desktop-400", "tall"), ("upcut-1/4-long", "thin-76"), ("thickness = \"25.4 mm\", ", ""), ("0.4 mm", "0.5 mm")));
        Finding stop = Assert.Single(Stops(findings));
        Assert.Equal("stick-out-too-short", stop.Kind.Code);
        Assert.Equal(57, stop.Found!.Value.Value, 9);
        Assert.Equal(89.4, stop.Allowed!.Value.Value, 9);
    }

    // By statics: fir as sold, at 19 % moisture, 555.1 kg/m3 x 38.1 x 285.75 x 4876.8 mm = 29.474 kg; x 9.80665 x (2.4384 - 0.4) m = 589.19 N m; the machine's own 30 x 9.807 x 0.25 = 73.5.
    [Fact]
    public void A_long_board_without_a_stand_would_tip_a_light_machine()
    {
        string job = SetUpJobs.With(
            SetUpJobs.Board, s_fir, ("\"1x6\"", "\"2x12\""), ("upcut-1/4-long", "long-80"), ("thickness = \"25.4 mm\", ", ""), ("spoilboard = \"12 mm\"", "spoilboard = \"7 mm\"\nclearance = \"2 mm\""),
            ("length = \"30\", on-bed = \"14\"", "length = \"192\", on-bed = \"400 mm\""));
        Finding stop = Assert.Single(Stops(SetUpJobs.Plan(job).Findings));
        Assert.Equal("board-tips-machine", stop.Kind.Code);
        Assert.InRange(stop.Found!.Value.Value, 589.1, 589.3);
        Assert.Equal(30 * 9.80665 * 0.25 / 2, stop.Allowed!.Value.Value, 9);
        Assert.Equal(14, stop.Place.Line);
        Assert.Empty(Stops(SetUpJobs.Plan(SetUpJobs.With(job, ("allowance = \"1/8\", waste = \"screwed\"", "allowance = \"1/8\", waste = \"chips\", stand = true"))).Findings));
    }

    // Scooped out of 38.1: a quarter of the ellipse 152.4 x 95.25, 0.241 kg of fir at 19 % moisture, and the strip of 3.2 past the tip, 0.0124 kg over the whole width.
    [Fact]
    public void Tabs_on_a_boards_end_are_refused()
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(
            SetUpJobs.Board, s_fir, ("\"1x6\"", "\"2x8\""), ("desktop-400", "tall"), ("upcut-1/4-long", "long-80"), ("thickness = \"25.4 mm\", ", ""),
            ("form = \"belly\", run = \"3 1/4\", depth = \"2 1/2\"", "form = \"scoop\", run = \"6\", depth = \"3 3/4\""), ("overcut", "tabs = 4, overcut")));
        Finding stop = Assert.Single(Stops(findings));
        Assert.Equal("tabs-on-board-end", stop.Kind.Code);
        Assert.InRange(stop.Found!.Value.Value, 0.241, 0.2536);
    }

    // In a corner of 90° a circle of 6.35 stays (6.35 - 3)(√2 - 1) = 1.388 off a fillet of 3.
    [Fact]
    public void A_fillet_tighter_than_the_bit_is_refused()
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(
            SetUpJobs.Board, ("western-red-cedar", "yellow-poplar"), ("desktop-400", "tall"), ("upcut-1/4-long", "upcut-1/2"), ("thickness = \"25.4 mm\"", "thickness = \"3/4\""),
            ("kind = \"quarter-ellipse\", form = \"belly\", run = \"3 1/4\", depth = \"2 1/2\"", "kind = \"step\", run = \"3\", depth = \"2 1/2\", fillet = \"3 mm\"")));
        Finding stop = Assert.Single(Stops(findings));
        Assert.Equal("curve-too-tight", stop.Kind.Code);
        Assert.Equal(1.39, stop.Found!.Value.Value, 2);
    }
}
