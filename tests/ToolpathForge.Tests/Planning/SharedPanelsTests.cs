using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Nesting;
using ToolpathForge.Planning;
using ToolpathForge.Proof;
using ToolpathForge.Tests.Cli;
using ToolpathForge.Tests.Nesting;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Planning;

/// <summary>Several makes on one blank: laid by their outline, each cut by its own numbers, all proven.</summary>
public class SharedPanelsTests
{
    private const string Head = """
        format = 1
        name = "Boathouse porch"
        unit = "in"
        tolerance = "0.1 mm"
        machine = "desktop-400"
        dialect = "metric-centre"

        """;

    private static readonly Lazy<Plan> s_family = new(() => Planner.Plan(Family, cancel: CancellationToken.None));

    private static Job Family => SamplePlan.Read(File.ReadAllText(Repo.Path("samples", "boathouse", "family.toml")));

    private static string Make(string id, string more = "", string board = "2x4", string bit = "downcut-1/4", string thickness = "5.6 mm") => $$"""

        [[make]]
        id = "{{id}}"
        kind = "pattern"
        board = "{{board}}"
        stock = { panel = "hardboard-1/4", thickness = "{{thickness}}" }
        bit = "{{bit}}"
        shape = { kind = "quarter-ellipse", form = "scoop", run = "2", depth = "1 3/8" }
        plate = { hold = "4", seat = "1 1/2", reach = "1/2" }
        {{more}}

        """;

    private static Plan PlanOf(string panels, params string[] makes)
    {
        Plan plan = Planner.Plan(SamplePlan.Read($"{Head}panels = {{ {panels} }}\n{string.Concat(makes)}"), cancel: CancellationToken.None);
        Assert.DoesNotContain(plan.Findings, f => f.Kind.Severity == ToolpathForge.Findings.Severity.Stop);
        Assert.All(plan.Programs, p => Assert.True(p.Proof.Passed));
        return plan;
    }

    [Fact]
    public void The_family_of_the_boathouse_lies_on_five_blanks_of_the_small_bed_and_every_program_is_proven()
    {
        Plan plan = s_family.Value;
        Assert.Equal(["panel-1", "panel-2", "panel-3", "panel-4", "panel-5"], plan.Programs.Select(p => p.Name));
        Assert.All(plan.Programs, p => Assert.True(p.Proof.Passed));
        Assert.All(plan.Programs, p => Assert.True(p.Cut.Clamping.Stock.Box is { MaxX: < 401, MaxY: < 401 }));
        Placed[] laid = [.. plan.Programs.SelectMany(p => Enumerable.Repeat(p.Cut.Clamping, p.Cut.Clamping.Times).SelectMany(c => c.Pieces))];
        Assert.All(plan.Job.Makes, make => Assert.Equal(make.Count, laid.Count(p => p.Piece.Make.Id == make.Id)));
        Assert.Contains(plan.Programs, p => p.Cut.Clamping.Makes.Length >= 3);

        // Sheets call a piece by its make and its number there: the numbers of a make run on from blank to blank.
        Assert.All(laid.GroupBy(p => p.Piece.Make.Id), g => Assert.Equal(Enumerable.Range(1, g.Count()), g.Select(p => p.OfMake)));
    }

    [Fact]
    public void On_the_family_of_the_boathouse_outlines_use_the_blanks_at_least_fifteen_hundredths_better_than_boxes()
    {
        Plan plan = s_family.Value;
        CutSettings settings = plan.Programs[0].Cut.Settings;
        NestRequest request = SharedPanels.Request(plan.Job, plan.Pieces, settings.TrackRoom(plan.Job.Makes[0].Bit));
        NestResult nest = Nester.Nest(request, TestContext.Current.CancellationToken);
        double share = nest.UsedShare(request.Room);
        double boxes = BoxPacking.BestUsedShare(request);
        Assert.True(share >= 1.15 * boxes, FormattableString.Invariant($"share {share:0.000}, boxes {boxes:0.000}, ratio {share / boxes:0.000}"));
    }

    [Fact]
    public void What_is_cut_with_other_numbers_lies_on_a_blank_of_its_own_and_tabs_alone_do_not_part_makes()
    {
        Plan plan = PlanOf(
            "together = true",
            Make("a", "cut = { tabs = 3 }"),
            Make("other-bit", bit: "upcut-1/4"),
            Make("b", "cut = { tabs = 4 }", board: "2x8"),
            Make("thin", thickness: "5.5 mm"),
            Make("fast", "cut = { feed = \"3000 mm/min\" }"));
        Assert.Equal(["panel-1", "other-bit", "thin", "fast"], plan.Programs.Select(p => p.Name));
        CutPlan shared = plan.Programs[0].Cut;
        Assert.Equal(["a", "b"], shared.Clamping.Makes.Select(m => m.Id).Order(StringComparer.Ordinal));
        foreach ((string make, int tabs) in ((string, int)[])[("a", 3), ("b", 4)])
        {
            int number = shared.Clamping.Pieces.Single(p => p.Piece.Make.Id == make).Number;
            Assert.Equal(tabs, shared.Tabs.Count(t => t.Piece == number));
        }
    }

