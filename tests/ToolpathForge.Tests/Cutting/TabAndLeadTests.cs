using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Planning;
using ToolpathForge.Proof;
using ToolpathForge.Tests.Planning;

namespace ToolpathForge.Tests.Cutting;

/// <summary>Tabs, skins and leads, from the job to the proof of the finished text.</summary>
public class TabAndLeadTests
{
    private static Plan Plan(string cut, string extra = "", string stock = "") => Planner.Plan(
        MarkedPattern.Read(MarkedPattern.Text[..MarkedPattern.Text.IndexOf("marks =", StringComparison.Ordinal)]
            .Replace("cut = { tabs = 4 }", $"cut = {{ {cut} }}\n{extra}", StringComparison.Ordinal)
            .Replace("thickness = \"5.6 mm\"", $"thickness = \"5.6 mm\"{stock}", StringComparison.Ordinal)),
        cancel: CancellationToken.None);

    private static PlannedProgram Proven(Plan plan)
    {
        Assert.Empty(plan.FailedProofs);
        Assert.DoesNotContain(plan.Findings, f => f.Kind.Severity == Severity.Stop);
        return plan.Programs.Single();
    }

    private static string[] Stops(Plan plan) => [.. plan.Findings.Where(f => f.Kind.Severity == Severity.Stop).Select(f => f.Kind.Code)];

    [Theory]
    [InlineData("direction = \"climb\"", 250)]
    [InlineData("tab-spacing = \"200 mm\", tab-length = \"5 mm\"", 200)]
    public void Without_a_number_tabs_stand_no_further_apart_than_asked(string cut, double spacing)
    {
        PlannedProgram program = Proven(Plan(cut));
        double length = ArcFit.Fit(program.Cut.Clamping.Pieces[0].Exact, 0.001).Contour.Length;
        Assert.Equal(Math.Max(3, (int)Math.Ceiling(length / spacing)), program.Cut.Tabs.Length);
    }

    [Fact]
    public void A_square_tab_is_as_long_at_its_foot_and_ends_in_a_plunge()
    {
        PlannedProgram program = Proven(Plan("tabs = 3, tab-form = \"square\""));
        Assert.All(program.Cut.Tabs, t => Assert.Equal(t.Tab.Flat, t.Tab.Reach));
        Assert.Contains(program.Cut.Path.Moves, m => m.Purpose == Purpose.OverTab && m.Kind == MoveKind.Line && m.End.Z == program.Cut.Tabs[0].Tab.Top);
        Assert.All(program.Proof.Pieces[0].Tabs, t => Assert.InRange(t.CutInto, 0, 0.1));
    }

    [Fact]
    public void A_ramped_tab_reaches_by_its_height_over_the_slope_of_its_sides()
    {
        Tab tab = Proven(Plan("tabs = 3, tab-height = \"2 mm\", tab-length = \"8 mm\"")).Cut.Tabs[0].Tab;

        // D + 2h/tan α all in all (common practice): (8 + 6.35)/2 + (2 + 0.3)/tan α to one side.
        PlannedProgram program = Proven(Plan("tabs = 3, tab-height = \"2 mm\", tab-length = \"8 mm\""));
        Assert.Equal(((8 + 6.35) / 2) + (2.3 / Math.Tan(Math.PI / 6)), tab.Reach, 9);

        // Down its side the bit goes no faster than it plunges: sin 30° is a half, so the feed is twice the plunge feed at most.
        Assert.All(
            program.Cut.Path.Moves.Zip(program.Cut.Path.Moves.Skip(1)).Where(m => m.Second.Purpose == Purpose.OverTab && m.Second.End.Z < m.First.End.Z),
            m => Assert.True(m.Second.Feed <= (2 * program.Cut.Settings.Plunge) + 1e-6));
    }

    [Fact]
    public void Tabs_stand_where_the_job_puts_them()
    {
        const string Places = "tab = [ { x = \"3\", y = \"-1 1/2\" }, { x = \"8\", y = \"-1 1/2\" }, { x = \"11.9\", y = \"3\" } ]";
        PlannedProgram program = Proven(Plan("tab-length = \"6 mm\"", Places));
        Placement at = program.Cut.Clamping.Pieces[0].Placement;
        Assert.Equal(3, program.Cut.Tabs.Length);
        Assert.True(program.Cut.Tabs[0].Tab.Center.DistanceTo(at.Apply(new Point2(3 * 25.4, -1.5 * 25.4))) < 1e-6);
        Assert.True(program.Cut.Tabs[1].Tab.Center.DistanceTo(at.Apply(new Point2(8 * 25.4, -1.5 * 25.4))) < 1e-6);
    }

