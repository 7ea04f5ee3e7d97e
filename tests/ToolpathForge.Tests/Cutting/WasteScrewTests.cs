using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.RunSheets;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cutting;

public class WasteScrewTests
{
    // Statics: one screw is a pivot, two are none; the farther apart, the less play at either turns the waste.
    [Fact]
    public void Waste_is_held_by_two_screws_far_apart_and_off_the_edges()
    {
        JobReading reading = JobReader.Read(File.ReadAllText(Repo.Path("samples", "boathouse", "boards.toml")), "boards.toml", _ => null);
        Plan plan = Planner.Plan(reading.Job!, cancel: TestContext.Current.CancellationToken);
        PlannedProgram[] screwed = [.. plan.Programs.Where(p => !p.Cut.Clamping.Screws.IsEmpty)];
        Assert.NotEmpty(screwed);
        foreach (PlannedProgram program in screwed)
        {
            foreach (var piece in program.Cut.Clamping.Pieces)
            {
                Point2[] own = [.. program.Cut.Clamping.Screws.Where(piece.Block.Contains)];
                Assert.Equal(2, own.Length);
                Assert.True(own[0].DistanceTo(own[1]) >= WasteScrews.Apart);
                Assert.All(own, at => Assert.True(
                    Math.Min(Math.Min(at.Y - piece.Block.MinY, piece.Block.MaxY - at.Y), piece.Block.MaxX - at.X) >= WasteScrews.EdgeDistance - 1e-6));
            }
        }

        string sheet = RunSheetPage.Write(plan);
        Assert.Contains("or the end splits", sheet, StringComparison.Ordinal);
        Assert.Contains("or they meet the bed", sheet, StringComparison.Ordinal);
    }

    // 38.1 mm of board on 12 mm of spoilboard, 3 mm left below the point.
    [Fact]
    public void A_screw_does_not_meet_the_bed() => Assert.Equal(47.1, WasteScrews.Longest(38.1, 12), 9);

    [Fact]
    public void A_scrap_too_small_for_screws_is_told_and_a_larger_one_needs_two()
    {
        (_, Finding[] small) = Checks.Jobs.SetUpJobs.Plan(Checks.Jobs.SetUpJobs.Board);
        Assert.Contains(small, f => f.Kind.Code == "scrap-unscrewed");
        Assert.DoesNotContain(small, f => f.Kind.Severity == Severity.Stop);

        // The same curve in fir weighs more than may come loose, and has no room for two screws.
        (_, Finding[] heavy) = Checks.Jobs.SetUpJobs.Plan(Checks.Jobs.SetUpJobs.With(Checks.Jobs.SetUpJobs.Board, ("western-red-cedar", "douglas-fir")));
        Assert.Contains(heavy, f => f.Kind.Code == "no-room-for-screw");
    }
}