    [Fact]
    public void Without_the_word_nothing_is_shared()
    {
        Plan plan = PlanOf("together = false", Make("a"), Make("b"));
        Assert.Equal(["a", "b"], plan.Programs.Select(p => p.Name));
    }

    [Fact]
    public void Each_piece_has_the_marks_of_its_own_make_and_an_unmarked_one_goes_along()
    {
        Plan plan = PlanOf("together = true", Make("marked", "marks = { bit = \"v-60\", height = \"3/16\" }"), Make("plain"));
        PlannedProgram program = Assert.Single(plan.Programs);
        Clamping clamping = program.Cut.Clamping;
        Assert.All(program.Proof.Pieces, p => Assert.Equal(p.Name.StartsWith("marked", StringComparison.Ordinal), !p.Marks.IsEmpty));
        Assert.Equal(2, clamping.Pieces.Length);
    }

    [Fact]
    public void No_piece_lies_under_a_clamp_of_any_make()
    {
        const string Near = "clamp = [{ x = 0, y = 0, length = 3, width = 3, height = 1 }]";
        const string Far = "clamp = [{ x = 10, y = 0, length = 3, width = 3, height = 1 }]";
        Plan plan = PlanOf("together = true", Make("a", Near), Make("b", Far));
        Clamping clamping = Assert.Single(plan.Programs).Cut.Clamping;
        Assert.Equal(2, clamping.KeepOuts.Length);
        foreach (Placed placed in clamping.Pieces)
        {
            Assert.All(clamping.KeepOuts, k => Assert.False(CurveExtent.Box(placed.Exact).Grown(clamping.Make.Bit.Diameter).Meets(k.Box)));
        }
    }

    [Fact]
    public void A_blank_of_a_given_size_is_taken_as_it_is()
    {
        Plan plan = PlanOf("together = true, length = 14, width = 12, gap = \"10 mm\", turned = \"no\"", Make("a", "count = 3"), Make("b"));
        Assert.All(plan.Programs, p => Assert.Equal((355.6, 304.8), (p.Cut.Clamping.Stock.Box.MaxX, p.Cut.Clamping.Stock.Box.MaxY)));
        Assert.All(plan.Programs.SelectMany(p => p.Cut.Clamping.Pieces), p => Assert.Equal(Math.PI, p.Placement.Turn));
    }

    [Fact]
    public void Blanks_that_are_laid_alike_are_one_program_run_as_often()
    {
        Plan plan = PlanOf("together = true, turned = \"no\", length = 9, width = 8", Make("a", "count = 4"), Make("b"));
        Assert.Contains(plan.Programs, p => p.Cut.Clamping.Times > 1);
        Assert.Equal(4, plan.Programs.Sum(p => p.Cut.Clamping.Times * p.Cut.Clamping.Pieces.Count(q => q.Piece.Make.Id == "a")));
    }

    [Fact]
    public void A_make_that_is_called_like_a_blank_keeps_its_name()
    {
        Plan plan = PlanOf("together = true", Make("panel-1", bit: "upcut-1/4"), Make("a"), Make("b"));
        Assert.Equal(["panel-1", "panel-2"], plan.Programs.Select(p => p.Name));
        Assert.Equal("panel-1", Assert.Single(plan.Programs[0].Cut.Clamping.Makes).Id);
    }

    [Fact]
    public void The_program_of_one_blank_does_not_pass_for_that_of_another()
    {
        Plan plan = s_family.Value;
        ProofReport proof = Prover.Prove(plan.Programs[1].Text, plan.Programs[0].Target);
        Assert.False(proof.Passed);
    }

    [Fact]
    public void A_program_is_proven_by_its_name_where_a_make_lies_on_several_blanks()
    {
        using var scratch = new Scratch();
        string job = Repo.Path("samples", "boathouse", "family.toml");
        PlannedProgram program = s_family.Value.Programs[1];
        string file = scratch.Write("mine.nc", program.Text);
        Command.Ran which = Command.Run("prove", file, "--job", job, "--make", "round-2x6");
        Assert.Equal(2, which.Code);
        Assert.Contains("panel-2", which.Error, StringComparison.Ordinal);
        Assert.Equal(0, Command.Run("prove", file, "--job", job, "--make", "panel-2").Code);
        Assert.Equal(0, Command.Run("prove", scratch.Write("panel-2.nc", program.Text), "--job", job, "--make", "round-2x6").Code);
    }
}
