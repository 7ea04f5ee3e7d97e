using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Planning;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Jobs;

/// <summary>What people at the bench write and mean: each slip ends in one finding that says what to write, or is taken as it was meant.</summary>
public class CarpenterInputTests
{
    private static Finding[] Findings(string from, string to)
    {
        string text = SamplePlan.Text.Replace(from, to, StringComparison.Ordinal);
        Assert.NotEqual(SamplePlan.Text, text);
        JobReading reading = JobReader.Read(text, "boathouse.toml", _ => null);
        return [.. reading.Findings, .. reading.Job is { } job ? Planner.Plan(job, cancel: TestContext.Current.CancellationToken).Findings : []];
    }

    [Theory]
    [InlineData("end-cut = \"10 deg\"", "end-cut = \"4/12\"", "slope-slashed", "4:12")]
    [InlineData("run = \"7 1/2\"", "run = \"90%\"", "share-in-percent", "0.9 w")]
    [InlineData("bit = \"downcut-1/4\"\nshape = { kind = \"quarter-ellipse\", form = \"scoop\", run = \"7 1/2\"", "bit = \"1/4-downcut\"\nshape = { kind = \"quarter-ellipse\", form = \"scoop\", run = \"7 1/2\"", "unknown-id-near", "downcut-1/4")]
    [InlineData("board = \"2x8\"", "board = \"2x16\"", "unknown-id-near", "2x12")]
    [InlineData("name = \"Boathouse porch\"", "name = \"Boathouse porch", "quote-not-closed", "quote at its end")]
    [InlineData("panel = \"hardboard-1/4\", thickness", "panel = \"hardboard-1/4, thickness", "quote-not-closed", "quote at its end")]
    public void A_slip_is_one_finding_that_says_what_to_write(string from, string to, string code, string advice)
    {
        Finding[] stops = [.. Findings(from, to).Where(f => f.Kind.Severity == Severity.Stop)];
        Assert.Equal([code], stops.Select(f => f.Kind.Code).Distinct());
        WordedFinding worded = FindingText.Word(stops[0], LengthUnit.Inch);
        Assert.Contains(advice, worded.Message + worded.Advice, StringComparison.Ordinal);
        Assert.True(stops[0].Place.Line > 0);
    }

    [Theory]
    [InlineData("form = \"scoop\", run = \"7 1/2\"", "form = \"hollow\", run = \"7 1/2\"")]
    [InlineData("form = \"belly\", run = \"0.8 w\"", "form = \"round\", run = \"0.8 w\"")]
    [InlineData("name = \"Boathouse porch\"", "name = \u201CBoathouse porch\u201D")]
    [InlineData("run = \"7 1/2\", depth = \"4 1/4\"", "run = \u201C7 1/2\u201D, depth = \u201D4 1/4\u201C")]
    public void What_is_meant_alike_is_cut_alike(string from, string to)
    {
        string text = SamplePlan.Text.Replace(from, to, StringComparison.Ordinal);
        Assert.NotEqual(SamplePlan.Text, text);
        Plan plan = Planner.Plan(SamplePlan.Read(text), cancel: TestContext.Current.CancellationToken);
        Plan plain = Planner.Plan(SamplePlan.Job, cancel: TestContext.Current.CancellationToken);
        Assert.Equal(plain.Programs.Select(p => p.Text), plan.Programs.Select(p => p.Text));
    }

    [Fact]
    public void Quotes_within_a_text_stay_what_they_are()
    {
        JobReading reading = JobReader.Read(SamplePlan.Text.Replace("name = \"Boathouse porch\"", "name = \"A \u201Cporch\u201D\" # the \u201Cold\u201D one", StringComparison.Ordinal), "boathouse.toml", _ => null);
        Assert.Equal("A \u201Cporch\u201D", reading.Job!.Name);
    }

    [Theory]
    [InlineData("run = \"9\", depth = \"6 1/2\"", "run = \"9 mm\", depth = \"6 1/2\"", true)]
    [InlineData("run = \"0.8 w\"", "run = \"30 in\"", true)]
    [InlineData("run = \"9\", depth = \"6 1/2\"", "run = \"229 mm\", depth = \"165 mm\"", false)]
    public void A_size_that_would_suit_in_the_other_unit_gets_a_note(string from, string to, bool told)
    {
        Finding[] findings = Findings(from, to);
        Assert.Equal(told, findings.Any(f => f.Kind.Code == "size-other-unit"));
        Assert.All(findings.Where(f => f.Kind.Code == "size-other-unit"), f => Assert.Equal(Severity.Note, f.Kind.Severity));
    }

    [Theory]
    [InlineData(-0.0576)]
    [InlineData(-1e-9)]
    public void A_hair_below_nothing_is_nothing(double millimetres)
    {
        Assert.Equal("0 in", RuleText.Size(millimetres, LengthUnit.Inch));
        Assert.DoesNotContain("-0.0 mm", ShopText.Size(millimetres / 10, LengthUnit.Millimetre), StringComparison.Ordinal);
        Assert.DoesNotContain("-0.000", ShopText.Size(millimetres / 1000, LengthUnit.Inch), StringComparison.Ordinal);
        Assert.DoesNotContain("-0 mm", ShopText.Size(millimetres / 10, LengthUnit.Millimetre), StringComparison.Ordinal);
    }
}