    [Theory]
    [InlineData("tab = [ { x = \"3\", y = \"-1 1/2\" }, { x = \"8\", y = \"-1 1/2\" }, { x = \"4\", y = \"5\" } ]", "tab-off-edge")]
    [InlineData("tab = [ { x = \"3\", y = \"-1 1/2\" }, { x = \"3.2\", y = \"-1 1/2\" }, { x = \"11.9\", y = \"3\" } ]", "tab-no-room")]
    [InlineData("tab = [ { x = \"3\", y = \"-1 1/2\" }, { x = \"8\", y = \"-1 1/2\" } ]", "tabs-too-few")]
    [InlineData("lead = { x = \"4\", y = \"2\" }", "lead-place-unusable")]
    public void Places_that_cannot_be_used_are_told(string extra, string code) => Assert.Contains(code, Stops(Plan("tab-length = \"6 mm\"", extra)));

    [Fact]
    public void A_skin_holds_the_plate_where_the_job_asks_for_one()
    {
        PlannedProgram program = Proven(Plan("skin = \"0.6 mm\"", stock: ", flatness = \"0.2 mm\""));
        Assert.Empty(program.Cut.Tabs);
        Assert.Equal(0.6, program.Target.Pieces[0].Bottom, 9);
        Assert.Equal(0.6, program.Target.Floor, 9);
        Assert.True(program.Cut.Path.Moves.Min(m => m.End.Z) >= 0.6 - 1e-9);

        // The proof holds the skin: a program that goes a quarter of a millimetre deeper fails.
        string deeper = program.Text.Replace("Z0.6", "Z0.35", StringComparison.Ordinal);
        Assert.NotEqual(deeper, program.Text);
        Assert.Contains(Prover.Prove(deeper, program.Target).Faults, f => f.Code == FaultCodes.BelowFloor);
    }

    // A skin must be thicker than twice the measured unevenness (common practice), and thin enough for a knife.
    [Theory]
    [InlineData("skin = \"0.4 mm\"", ", flatness = \"0.2 mm\"", "skin-too-thin")]
    [InlineData("skin = \"2.5 mm\"", ", flatness = \"0.2 mm\"", "skin-too-thick")]
    [InlineData("tabs = 40", "", "tabs-impossible")]
    public void Skins_and_tabs_that_cannot_hold_are_refused(string cut, string stock, string code) => Assert.Contains(code, Stops(Plan(cut, stock: stock)));

    [Fact]
    public void Where_no_tab_fits_a_flat_sheet_keeps_a_skin_and_the_sheet_says_so()
    {
        Plan plan = Plan("tab-length = \"95 mm\"", stock: ", flatness = \"0.25 mm\"");
        PlannedProgram program = Proven(plan);
        Assert.Contains(plan.Findings, f => f.Kind.Code == "skin-instead-of-tabs");
        Assert.Equal(0.6, program.Cut.Settings.Skin, 9);
    }

    [Fact]
    public void Tabs_are_square_where_ramps_have_no_room_and_their_form_is_left_open()
    {
        Plan plan = Plan("tab-length = \"30 mm\", tab-height = \"3 mm\", tabs = 9");
        PlannedProgram program = Proven(plan);
        Assert.Contains(plan.Findings, f => f.Kind.Code == "tabs-square-instead");
        Assert.Equal(9, program.Cut.Tabs.Length);
        Assert.All(program.Cut.Tabs, t => Assert.Equal(t.Tab.Flat, t.Tab.Reach));
        Assert.Contains("tabs-impossible", Stops(Plan("tab-length = \"30 mm\", tab-height = \"3 mm\", tabs = 9, tab-form = \"ramped\"")));
    }

