using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using CsCheck;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Posting;
using ToolpathForge.Proof;
using ToolpathForge.Service.Files;
using ToolpathForge.Tests.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>Openings whose waste is held whole, and pieces that lie in it.</summary>
public sealed class HeldOpeningTests
{
    private const string Held = "drawing = '@part'\nopenings = 'held'\n";

    private static readonly Lazy<Plan> s_plan = new(() =>
    {
        Loaded loaded = JobFile.Load(Repo.Path("samples", "boathouse", "frame.toml"), CancellationToken.None);
        Assert.Empty(loaded.Findings);
        return Planner.Plan(loaded.Job!, cancel: CancellationToken.None);
    });

    private static PlannedProgram Program => Assert.Single(s_plan.Value.Programs);

    private static Plan PlanOf(string keys, params Contour[] drawn)
    {
        JobReading reading = OutlineJobs.Read(keys, drawn);
        Assert.Empty(reading.Findings);
        return Planner.Plan(reading.Job!, cancel: CancellationToken.None);
    }

    private static PlannedProgram Proven(Plan plan)
    {
        Assert.DoesNotContain(plan.Findings, f => f.Kind.Severity == Severity.Stop);
        PlannedProgram program = Assert.Single(plan.Programs);
        Assert.True(program.Proof.Passed);
        return program;
    }

    [Fact]
    public void TheDrawingOfTheSampleIsOurs() =>
        Golden.SameFile(Repo.Path("samples", "boathouse", "frame.dxf"), Encoding.UTF8.GetBytes(FrameDrawing.Dxf));

