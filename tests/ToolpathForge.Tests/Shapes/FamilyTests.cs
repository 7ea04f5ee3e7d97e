using ToolpathForge.Drawings;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Tests.Support;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Shapes;

public class FamilyTests
{
    private const double Inch = 25.4;

    private const string Shared = "kind = 'quarter-ellipse', form = 'scoop', run = '0.58 w', depth = '0.40 w', round = '1/8', end-cut = '10 deg'";

    private static JobReading Read(string shape, string family) => JobReader.Read(
        ShapeJobs.Text(shape).Replace("board = \"2x6\"", $"family = [ {family} ]", StringComparison.Ordinal)
            .Replace("hold = \"3 1/2\"", "hold = \"5 1/2\"", StringComparison.Ordinal), "family.toml", _ => null);

    private static Plan Planned(string shape, string family)
    {
        JobReading reading = Read(shape, family);
        Assert.Empty(reading.Findings);
        return Planner.Plan(reading.Job!, cancel: CancellationToken.None);
    }

    private static string[] Codes(JobReading reading) => [.. reading.Findings.Select(f => f.Kind.Code)];

    // Shares of the dressed widths 3 1/2, 5 1/2, 9 1/4 in (American Softwood Lumber Standard PS 20), rounded to eighths by hand; ratios 16/11, 13/9, 43/30.
    [Fact]
    public void Shares_on_three_widths_are_sizes_that_a_rule_shows()
    {
        Plan plan = Planned(Shared, "{ board = '2x4' }, { board = '2x6', count = 3 }, { board = '2x10' }");
        Assert.Empty(plan.Findings.Where(f => f.Kind.Severity == Severity.Stop));
        Assert.Equal(["tail-2x4", "tail-2x6", "tail-2x10"], plan.Pieces.Select(p => p.Make.Id));
        Assert.Equal([1, 3, 1], plan.Pieces.Select(p => p.Make.Count));
        Assert.All(plan.Pieces, p => Assert.Equal("tail", p.Make.Family));
        double[] sizes = [.. plan.Pieces.SelectMany(p => (double[])[p.Profile.Run / Inch, p.Profile.Depth / Inch])];
        Assert.Equal([2, 1.375, 3.25, 2.25, 5.375, 3.75], sizes.Select(s => Math.Round(s, 9)));
        Assert.Equal([1.455, 1.444, 1.433], plan.Pieces.Select(p => Math.Round(p.Profile.Run / p.Profile.Depth, 3)));
        Assert.All(plan.Pieces, p => Assert.Equal(10, p.Profile.EndAngle));
        Assert.All(plan.Programs, p => Assert.True(p.Proof.Passed));
        Assert.Equal(3, plan.Programs.Length);
    }

    [Fact]
    public void Fixed_sizes_stay_and_a_table_gives_each_board_its_own()
    {
        Plan plan = Planned(
            "kind = 'quarter-ellipse', form = 'scoop', run = '2', depth = '1 3/8', end-cut = '10 deg'",
            "{ board = '2x4' }, { board = '2x6' }, { board = '2x8', shape = { run = '4 1/4', depth = '2 7/8' } }");
        Assert.Equal([2, 2, 4.25], plan.Pieces.Select(p => Math.Round(p.Profile.Run / Inch, 9)));
        Assert.Equal([1.375, 1.375, 2.875], plan.Pieces.Select(p => Math.Round(p.Profile.Depth / Inch, 9)));
        Assert.All(plan.Pieces, p => Assert.Equal(10, p.Profile.EndAngle));
    }

    // On a 3 1/2 in board 0.35 x 0.21 in are 1/4 x 1/4 by quarters, 40 per cent off 5:3. Of the next quarters, 1/2 x 1/4 is 20 per cent off.
    [Theory]
    [InlineData(3.0, 0.25, 0.25, true)]
    [InlineData(25.0, 0.5, 0.25, false)]
    [InlineData(50.0, 0.25, 0.25, false)]
    public void Rounding_keeps_the_proportion_or_tells(double percent, double run, double depth, bool told)
    {
        string shape = FormattableString.Invariant($"kind = 'quarter-ellipse', form = 'scoop', run = '0.1 w', depth = '0.06 w', round = '1/4', keep-ratio = {percent}");
        Job job = ShapeJobs.Read(shape, "2x4");
        var findings = new List<Finding>();
        ToolpathForge.Shapes.Profile p = job.Makes[0].Shape.Shape.Scale(job.Makes[0].Shape, job.Makes[0].DesignWidth, findings)!;
        Assert.Equal(run * Inch, p.Run, 9);
        Assert.Equal(depth * Inch, p.Depth, 9);
        Assert.Equal(told ? ["shape-ratio-moved"] : [], findings.Select(f => f.Kind.Code));
        if (told)
        {
            Assert.Contains("becomes 1 instead of 1.667: 40 per cent off", FindingText.Word(findings[0], LengthUnit.Inch).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Metric_sizes_are_rounded_to_five_millimetres()
    {
        Plan plan = Planned(
            "kind = 'quarter-ellipse', form = 'belly', run = '0.58 w', depth = '0.40 w', round = '5 mm', keep-ratio = 8",
            "{ board = '45x95' }, { board = '45x145' }, { board = '45x195' }");
        Assert.Equal([55, 85, 115], plan.Pieces.Select(p => Math.Round(p.Profile.Run, 9)));
        Assert.Equal([40, 60, 80], plan.Pieces.Select(p => Math.Round(p.Profile.Depth, 9)));
    }

    // One mistake in what the boards share is told once; what only one board has wrong is told for that one.
    [Theory]
    [InlineData(Shared + ", depht = '1'", "{ board = '2x4' }, { board = '2x6' }", "unknown-key-near")]
    [InlineData(Shared, "{ board = '2x4' }, { board = '2x7' }", "unknown-id-near")]
    [InlineData(Shared, "{ board = '2x4' }, { board = '2x4' }", "make-id-twice")]
    [InlineData(Shared, "{ board = '2x4', colour = 'red' }, { board = '2x6' }", "unknown-key")]
    [InlineData(Shared, "{ count = 2 }, { board = '2x6' }", "missing-key")]
    public void A_mistake_is_told_once(string shape, string family, string code)
    {
        JobReading reading = Read(shape, family);
        Assert.Equal([code], Codes(reading));
    }

    [Fact]
    public void A_board_beside_a_family_is_refused()
    {
        JobReading reading = JobReader.Read(
            ShapeJobs.Text(Shared).Replace("board = \"2x6\"", "board = \"2x6\"\nfamily = [ { board = '2x4' } ]", StringComparison.Ordinal), "family.toml", _ => null);
        Assert.Equal(["board-beside-family"], Codes(reading));
    }

    [Fact]
    public void The_family_is_drawn_side_by_side_at_one_scale()
    {
        Plan plan = Planned(Shared, "{ board = '2x4' }, { board = '2x6' }, { board = '2x10' }");
        Golden.Same("family.svg", SvgWriter.Write(FamilyDrawing.Of("tail", [.. plan.Pieces.Cast<ProfilePiece>()], LengthUnit.Inch), FamilyDrawing.Scale));
    }
}
