using System.Globalization;
using System.Text.RegularExpressions;
using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Posting;
using ToolpathForge.Proof;
using ToolpathForge.RunSheets;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Planning;

public class PlannerTests
{
    private static readonly CancellationToken s_never = CancellationToken.None;

    [Theory]
    [InlineData("metric-centre")]
    [InlineData("inch-radius-paused")]
    [InlineData("metric-lines")]
    [InlineData("metric-hand-switched")]
    [InlineData("inch-centre")]
    public void Every_program_of_the_sample_is_proven_in_every_dialect(string dialect)
    {
        Plan plan = Planner.Plan(SamplePlan.In(dialect), cancel: s_never);
        Assert.False(plan.IsStopped);

        // Where no bit is changed within a program, the rafter tail's marks have one of their own.
        string[] tail = dialect == "metric-hand-switched" ? ["rafter-tail-1", "rafter-tail-2"] : ["rafter-tail"];
        Assert.Equal([.. tail, "beam-end", "purlin-end", "bracket"], plan.Programs.Select(p => p.Name));
        Assert.All(plan.Programs, p =>
        {
            Assert.True(p.Proof.Passed);
            Assert.InRange(p.Proof.WorstGouge, 0, plan.Job.Tolerance);
            Assert.InRange(p.Proof.WorstLeftover, 0, plan.Job.Tolerance);
        });
    }

    // Worked by hand for the rafter tail on a 2x8 of 7 1/4 in (American Softwood Lumber Standard PS 20): run 7 1/2, depth 4 1/4, end cut 10°, top long.
    // The end that is left is 7 1/4 - 4 1/4 = 3 in, so the nose stands back 3 tan 10° = 0.52898 in; the end cut goes on 1 1/2 in past the reference edge
    // and comes forward 1 1/2 tan 10° = 0.26449 in; the plate goes on 4 in past the curve and 1/2 in past the lower edge.
    [Fact]
    public void The_rafter_tails_pattern_has_the_sizes_worked_by_hand()
    {
        ToolpathForge.Pieces.Piece piece = SamplePlan.Plan.Pieces.Single(p => p.Make.Id == "rafter-tail");
        const double Inch = 25.4;
        double tan = Math.Tan(10 * Math.PI / 180);
        Assert.Equal(3 * tan * Inch, piece.Profile.Nose.X, 9);
        Assert.Equal(3 * Inch, piece.Profile.Nose.Y, 9);
        Assert.Equal(((3 * tan) + 7.5) * Inch, piece.Profile.Start.X, 9);
        Contour plate = ArcFit.Fit(piece.Exact, 0.001).Contour;
        Assert.Equal((1.5 + 7.25 + 0.5) * Inch, plate.Box.Height, 6);
        Assert.Equal(((1.5 * tan) + (3 * tan) + 7.5 + 4) * Inch, plate.Box.Width, 6);

        // Area: the trapezoid left of the end cut's foot, less a quarter of the ellipse, less the strip between ellipse and tip below the nose.
        double back = (3 * tan) + 7.5 + 4;
        double upper = (4.5 * back) + (tan * ((1.5 * 1.5) - (3.0 * 3.0)) / 2);
        double lower = (4.25 * (back - (3 * tan))) - (Math.PI * 7.5 * 4.25 / 4);
        double rim = 0.5 * 4;
        Assert.Equal((upper + lower + rim) * Inch * Inch, plate.SignedArea, 0.001 * plate.Length);
    }

    // Shipped bits that leave no square wall when nothing but the machine guides them.
    [Theory]
    [InlineData(BitKind.TopBearing)]
    [InlineData(BitKind.TipBearing)]
    [InlineData(BitKind.RoundOver)]
    [InlineData(BitKind.Chamfer)]
    [InlineData(BitKind.V)]
    [InlineData(BitKind.Ball)]
    public void A_bit_that_leaves_no_square_wall_stops_the_job(BitKind kind)
    {
        Job job = TestJobs.Of(TestJobs.Pattern(TestJobs.Scoop(), bit: TestJobs.Bit() with { Kind = kind }));
        Plan plan = Planner.Plan(job, cancel: s_never);
        Assert.True(plan.IsStopped);
        Assert.Contains(plan.Findings, f => f.Kind.Code == "bit-wrong-form");
    }

    // Hardboard of 5.6 mm on a light machine that stands half a diameter a pass: 5.9 mm in two passes of 2.95.
    [Fact]
    public void Hardboard_is_cut_in_two_passes_of_2_95()
    {
        CutSettings s = SamplePlan.Program("rafter-tail").Cut.Settings;
        Assert.Equal(2, s.Steps.Length);
        Assert.Equal(2.95, s.Steps[0], 9);
        Assert.Equal(5.9, s.Steps[1], 9);
        Assert.Equal(16000, s.Speed);
    }

