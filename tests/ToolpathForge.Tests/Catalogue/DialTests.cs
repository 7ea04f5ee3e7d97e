using ToolpathForge.Catalogue;
using ToolpathForge.Planning;
using ToolpathForge.RunSheets;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Catalogue;

public class DialTests
{
    // Even marks from the slowest speed at 1 to the fastest at the last (common practice): 8,000 to 24,000 on 1 to 5 is 4,000 a mark.
    [Theory]
    [InlineData(8000, 1)]
    [InlineData(16000, 3)]
    [InlineData(17000, 3.25)]
    [InlineData(24000, 5)]
    public void The_dial_is_even_between_its_ends(double speed, double mark) => Assert.Equal(mark, (TestJobs.Machine with { DialMarks = 5 }).DialFor(speed));

    [Fact]
    public void The_sheet_of_a_router_switched_by_hand_gives_the_dial()
    {
        string text = SamplePlan.Text.Replace("desktop-400", "desktop-600", StringComparison.Ordinal)
            .Replace("dialect = \"metric-centre\"", "dialect = \"metric-hand-switched\"", StringComparison.Ordinal);
        Plan plan = Planner.Plan(SamplePlan.Read(text), cancel: CancellationToken.None);
        Assert.NotEmpty(plan.Programs);
        Assert.Contains("on a dial marked 1 to 6", RunSheetPage.Write(plan), StringComparison.Ordinal);
    }
}
