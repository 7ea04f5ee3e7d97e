using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;
using ToolpathForge.Planning;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Shapes;

/// <summary>Every shape goes the whole way: scaled to three widths, planned as a pattern and as a board end, and proven.</summary>
public class ShapePlanTests
{
    public static TheoryData<int, string> Cases()
    {
        var data = new TheoryData<int, string>();
        for (int i = 0; i < ShapeJobs.Shares.Length; i++)
        {
            data.Add(i, "pattern");
            data.Add(i, "board-end");
        }

        return data;
    }

    [Fact]
    public void Ten_shapes_and_more_beside_the_quarter_ellipse_are_tried()
    {
        string[] tried = [.. ShapeList.All.Select(s => s.Id).Where(id => ShapeJobs.Shares.Any(s => s.Contains($"kind = '{id}'", StringComparison.Ordinal)))];
        Assert.Equal(ShapeList.All.Select(s => s.Id).Where(id => id != "quarter-ellipse"), tried);
        Assert.True(tried.Length >= 10);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_shape_is_planned_and_proven_on_three_widths(int shape, string kind)
    {
        foreach (string board in ShapeJobs.Boards)
        {
            Plan plan = Planner.Plan(ShapeJobs.Read(ShapeJobs.Shares[shape], board, kind), cancel: CancellationToken.None);
            Assert.Empty(plan.Findings.Where(f => f.Kind.Severity == Severity.Stop).Select(f => board + ": " + FindingText.Word(f, LengthUnit.Inch)));
            PlannedProgram program = Assert.Single(plan.Programs);
            Assert.True(program.Proof.Passed);
            Assert.InRange(program.Proof.WorstGouge, 0, plan.Job.Tolerance);
            Assert.InRange(program.Proof.WorstLeftover, 0, plan.Job.Tolerance);

            Profile profile = plan.Pieces[0].Profile;
            Assert.Equal(profile.Width, profile.Start.Y, 9);
            Assert.Equal(0, profile.End.Y, 9);
            Assert.Equal(profile.Width, plan.Job.Makes[0].DesignWidth, 12);
        }
    }
}