    // Past a square corner the bit is clear by the allowance after √(2Ra + a²): R 3.175, a 0.5 is 1.851 mm.
    [Fact]
    public void The_finish_begins_straight_past_a_corner_of_two_free_edges()
    {
        PlannedProgram program = Proven(Plan("tabs = 3"));
        Move[] moves = [.. program.Cut.Path.Moves];
        int into = Array.FindIndex(moves, m => m.Purpose == Purpose.LeadIn);
        Assert.Equal(MoveKind.Line, moves[into].Kind);
        Assert.Equal(1.851, moves[into - 1].End.Flat.DistanceTo(moves[into].End.Flat), 3);
        Assert.Equal(MoveKind.Line, moves.Last(m => m.Purpose == Purpose.LeadOut).Kind);
    }

    [Fact]
    public void The_finish_begins_where_the_job_says()
    {
        PlannedProgram program = Proven(Plan("tabs = 3", "lead = { x = \"6 1/4\", y = \"-1 1/2\" }"));
        Move[] moves = [.. program.Cut.Path.Moves];
        Move onto = moves.First(m => m.Purpose == Purpose.LeadIn);
        Placement at = program.Cut.Clamping.Pieces[0].Placement;
        Assert.Equal(MoveKind.Arc, onto.Kind);
        Assert.True(onto.End.Flat.DistanceTo(at.Apply(new Point2(6.25 * 25.4, (-1.5 * 25.4) - 3.175))) < 1e-6);
    }

    // Quarter circles of radius ρ that touch a track of radius r come off it by: straight ρ; hollow r - √((r-ρ)² + ρ²), r 20, ρ 6: 4.768;
    // round √((r+ρ)² + ρ²) - r, r 75.175, ρ 6: 6.221 (plane geometry).
    [Theory]
    [InlineData(0, 6)]
    [InlineData(20, 4.768)]
    [InlineData(-75.175, 6.221)]
    public void A_quarter_circle_comes_off_its_track_as_worked(double hollow, double gap)
    {
        Contour track = hollow == 0
            ? Contour.Polyline(new Point2(-100, 0), new Point2(100, 0))
            : Contour.Circle(new Point2(0, hollow), Math.Abs(hollow));
        var ruler = new PathRuler(track);
        double at = ruler.Nearest(Point2.Origin);

        // A circle of ours runs counter-clockwise: its inside is on the left. A straight track's waste is taken on the left as well.
        Segment lead = SlotLead.Leaving(ruler, at, forward: true, wasteOnRight: hollow < 0, gap - 5e-4, 6);
        Assert.InRange(ruler.Contour.Distance(lead.End), gap - 1e-3, gap + 1e-3);
        Assert.True(Math.Abs(lead.Sweep) <= (Math.PI / 2) + 1e-9);
    }

    // A slot up to a diameter deep is fed as it is, up to three slower, deeper it is widened (common practice).
    [Theory]
    [InlineData("", 1, false)]
    [InlineData("slot = \"slow\"", 0.75, false)]
    [InlineData("slot = \"wide\"", 0.75, true)]
    public void Slots_are_slowed_or_widened(string cut, double share, bool wide)
    {
        PlannedProgram program = Proven(Plan("tabs = 3" + (cut.Length > 0 ? ", " + cut : "")));
        CutSettings s = program.Cut.Settings;

        // As the moves go: slowed by a quarter (common practice), but never so far that the tooth takes less than a third of the 0.012 in of practice for hardboard.
        Move[] moves = [.. program.Cut.Path.Moves.Where(m => m.Kind != MoveKind.Rapid)];
        double rough = moves.Where(m => m.Purpose == Purpose.Rough).Min(m => m.Feed);
        double finish = moves.Where(m => m.Purpose == Purpose.Finish).Max(m => m.Feed);
        Assert.InRange(rough / finish, share - 0.01, share == 1 ? 1 : 0.95);
        Assert.True(rough / (s.Speed * 2) >= (0.012 * 25.4 / 3) - 1e-6);

        // A second track beside the first, a quarter of the diameter away, goes round outside it: so much farther from the piece.
        Contour edge = ArcFit.Fit(program.Cut.Clamping.Pieces[0].Exact, 0.001).Contour;
        double farthest = moves.Where(m => m.Purpose == Purpose.Rough).Max(m => edge.Distance(m.End.Flat));
        Assert.Equal(3.175 + 0.5 + (wide ? 0.25 * 6.35 : 0), farthest, 0.01);
    }
}
