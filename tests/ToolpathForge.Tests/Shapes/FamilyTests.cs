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

    // Dressed dry widths of 2 in dimension lumber that the catalogue holds, nominal 3, 4, 6, 8, 10, 12 in: 2 1/2, 3 1/2, 5 1/2, 7 1/4, 9 1/4, 11 1/4 in
    // (American Softwood Lumber Standard PS 20, table of dimension lumber; the first from memory).
    [Fact]
    public void On_every_dressed_width_the_family_can_be_marked_with_a_rule_and_keeps_its_proportion_angle_and_shoulder()
    {
        Dictionary<string, double> dressed = new(StringComparer.Ordinal) { ["2x3"] = 2.5, ["2x4"] = 3.5, ["2x6"] = 5.5, ["2x8"] = 7.25, ["2x10"] = 9.25, ["2x12"] = 11.25 };
        JobReading reading = Read(
            "kind = 'shouldered', form = 'scoop', shoulder = '3/8', run = '0.62 w', depth = '0.44 w', end-cut = '10 deg', round = '1/8', keep-ratio = 4",
            string.Join(", ", dressed.Keys.Select(b => $"{{ board = '{b}' }}")));
        Assert.Empty(reading.Findings);
        DrawPlan plan = DrawPlan.Of(reading.Job!);
        Assert.DoesNotContain(plan.Findings, f => f.Kind.Severity == Severity.Stop);
        Assert.Equal(dressed.Values, plan.Pieces.Cast<ProfilePiece>().Select(p => Math.Round(p.Profile.Width / Inch, 9)));
        foreach (ToolpathForge.Shapes.Profile profile in plan.Pieces.Cast<ProfilePiece>().Select(p => p.Profile))
        {
            // Eighths of an inch, 62:44 within 4 per cent, and the same lean and shoulder on each.
            Assert.All((double[])[profile.Run, profile.Depth], size => Assert.Equal(Math.Round(size / Inch * 8), size / Inch * 8, 9));
            Assert.InRange(profile.Run / profile.Depth / (0.62 / 0.44), 1 / 1.04, 1.04);
            Assert.Equal(10, Math.Atan2(Math.Abs(profile.End.X - profile.Nose.X), profile.Nose.Y - profile.End.Y) * 180 / Math.PI, 9);
            var shoulder = Assert.IsType<ToolpathForge.Geometry.LineCurve>(profile.Exact.Curves[0]);
            Assert.Equal(0, shoulder.To.X - shoulder.From.X, 9);
            Assert.Equal(3 * Inch / 8, shoulder.From.Y - shoulder.To.Y, 9);
        }
    }

    [Fact]
    public void The_run_sheet_shows_the_boards_of_every_family_side_by_side()
    {
        Plan plan = Planned(Shared, "{ board = '2x4' }, { board = '2x6' }");
        string sheet = ToolpathForge.RunSheets.RunSheetPage.Write(plan);
        Assert.Contains("<h3>The family tail</h3>", sheet, StringComparison.Ordinal);
        Assert.Contains("The family tail</title>", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("The family", ToolpathForge.RunSheets.RunSheetPage.Write(Planner.Plan(ShapeJobs.Read(Shared), cancel: CancellationToken.None)), StringComparison.Ordinal);
    }
}
