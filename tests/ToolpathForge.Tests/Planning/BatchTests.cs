using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Schedules;
using ToolpathForge.Tests.Checks.Jobs;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Planning;

/// <summary>Batches of boards: every end has its turn, and what comes off is held.</summary>
public class BatchTests
{
    private const string End = "end = { allowance = \"1/8\", waste = \"screwed\" }";

    // A scoop whose waste is worth holding, beside the belly that leaves a scrap.
    private static readonly (string, string) s_scoop = ("form = \"belly\", run = \"3 1/4\", depth = \"2 1/2\"", "form = \"scoop\", run = \"6\", depth = \"3 1/2\"");

    private static Plan Planned(params (string, string)[] changes)
    {
        (Plan? plan, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Board, changes));
        Assert.Empty(findings.Where(f => f.Kind.Severity == Severity.Stop).Select(f => f.Kind.Code));
        return plan!;
    }

    private static Plan WithEnd(string end, string make = "") => Planned((End, $"end = {{ allowance = \"1/8\", {end} }}\n{make}"));

    private static string[] Codes(string end, string make = "") =>
        [.. SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Board, s_scoop, (End, $"end = {{ allowance = \"1/8\", {end} }}\n{make}"))).Findings.Where(f => f.Kind.Severity == Severity.Stop).Select(f => f.Kind.Code)];

    private static IEnumerable<Segment> Low(PlannedProgram program) =>
        program.Cut.Works.SelectMany(w => w.Path.WaysBelow(program.Cut.Clamping.Stock.Top));

    [Fact]
    public void The_boathouse_boards_make_48_proven_ends_and_their_patterns()
    {
        JobReading reading = JobReader.Read(File.ReadAllText(Repo.Path("samples", "boathouse", "boards.toml")), "boards.toml", _ => null);
        Assert.Empty(reading.Findings);
        Plan plan = Planner.Plan(reading.Job!, cancel: TestContext.Current.CancellationToken);
        Assert.False(plan.IsStopped);
        Assert.Equal(48, plan.Programs.Sum(p => p.Cut.Clamping.Turns.Length));
        Assert.Equal(2, plan.Programs.Count(p => p.Cut.Clamping.Make is PatternMake));
        Assert.All(plan.Programs, p => Assert.True(p.Proof.Passed));

        // 12 rafters of 92 1/8, 12 purlins of 57 3/4, 6 brackets of 26 in.
        ImmutableArray<BuyingLine> buying = Schedule.Buying(plan.Job);
        Assert.Equal([12, 12, 6], buying.Select(b => b.Plan.Lengths.Sum(l => l.Pieces.Length)));
        Assert.Equal(12 * 92.125 * 25.4, buying[0].Used, 6);
        Assert.All(buying, b => Assert.True(b.Plan.IsLeast));
        SawLine saw = Assert.Single(Schedule.SawFirst(plan.Pieces.OfType<ProfilePiece>().Select(p => (p.Make, p.Profile))));
        Assert.Equal(26 * 25.4, saw.LongPoint, 9);
        Assert.Equal(0, saw.Angle, 9);
    }

    [Theory]
    [InlineData(1, "one", 1)]
    [InlineData(5, "one", 2)]
    [InlineData(5, "both", 2)]
    [InlineData(7, "both", 3)]
    public void Every_end_of_every_board_has_one_turn_and_a_place_of_its_own(int count, string ends, int abreast)
    {
        Plan plan = Planned(
            ("desktop-400", "bench-800"), (End, $"end = {{ allowance = \"1/8\", waste = \"screwed\", abreast = {abreast} }}\nends = \"{ends}\"\ncount = {count}"));
        Clamping clamping = Assert.Single(plan.Programs).Cut.Clamping;
        int sides = ends == "both" ? 2 : 1;
        Assert.Equal(count * sides, clamping.Turns.Select(t => (t.Board, t.End)).Distinct().Count());
        Assert.Equal(count * sides, clamping.Turns.Select(t => (t.Run, t.Place)).Distinct().Count());
        Assert.Equal(clamping.Times, clamping.Turns.Max(t => t.Run));
        Assert.Equal(sides * ((count + abreast - 1) / abreast), clamping.Times);
        Assert.All(clamping.Turns, t => Assert.InRange(t.Place, 1, clamping.Pieces.Length));

        // All first ends before any second: the stops are moved once.
        Assert.Equal(clamping.Turns.OrderBy(t => t.End).Select(t => t.Run), clamping.Turns.Select(t => t.Run));
    }

    // Neighbours keep 2 (R + 2) apart, and no cut for one board comes within 2 mm of another.
    [Fact]
    public void Boards_side_by_side_leave_room_for_the_bit()
    {
        Plan plan = Planned(("desktop-400", "bench-800"), (End, "end = { allowance = \"1/8\", waste = \"screwed\", abreast = 3 }\ncount = 3"));
        PlannedProgram program = Assert.Single(plan.Programs);
        Placed[] boards = [.. program.Cut.Clamping.Pieces];
        Assert.Equal(3, boards.Length);
        double radius = program.Cut.Path.Bit.Radius;
        for (int i = 1; i < boards.Length; i++)
        {
            Assert.True(boards[i - 1].Block.MinY - boards[i].Block.MaxY >= (2 * (radius + 2)) - 1e-9);
        }

        foreach (Segment way in Low(program))
        {
            int cut = boards.Count(b => b.Block.Distance(way.PointAt(0.5)) < radius + 2 - 1e-6);
            Assert.InRange(cut, 0, 1);
        }

        Assert.Equal(["gap-between-boards"], SetUpJobs.Plan(SetUpJobs.With(
            SetUpJobs.Board, ("desktop-400", "bench-800"), (End, "end = { allowance = \"1/8\", waste = \"screwed\", abreast = 2, gap = \"10 mm\" }\ncount = 2")))
            .Findings.Where(f => f.Kind.Severity == Severity.Stop).Select(f => f.Kind.Code).Distinct().Take(1));
    }

    [Fact]
    public void One_program_serves_a_stack_and_each_width_may_have_its_own()
    {
        const string Boards = "measured = [ { name = \"a\", count = 2, width = \"5 1/2\" }, { name = \"b\", width = \"5 7/16\" }, { name = \"c\", width = \"5 9/16\", thickness = \"26 mm\" } ]";
        Plan stack = WithEnd("waste = \"chips\"", Boards);
        Assert.Equal(26, Assert.Single(stack.Programs).Cut.Clamping.Make.Thickness);
        Assert.Equal(["ledge-stays", "profile-hangs-over"], stack.Findings.Select(f => f.Kind.Code).Where(c => c is "ledge-stays" or "profile-hangs-over").Order());

        Plan each = WithEnd("waste = \"chips\", program = \"width\"", Boards);
        Assert.Equal(["bracket-a", "bracket-b", "bracket-c"], each.Programs.Select(p => p.Name));
        Assert.Equal([139.7, 138.1125, 141.2875], each.Pieces.Select(p => Math.Round(p.Profile.Width, 6)));
        Assert.DoesNotContain(each.Findings, f => f.Kind.Code is "ledge-stays" or "profile-hangs-over");
    }

    [Fact]
    public void A_program_that_waits_stops_the_spindle_and_says_what_comes_next()
    {
        Plan plan = WithEnd("waste = \"screwed\", runs = \"waiting\"", "ends = \"both\"\ncount = 2");
        PlannedProgram program = Assert.Single(plan.Programs);
        string[] lines = program.Text.Split('\n');
        Assert.Equal(3, lines.Count(l => l == "M0"));
        for (int i = 0; i < lines.Length; i++)
        {
            if (lines[i] == "M0")
            {
                Assert.Equal(["M5", "G4 P10"], lines[(i - 3)..(i - 1)]);
                Assert.StartsWith("(MSG, Next: ", lines[i - 1], StringComparison.Ordinal);
                Assert.StartsWith("X", lines[i - 4], StringComparison.Ordinal);
                Assert.Contains("M3", lines[i + 2], StringComparison.Ordinal);
            }
        }

        Assert.Contains("end over end", program.Text, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(1, program.Cut.Clamping.Starts);
    }

    // Where a screw may go: its head 3 mm clear of everything the bit does below the upper face, 10 mm in from the edges, off the piece.
    [Theory]
    [InlineData("1x6")]
    [InlineData("2x8")]
    public void Screws_stay_clear_of_the_bit(string board)
    {
        Plan plan = Planned(("desktop-400", "bench-800"), s_scoop, ("\"1x6\"", $"\"{board}\""));
        PlannedProgram program = Assert.Single(plan.Programs);
        Assert.NotEmpty(program.Cut.Clamping.Screws);
        foreach (Point2 screw in program.Cut.Clamping.Screws)
        {
            Assert.True(Low(program).Min(w => w.Distance(screw)) >= program.Cut.Path.Bit.Radius + 3 + 4 - 1e-9);
            Assert.True(program.Cut.Clamping.Stock.Box.Contains(screw));
            Assert.False(PlacedContour.Fit(program.Cut.Clamping.Pieces[0], 0.01).Contour.Contains(screw));
        }
    }

    // Every point of the waste lies under the bit at full depth.
    [Fact]
    public void Waste_that_is_cut_to_chips_leaves_nothing()
    {
        PlannedProgram program = Assert.Single(Planned(s_scoop, (End, "end = { allowance = \"1/8\", waste = \"chips\" }")).Programs);
        Clamping clamping = program.Cut.Clamping;
        Contour piece = PlacedContour.Fit(clamping.Pieces[0], 0.01).Contour;
        double deepest = program.Cut.Path.Moves.Min(m => m.End.Z);
        Segment[] ways = [.. program.Cut.Path.WaysBelow(deepest + 0.001)];
        Box2 box = clamping.Stock.Box;
        int points = 0;
        for (double x = box.MinX + 0.5; x < box.MaxX; x += 1)
        {
            for (double y = box.MinY + 0.5; y < box.MaxY; y += 1)
            {
                var at = new Point2(x, y);
                if (!piece.Contains(at) && piece.Distance(at) > 0.2)
                {
                    points++;
                    Assert.True(ways.Min(w => w.Distance(at)) <= program.Cut.Path.Bit.Radius + 1e-6, $"{at} stays.");
                }
            }
        }

        Assert.True(points > 2000);
    }

    [Theory]
    [InlineData("waste = \"loose\"", "", "waste-loose")]
    [InlineData("waste = \"clamped\"", "", "waste-clamp-missing")]
    [InlineData("waste = \"sawn\", saw-margin = \"3/8\"", "", "saw-margin-wide")]
    [InlineData("waste = \"screwed\", finished-length = \"29 15/16\"", "", "board-too-short")]
    [InlineData("waste = \"screwed\"", "count = 2\nmeasured = [ { width = \"5 1/2\" } ]", "count-beside-measured")]
    [InlineData("waste = \"screwed\", runs = \"waiting\"", "count = 2\nopening = [ { x = \"5\", y = \"1\", width = \"1/2\", bit = \"thin-76\" } ]", "waiting-with-several-bits")]
    public void What_cannot_be_is_refused_for_its_reason(string end, string make, string code) => Assert.Equal([code], Codes(end, make));

    // A clamp 30 mm high on 25.4 mm stock: the bit travels 5 mm above it, and sticks out that much further.
    [Fact]
    public void A_clamp_is_gone_over_and_never_touched()
    {
        PlannedProgram over = Assert.Single(WithEnd("waste = \"screwed\"", "clamp = [ { x = \"-200 mm\", y = \"-60 mm\", length = \"60 mm\", width = \"30 mm\", height = \"30 mm\" } ]").Programs);
        Assert.Equal(35, over.Cut.Path.Moves.Where(m => m.Purpose == Purpose.Travel).Min(m => m.End.Z), 9);
        Assert.Contains(over.Target.KeepOuts, k => k.Name == "clamp 1");

        Assert.Contains("clamp-in-way", Codes("waste = \"screwed\"", "clamp = [ { x = \"-20 mm\", y = \"-60 mm\", length = \"30 mm\", width = \"30 mm\", height = \"30 mm\" } ]"));
        Assert.Contains("clamp-under-nut", Codes("waste = \"screwed\"", "clamp = [ { x = \"-200 mm\", y = \"-60 mm\", length = \"60 mm\", width = \"30 mm\", height = \"60 mm\" } ]"));
    }

    // Statics of a bow: 1/4 in over 12 ft turns the end by 4 x 6.35 / 3657.6; across 11 1/4 in that is 1.98 mm.
    [Fact]
    public void A_crowned_board_is_told_by_how_much_it_turns()
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(
            SetUpJobs.Board, ("\"1x6\"", "\"1x12\""), ("length = \"30\"", "length = \"144 1/8\", crown = \"1/4\""), (End, "end = { allowance = \"1/8\", waste = \"screwed\", stand = true }")));
        Finding crowned = Assert.Single(findings, f => f.Kind.Code == "crown-tilts-end");
        Assert.Equal(4 * 6.35 / 3657.6 * 285.75, crowned.Found!.Value.Value, 2);
    }

    // Grain that slopes one way at the first end slopes the other way at the second: nothing that is against it at either is cut conventionally.
    [Theory]
    [InlineData("scoop", 7.125)]
    [InlineData("belly", 7.125)]
    [InlineData("belly", -10)]
    public void One_program_for_both_ends_lifts_no_fibres_at_either(string form, double slope)
    {
        Plan plan = Planned(
            ("on-bed = \"14\"", FormattableString.Invariant($"on-bed = \"14\", grain-slope = \"{slope} deg\"")), ("form = \"belly\"", $"form = \"{form}\""), (End, End + "\nends = \"both\""));
        PlacedContour placed = PlacedContour.Fit(plan.Programs[0].Cut.Clamping.Pieces[0], 0.01);
        Contour profile = EndCut.Profile(placed);
        ImmutableArray<double> fibres = EndCut.Fibres(placed);
        Assert.Equal(2, fibres.Length);
        FinishPlan runs = FinishRuns.For(profile, fibres, new Point2(-1, 0), DirectionChoice.ByGrain, 6.35);
        int against = 0;
        foreach (GrainStretch stretch in fibres.SelectMany(f => Grain.Along(profile, f)).Where(g => g.Class == GrainClass.Against))
        {
            against++;
            Assert.All(runs.Runs.Where(r => r.From < stretch.To - 1e-9 && r.To > stretch.From + 1e-9), r => Assert.True(r.Climb));
        }

        Assert.True(against > 0);

        // Roughing runs in the same slot at full depth of a step, and a split runs deeper than what it leaves: it heeds the grain as well.
        var ruler = new PathRuler(profile);
        int roughed = 0;
        Move[] moves = [.. plan.Programs[0].Cut.Path.Moves];
        for (int i = 1; i < moves.Length; i++)
        {
            if (moves[i].Purpose == Purpose.Rough && moves[i].End.Flat != moves[i - 1].End.Flat)
            {
                var way = new Segment(moves[i - 1].End.Flat, moves[i].End.Flat, moves[i].Bulge);
                for (double share = 0.02; share < 1; share += 0.02)
                {
                    double at = ruler.Nearest(way.PointAt(share));
                    if (fibres.Any(f => Grain.ClassOf(Grain.Angle(ruler.DirectionAt(at), Point2.Direction(f))) == GrainClass.Against))
                    {
                        // The board lies on the left of its profile: climbing goes against the profile's direction.
                        roughed++;
                        Assert.True(way.DirectionAt(share).Dot(ruler.DirectionAt(at)) < 0, FormattableString.Invariant($"Roughed conventionally against the grain at {way.PointAt(share)}."));
                    }
                }
            }
        }

        Assert.True(roughed > 0);
    }

    // Statics: cedar of 373.0 kg/m³ (as sold: 19 % moisture, worked by hand from 358 at 12 %), 25.4 x 139.7 mm, 240 in long with 14 in on the bed, turns about the bed's edge with m g (120 - 14 in); three of them with three times that.
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void Boards_side_by_side_tip_the_machine_together(int abreast)
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(
            SetUpJobs.Board, ("desktop-400", "bench-800"), ("length = \"30\", on-bed = \"14\"", "length = \"240 1/8\", on-bed = \"14\""),
            (End, $"end = {{ allowance = \"1/8\", waste = \"screwed\", abreast = {abreast} }}\ncount = 6")));
        Finding tips = Assert.Single(findings, f => f.Kind.Code == "board-tips-machine");
        const double Density = 373.0028;
        double mass = abreast * Density * 0.0254 * 0.1397 * 240.125 * 0.0254;
        Assert.Equal(mass * 9.80665 * ((120.0625 * 0.0254) - (14 * 0.0254)), tips.Found!.Value.Value, 1e-3);
    }

    [Fact]
    public void Every_mistake_in_a_batch_is_told_in_one_go()
    {
        string job = SetUpJobs.With(SetUpJobs.Board, (End, "end = { allowance = \"1/8\", abreast = 40 }\nends = \"three\"\nmeasured = [ { width = \"wide\" }, { count = 2 } ]"));
        JobReading reading = JobReader.Read(job, "set-up.toml", _ => "format = 1\nunit = \"mm\"\n");
        Assert.Equal(4, reading.Findings.Count(f => f.Kind.Severity == Severity.Stop));
    }
}
