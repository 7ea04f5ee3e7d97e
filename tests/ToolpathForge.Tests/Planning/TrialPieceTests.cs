using System.Globalization;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Proof;
using ToolpathForge.Tests.Checks.Jobs;
using ToolpathForge.Tests.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Planning;

/// <summary>The trial piece from its program's text to the corrected job: a machine of known errors cuts it, a caliper reads it, and nothing is left of the errors.</summary>
public class TrialPieceTests
{
    private static Plan PlanOf(string text)
    {
        (Plan? plan, Finding[] findings) = SetUpJobs.Plan(text);
        Assert.DoesNotContain(findings, f => f.Kind.Severity == Severity.Stop);
        return Planner.Trial(plan!.Job, plan.Job.Makes[0], cancel: TestContext.Current.CancellationToken);
    }

    [Fact]
    public void It_is_proven_with_its_slot_hole_and_square()
    {
        Plan trial = PlanOf(SetUpJobs.Plate);
        Assert.DoesNotContain(trial.Findings, f => f.Kind.Severity == Severity.Stop);
        PlannedProgram program = Assert.Single(trial.Programs);
        Assert.True(program.Proof.Passed);
        Assert.Equal(["slot", "hole"], program.Cut.Clamping.Make.Openings.Select(o => o.Name));
        Assert.Contains("trial piece", program.Text, StringComparison.Ordinal);
    }

    // A bit 0.06 thin, X 0.4 % long, Y 0.35 % short, Y leaning 0.23° : as the text's own figures are rounded to 0.001 mm, a side of 108 mm is known to 1e-5, and
    // so are the errors that come back; readings are taken to 1e-6.
    [Fact]
    public void Cut_on_a_machine_of_known_errors_it_gives_them_back_and_the_corrected_job_has_none_left()
    {
        var machine = new AxisErrors(1.004, 0.9965, 0.004);
        const double Bit = 6.29;
        Plan trial = PlanOf(SetUpJobs.Plate);
        Dictionary<string, double> caliper = Read(Assert.Single(trial.Programs), machine, Bit);
        string table = string.Join(", ", caliper.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Key} = \"{r.Value:0.000000} mm\"")));
        (Plan? plan, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Plate, ("[[make]]", $"trial = {{ bit = \"downcut-1/4\", {table} }}\n[[make]]")));
        Assert.DoesNotContain(findings, f => f.Kind.Severity == Severity.Stop || f.Kind.Code == "trial-play");
        Assert.Equal(machine.ScaleX, plan!.Job.Axes.ScaleX, 2e-5);
        Assert.Equal(machine.ScaleY, plan.Job.Axes.ScaleY, 2e-5);
        Assert.Equal(machine.Skew, plan.Job.Axes.Skew, 4e-5);

        // Proven against the machine itself, not against what was found of it.
        PlannedProgram program = Assert.Single(plan.Programs);
        Target target = program.Target with { Axes = new TargetAxes(machine.ScaleX, machine.ScaleY, machine.Skew) };
        ProofReport report = Prover.Prove(program.Text, target);
        Assert.True(report.Passed, string.Join(' ', report.Faults.Select(f => f.Code.Name)));

        // A second trial piece is cut with the bit as its row says, whatever the first has shown.
        Assert.Equal(6.35, Planner.Trial(plan.Job, plan.Job.Makes[0], cancel: TestContext.Current.CancellationToken).Programs[0].Cut.Works[0].Path.Bit.Diameter, 9);
    }

    [Fact]
    public void The_command_writes_program_and_page()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", SamplePlan.Text);
        Command.Ran ran = Command.Run("trial", job, "--out", scratch.Path("trial"));
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Equal("manifest.json trial.html trial.nc", Scratch.Names(scratch.Path("trial")));
        string page = File.ReadAllText(scratch.Path("trial", "trial.html"));
        Assert.Contains("slot = &quot;0.2500 in&quot;", page, StringComparison.Ordinal);
        Assert.Contains("falling = &quot;5.6569 in&quot;", page, StringComparison.Ordinal);
        Assert.Equal(2, Command.Run("trial", job, "--make", "nothing", "--out", scratch.Path("other")).Code);
        Assert.Equal("porch.toml trial", Scratch.Names(scratch.Root));
    }

    // The four long sides of the square's track at full depth and the widest round of the hole, sent through the machine and measured with points and distances.
    private static Dictionary<string, double> Read(PlannedProgram program, AxisErrors machine, double bit)
    {
        double side = TrialPiece.Side(LengthUnit.Inch);
        Motion[] motions = [.. GcodeReader.Read(program.Text).Steps.OfType<Motion>().Where(m => m.Kind != MotionKind.Rapid && m.End.Z < 0.001)];
        double outer = side + 6.35;
        Box2 track = motions.Aggregate(Box2.Empty, (b, m) => b.Including(new Point2(m.End.X, m.End.Y)));
        double[] xs = Ends(motions.Where(m => m.Kind == MotionKind.Line && m.Start.X == m.End.X && Math.Abs(m.End.Y - m.Start.Y) > 8).Select(m => m.Start.X), outer);
        double[] ys = Ends(motions.Where(m => m.Kind == MotionKind.Line && m.Start.Y == m.End.Y && Math.Abs(m.End.X - m.Start.X) > 8).Select(m => m.Start.Y), outer);
        Assert.True(track.Width > outer - 1 && track.Height > outer - 1);
        Point2[] corners = [.. new Point2[] { new(xs[0], ys[0]), new(xs[1], ys[0]), new(xs[1], ys[1]), new(xs[0], ys[1]) }.Select(machine.True)];
        Point2[] piece = new Point2[4];
        for (int i = 0; i < 4; i++)
        {
            Point2 before = (corners[i] - corners[(i + 3) % 4]).Unit();
            Point2 after = (corners[(i + 1) % 4] - corners[i]).Unit();
            Point2 a = corners[i] + (before.Left * (bit / 2));
            Point2 b = corners[i] + (after.Left * (bit / 2));
            piece[i] = a + (before * ((b - a).Cross(after) / before.Cross(after)));
        }

        double Width(int i) => Math.Abs((piece[(i + 2) % 4] - piece[i]).Cross((piece[(i + 1) % 4] - piece[i]).Unit()));
        double radius = motions.Where(m => m.Kind == MotionKind.Arc && Math.Abs(m.Radius - ((TrialPiece.Hole(LengthUnit.Inch) - 6.35) / 2)) < 0.01).Max(m => m.Radius);
        return new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["slot"] = bit,
            ["across-x"] = Width(1),
            ["across-y"] = Width(0),
            ["rising"] = piece[0].DistanceTo(piece[2]),
            ["falling"] = piece[3].DistanceTo(piece[1]),
            ["hole-x"] = (2 * radius * machine.ScaleX) + bit,
            ["hole-y"] = (2 * radius * machine.ScaleY) + bit,
        };
    }

    // The two coordinates that lie as far apart as the finished track is wide; roughing lies further out.
    private static double[] Ends(IEnumerable<double> of, double apart)
    {
        double[] all = [.. of.Distinct().Order()];
        return all.SelectMany(a => all.Where(b => Math.Abs(b - a - apart) < 0.005).Select(b => (double[])[a, b])).First();
    }
}