    // fz = F/(n z), any machining handbook: two flutes fed 300 in/min at 18,000 rpm take 0.00833 in each.
    [Fact]
    public void A_chip_load_is_that_of_the_worked_example() => Assert.Equal(0.00833, new Feeds(18000, 300 * 25.4, default).ChipLoad(2) / 25.4, 5);

    // Read from the program's own words: S of the spindle and the largest F. A quarter-inch bit takes 0.012 to 0.015 in of hardboard and 0.006 to 0.008 in of softwood on production machines,
    // and a third of that at least is left to small ones (common practice).
    [Theory]
    [InlineData("rafter-tail", 0.012, 0.015)]
    [InlineData("bracket", 0.006, 0.008)]
    public void Words_of_a_program_keep_the_chip_load_of_practice(string name, double least, double most)
    {
        // Without its comments.
        string text = Regex.Replace(SamplePlan.Program(name).Text, @"\([^)]*\)", "");
        double Largest(string word) => Regex.Matches(text, word + @"(\d+(\.\d+)?)").Max(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture));
        double chip = Largest("F") / (Largest("S") * 2) / 25.4;
        Assert.InRange(chip, least / 3, most);
    }

    [Fact]
    public void Same_job_same_bytes_in_any_culture()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NegativeSign = "~";
        comma.DateTimeFormat.DateSeparator = "-";
        try
        {
            CultureInfo.CurrentCulture = comma;
            Plan plan = Planner.Plan(SamplePlan.Job, cancel: s_never);
            Assert.Equal(SamplePlan.Plan.Programs.Select(p => p.Text), plan.Programs.Select(p => p.Text));
            string sheet = RunSheetPage.Write(plan);
            CultureInfo.CurrentCulture = before;
            Assert.Equal(RunSheetPage.Write(SamplePlan.Plan), sheet);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Plans_made_at_the_same_time_are_the_same()
    {
        string[] texts = new string[8];
        Parallel.For(0, texts.Length, i => texts[i] = string.Concat(Planner.Plan(SamplePlan.Job, cancel: s_never).Programs.Select(p => p.Text)));
        Assert.All(texts, t => Assert.Equal(texts[0], t));
    }

    [Fact]
    public void A_post_processor_of_the_callers_own_is_proven_like_any_other()
    {
        Plan sound = Planner.Plan(SamplePlan.Job, new Shifting(SamplePlan.Job.Dialect, 0), cancel: s_never);
        Assert.True(sound.Programs.Length == 4 && sound.FailedProofs.IsEmpty);
        Plan wrong = Planner.Plan(SamplePlan.Job, new Shifting(SamplePlan.Job.Dialect, 0.5), cancel: s_never);
        Assert.Empty(wrong.Programs);
        Assert.Equal(4, wrong.FailedProofs.Length);
        Assert.All(wrong.Findings.Where(f => f.Kind.Severity == Severity.Stop), f => Assert.Equal(Planner.NotProven, f.Kind));
    }

    [Fact]
    public void A_tolerance_that_the_decimals_cannot_hold_is_refused()
    {
        Plan plan = Planner.Plan(SamplePlan.Read(SamplePlan.Text.Replace("tolerance = \"0.1 mm\"", "tolerance = \"0.005 mm\"", StringComparison.Ordinal)), cancel: s_never);
        Assert.Contains(plan.Findings, f => f.Kind.Code == "tolerance-too-fine");
        Assert.Empty(plan.Programs);
    }

    // The finish of a board end, told again by the proof from the finished text: no stretch whose grain class is "against" was cut conventionally.
    [Fact]
    public void The_text_itself_shows_no_conventional_cut_against_the_grain()
    {
        PlannedProgram bracket = SamplePlan.Program("bracket");
        Clampings.Placed placed = bracket.Cut.Clamping.Pieces[0];
        Assert.NotEmpty(bracket.Proof.EdgePasses);
        bool climbed = false;
        foreach (EdgePass pass in bracket.Proof.EdgePasses)
        {
            Curve edge = placed.Exact.Curves[pass.Edge];
            climbed |= pass.Direction == CutDirection.Climb;
            for (double share = pass.FromShare; share <= pass.ToShare; share += Math.Max(0.01, (pass.ToShare - pass.FromShare) / 20))
            {
                double angle = Grain.Angle(edge.DirectionAt(share), new Point2(1, 0));
                Assert.False(Grain.ClassOf(angle) == GrainClass.Against && pass.Direction == CutDirection.Conventional);
            }
        }

        // The corner at the reference edge was cut from that edge inwards.
        Assert.True(climbed);
    }

    private sealed class Shifting(Dialect dialect, double by) : IPostProcessor
    {
        public Dialect Dialect { get; } = dialect;

        public string Write(ProgramInput input) => new DialectPostProcessor(Dialect).Write(input with
        {
            Paths = [.. input.Paths.Select(p => p with { Moves = [.. p.Moves.Select(m => m with { End = m.End with { X = m.End.X + by } })] })],
        });
    }
}
