using ToolpathForge.Findings;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.RunSheets;

namespace ToolpathForge.Tests.Checks.Jobs;

/// <summary>
/// Timber that is not cut like a board: members of 4 in nominal and more (IRC R502.8.1, R802.7.1: the tension side is not notched except at the ends) and engineered
/// timber (R502.8.2, R802.7.2: not without its maker or a registered design professional), as public quotations of the code have them.
/// </summary>
public class TimberRulesTests
{
    private static (Plan? Plan, Finding[] Findings) Tail(string board, string more = "") =>
        SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Plate, ("board = \"2x8\"", $"board = \"{board}\"\n{more}")));

    private static string Codes(IEnumerable<Finding> findings) => string.Join(' ', findings.Select(f => f.Kind.Code)
        .Where(c => c.StartsWith("thick-member", StringComparison.Ordinal) || c.StartsWith("engineered", StringComparison.Ordinal)));

    [Theory]
    [InlineData("2x8", "", "")]
    [InlineData("2x12", "bears-at = \"3\"", "")]
    [InlineData("4x8", "", "thick-member-end")]
    [InlineData("4x8", "bears-at = \"12\"", "thick-member-end")]
    [InlineData("4x8", "bears-at = \"5\"", "thick-member-span")]
    [InlineData("4x10", "", "thick-member-end")]
    public void Members_of_four_inches_nominal_are_told(string board, string more, string codes)
    {
        (Plan? plan, Finding[] findings) = Tail(board, more);
        Assert.NotNull(plan);
        Assert.Equal(codes, Codes(findings));
        Assert.All(findings.Where(f => Codes([f]).Length > 0), f => Assert.Contains("a licensed designer decide", f.Kind.Advice, StringComparison.Ordinal));
    }

    // 4 in nominal is 3 1/2 in dressed (PS 20); a 3-by, 2 1/2 in, is none.
    [Theory]
    [InlineData(3.5, true)]
    [InlineData(5.5, true)]
    [InlineData(2.5, false)]
    [InlineData(1.5, false)]
    public void Thick_begins_at_four_inches_nominal(double inches, bool thick) => Assert.Equal(thick, CodeLimits.IsThick(inches * 25.4));

    [Fact]
    public void Engineered_timber_is_refused_without_its_makers_word()
    {
        (Plan? plan, Finding[] findings) = Tail("lvl-9-1/4");
        Finding stop = Assert.Single(findings, f => f.Kind.Severity == Severity.Stop);
        Assert.Equal("engineered-timber", stop.Kind.Code);
        Assert.Equal(10, stop.Place.Line);
        Assert.True(plan is null || plan.Programs.IsEmpty);
    }

    [Fact]
    public void The_makers_word_is_printed_and_warned_of()
    {
        (Plan? plan, Finding[] findings) = Tail("lvl-9-1/4", "maker-allows = \"Ends shaped to 5 in, letter of 3 May.\"");
        Finding warned = Assert.Single(findings, f => f.Kind.Code == "engineered-timber-allowed");
        Assert.Equal(Severity.Warn, warned.Kind.Severity);
        Assert.DoesNotContain(findings, f => f.Kind.Severity == Severity.Stop);
        Assert.Contains("Ends shaped to 5 in, letter of 3 May", RunSheetPage.Write(plan!), StringComparison.Ordinal);
    }

    // 7 1/4 - 4 1/4 = 3 in is left of a 2x8, which is under 3 1/2 in; a quarter of the depth is 1 13/16 in.
    [Fact]
    public void The_sheet_tells_the_limits_beside_what_this_profile_leaves()
    {
        string sheet = RunSheetPage.Write(Tail("2x8").Plan!);
        Assert.Contains("Before it carries anything", sheet, StringComparison.Ordinal);
        Assert.Contains("1 13/16 in at most; yours: 4 1/4 in, more</td>", sheet, StringComparison.Ordinal);
        Assert.Contains("<td>yours: 3 in, ", sheet, StringComparison.Ordinal);
        Assert.Contains("from the tip, less</td>", sheet, StringComparison.Ordinal);
        Assert.Contains("not stated (bears-at)", sheet, StringComparison.Ordinal);
        Assert.Contains("editions of 2012 to 2024", sheet, StringComparison.Ordinal);
        Assert.Contains("local code and a licensed designer decide", sheet, StringComparison.Ordinal);
        Assert.Contains("<td>yours: 14 in</td>", RunSheetPage.Write(Tail("2x8", "bears-at = \"14\"").Plan!), StringComparison.Ordinal);
    }
}