    [Fact]
    public void The_sample_is_cut_through_the_command_line_and_its_sheet_and_blank_show_the_cleat_in_the_bracket()
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("out");
        Command.Ran ran = Command.Run("cut", Repo.Path("samples", "boathouse", "frame.toml"), "--out", folder);
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Golden.Same("boathouse-frame.nc", File.ReadAllText(Path.Combine(folder, "panel-1.nc")));
        Assert.Equal(0, Command.Run("prove", Path.Combine(folder, "panel-1.nc"), "--job", Repo.Path("samples", "boathouse", "frame.toml")).Code);
        string sheet = File.ReadAllText(Path.Combine(folder, "run-sheet.html"));
        Assert.Contains("In it lies cleat no. 1, cut first; then the opening, then the outside of bracket no. 1.", sheet, StringComparison.Ordinal);
        Assert.Contains("In hole 2 of bracket no. 1: cleat no. 1.", sheet, StringComparison.Ordinal);
        Assert.Contains("Rough hole 2 of bracket no. 1", sheet, StringComparison.Ordinal);
        Golden.Same("boathouse-frame-panel.svg", File.ReadAllText(Path.Combine(folder, "drawings", "panel-1.svg")));
    }

    [Fact]
    public void By_shapely_the_cleat_lies_clear_in_the_opening_and_is_cut_before_it_and_that_before_the_outside()
    {
        Clamping clamping = Program.Cut.Clamping;
        HeldWaste waste = Assert.Single(HeldWaste.On(clamping));
        Placed inner = Assert.Single(waste.Within);
        Assert.Equal(("bracket", "cleat"), (waste.Of.Piece.Make.Id, inner.Piece.Make.Id));
        CutSettings settings = Program.Cut.Settings;
        double track = settings.TrackRoom(clamping.Make.Bit);

        // The nest keeps both tracks and the gap; outlines are fitted within 0.01 mm. Leads and lifts over tabs stay within the room of the track.
        JsonElement said = Shapely(Program, track - 2);
        Assert.True(said.GetProperty("legal").GetBoolean());
        Assert.InRange(said.GetProperty("apart").GetDouble(), (2 * track) + 6 - 0.005, (2 * track) + 6 + 0.05);
        (int First, int Last) Lines(Placed piece, int ring)
        {
            JsonElement[] of = [.. said.GetProperty("lines")[piece.Number - 1][ring].EnumerateArray()];
            return (of[0].GetInt32(), of[1].GetInt32());
        }

        (int First, int Last) cleat = Lines(inner, 0);
        (int First, int Last) opening = Lines(waste.Of, 1 + waste.Of.Piece.Openings.IndexOf(waste.Opening));
        (int First, int Last) outside = Lines(waste.Of, 0);
        Assert.InRange(cleat.First, 1, cleat.Last);
        Assert.InRange(opening.First, cleat.Last + 1, opening.Last);
        Assert.InRange(outside.First, opening.Last + 1, outside.Last);
    }

    [Fact]
    public void A_program_that_cuts_through_a_tab_of_the_opening_is_caught()
    {
        Toolpath path = Program.Cut.Path;
        double lowest = path.Moves.Min(m => m.End.Z);
        int finish = Enumerable.Range(0, path.Runs.Length).Single(r => path.Runs[r].Name == "Finish hole 2 of bracket no. 1");
        Move[] moves = [.. path.Moves.Select(m => m.Run == finish && m.Purpose is Purpose.Finish or Purpose.OverTab ? m with { End = m.End with { Z = lowest } } : m)];
        string text = new DialectPostProcessor(s_plan.Value.Job.Dialect).Write(new ProgramInput(Program.Name, [], [path with { Moves = [.. moves] }], 0.04));
        Assert.Contains(Prover.Prove(text, Program.Target).Faults, f => f.Code == FaultCodes.All.Single(c => c.Name == "tab-cut"));
    }

    [Fact]
    public void By_default_every_opening_goes_to_chips_and_nothing_lies_in_it()
    {
        Plan plan = PlanOf("drawing = '@part'\n" + OutlineJobs.Usual, FrameDrawing.Bracket, FrameDrawing.Opening, FrameDrawing.Cleat);
        PlannedProgram program = Proven(plan);
        Assert.Empty(HeldWaste.On(program.Cut.Clamping));
        Assert.Contains(program.Cut.Path.Runs, r => r.Kind == RunKind.Opening);
        Assert.DoesNotContain(program.Cut.Tabs, t => t.Tab.Opening is not null);
    }

    [Theory]
    [InlineData("turn = 30\n")]
    [InlineData("turn = -115\nmirrored = true\n")]
    [InlineData("turned = 'quarter'\ncount = 2\n")]
    public void However_a_frame_is_turned_the_waste_of_its_opening_is_held_and_proven(string how)
    {
        // One outline alone: the blanks of a make of its own.
        PlannedProgram program = Proven(PlanOf(Held + how + OutlineJobs.Usual, FrameDrawing.Square(0, 0, 170, 150, 12), FrameDrawing.Square(25, 25, 120, 100, 10)));
        Assert.All(program.Cut.Clamping.Pieces, p => Assert.Equal((4, 3), (
            program.Cut.Tabs.Count(t => t.Piece == p.Number && t.Tab.Opening is null), program.Cut.Tabs.Count(t => t.Piece == p.Number && t.Tab.Opening == "1"))));
    }

    [Fact]
    public void A_piece_in_an_opening_of_a_piece_in_an_opening_is_cut_first_of_all()
    {
        PlannedProgram program = Proven(PlanOf(
            Held + "stock = { panel = 'hardboard-1/4', thickness = 5.6 }\nbit = 'downcut-1/4'\ncut = { tab-form = 'square', tab-length = 6 }\n",
            FrameDrawing.Square(0, 0, 350, 350, 10),
            FrameDrawing.Square(25, 25, 300, 300, 10),
            FrameDrawing.Square(400, 0, 240, 240, 10),
            FrameDrawing.Square(425, 25, 190, 190, 10),
            FrameDrawing.Square(700, 0, 100, 30, 8)));
        string[] order = [.. program.Cut.Path.Runs.Where(r => r.Kind == RunKind.Finishing).Select(r => r.Name)];
        Assert.Equal(
            ["Finish part-3 no. 1", "Finish hole 1 of part-2 no. 1", "Finish part-2 no. 1", "Finish hole 1 of part-1 no. 1", "Finish part-1 no. 1"], order);
    }

    [Fact]
    public void A_corner_of_the_piece_in_its_opening_may_begin_the_finish_and_a_thin_bit_for_holes_bores_the_rest()
    {
        // An opening like an L: its one corner of wood stands out into it.
        double quarter = Math.Tan(Math.PI / 8);
        Contour opening = new(
            [
                new(35, 30, 0), new(205, 30, quarter), new(210, 35, 0), new(210, 105, quarter), new(205, 110, 0), new(110, 110, 0),
                new(110, 205, quarter), new(105, 210, 0), new(35, 210, quarter), new(30, 205, 0), new(30, 35, quarter),
            ],
            true);
        PlannedProgram program = Proven(PlanOf(
            Held + "hole-bit = 'downcut-1/8'\n" + OutlineJobs.Usual, FrameDrawing.Square(0, 0, 240, 240, 6), opening, Contour.Circle(new Point2(225, 225), 2.5)));
        Assert.Equal(2, program.Cut.Works.Length);
        Assert.Contains(program.Cut.Works[0].Path.Runs, r => r.Kind == RunKind.Opening);
        Assert.Equal("1", Assert.Single(HeldWaste.On(program.Cut.Clamping)).Opening.Name);
        Move[] leads = [.. program.Cut.Path.Moves.Where(m => m.Run >= 0 && program.Cut.Path.Runs[m.Run].Name.StartsWith("Finish hole", StringComparison.Ordinal) && m.Purpose is Purpose.LeadIn or Purpose.LeadOut)];
        Assert.All(leads, m => Assert.Equal(MoveKind.Line, m.Kind));
    }

    [Fact]
    public void A_skin_holds_the_waste_as_it_holds_the_piece()
    {
        PlannedProgram program = Proven(PlanOf(
            Held + "stock = { panel = 'hardboard-1/4', thickness = 5.6, flatness = 0.1 }\nbit = 'downcut-1/4'\ncut = { skin = 0.5 }\n",
            FrameDrawing.Square(0, 0, 300, 300, 10),
            Contour.Circle(new Point2(150, 150), 110),
            FrameDrawing.Square(400, 0, 100, 60, 8)));
        HeldWaste waste = Assert.Single(HeldWaste.On(program.Cut.Clamping));
        Assert.Single(waste.Within);
        Assert.Empty(program.Cut.Tabs);
    }

    [Fact]
    public void What_tabs_do_not_hold_goes_to_chips_and_is_told_and_what_is_small_is_not()
    {
        Plan plan = PlanOf(
            Held + OutlineJobs.Usual,
            FrameDrawing.Square(0, 0, 300, 300, 10),
            Contour.Circle(new Point2(80, 80), 60),
            FrameDrawing.Square(200, 200, 34, 50, 8),
            Contour.Circle(new Point2(250, 40), 4));
        PlannedProgram program = Proven(plan);
        Assert.Empty(HeldWaste.On(program.Cut.Clamping));
        Finding told = Assert.Single(plan.Findings, f => f.Kind == ToolpathForge.Checks.WasteHeld.ToChips);
        Assert.Equal((80.0, 80.0), (told.Place.Point!.Value.X, told.Place.Point.Value.Y), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-9 && Math.Abs(a.Item2 - b.Item2) < 1e-9);
    }

    [Fact]
    public void Any_frame_is_proven_and_what_lies_in_it_keeps_both_tracks_and_the_gap()
    {
        int lying = 0;
        Gen<(double Size, double Rim, double Round, double Cleat, int Count, double Turn, bool Ramped)> frames = Gen.Select(
            Gen.Double[150, 280], Gen.Double[18, 40], Gen.Double[3.2, 15], Gen.Double[45, 110], Gen.Int[1, 3], Gen.Double[-180, 180], Gen.Bool);
        frames.Sample(
            f =>
            {
                string job = FormattableString.Invariant(
                    $"{Held}count = {f.Count}\nturn = {f.Turn:0.###}\nstock = {{ panel = 'hardboard-1/4', thickness = 5.6 }}\nbit = 'downcut-1/4'\ncut = {{ tab-form = '{(f.Ramped ? "ramped" : "square")}', tab-length = 6 }}\n");
                Plan plan = PlanOf(
                    job,
                    FrameDrawing.Square(0, 0, f.Size, f.Size * 0.9, 9),
                    FrameDrawing.Square(f.Rim, f.Rim, f.Size - (2 * f.Rim), (f.Size * 0.9) - (2 * f.Rim), f.Round),
                    FrameDrawing.Square(400, 0, f.Cleat, f.Cleat * 0.8, 5));

                // A piece that cannot carry its tabs or is too large for the bed is refused with a reason; nothing is handed over unproven.
                Assert.DoesNotContain(plan.Findings, x => x.Kind == Planner.NotProven);
                foreach (PlannedProgram program in plan.Programs)
                {
                    Assert.True(program.Proof.Passed);
                    double apart = (2 * program.Cut.Settings.TrackRoom(program.Cut.Clamping.Make.Bit)) + 6 - 0.02;
                    foreach (HeldWaste waste in HeldWaste.On(program.Cut.Clamping))
                    {
                        Assert.All(waste.Within, p => Assert.InRange(ContourDistance.Between(ArcFit.Fit(p.Exact, 0.001).Contour, waste.Edge).Distance, apart, double.PositiveInfinity));
                        lying += waste.Within.Length;
                    }
                }
            },
            iter: 25,
            threads: 1);
        Assert.InRange(lying, 1, int.MaxValue);
    }

    private static JsonElement Shapely(PlannedProgram program, double reach)
    {
        double[][] Ring(Outline outline) =>
        [
            .. outline.Curves.SelectMany(c => Enumerable.Range(0, c is LineCurve ? 1 : 100).Select(k => c.PointAt(k / 100.0))).Select(p => new[] { p.X, p.Y }),
        ];
        Clamping clamping = program.Cut.Clamping;
        string input = JsonSerializer.Serialize(new
        {
            text = program.Text,
            reach,
            top = clamping.Stock.Top,
            pieces = clamping.Pieces.Select(p => new[] { Ring(p.Exact) }.Concat(p.Piece.Openings.Select(o => Ring(OpeningOutline.Exact(o, p.Placement)))).ToArray()),
        });
        using JsonDocument said = JsonDocument.Parse(OutsideTool.Python("opening_order.py", input, "shapely"));
        return said.RootElement.Clone();
    }
}
