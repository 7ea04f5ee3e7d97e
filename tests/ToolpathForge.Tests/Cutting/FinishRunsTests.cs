using System.Collections.Immutable;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cutting;

public class FinishRunsTests
{
    // Half a turn brings a piece to how a right-hand piece lies; mirrored, the end points the other way.
    private static Contour Laid(ShapeSpec spec, double width, bool mirrored)
    {
        Profile p = spec.Shape.Scale(spec, width, [])!;
        Contour contour = ArcFit.Fit(p.Exact.Placed(new Placement(Math.PI, default, false)), 0.01).Contour;
        return mirrored ? contour.Placed(new Placement(0, default, true)).Reversed() : contour;
    }

    [Theory]
    [InlineData("scoop")]
    [InlineData("belly")]
    public void Laid_right_hand_the_whole_curve_is_with_the_grain_and_conventional(string form)
    {
        ShapeSpec spec = form == "scoop" ? TestJobs.Scoop(80, 60, 12) : TestJobs.Belly(80, 60, 12);
        Contour profile = Laid(spec, 140, mirrored: false);
        FinishPlan plan = FinishRuns.For(profile, [0], new Point2(-1, 0), DirectionChoice.ByGrain, 6.35);
        Assert.False(Assert.Single(plan.Runs).Climb);
        Assert.DoesNotContain(Grain.Along(profile, 0), g => g.Class == GrainClass.Against);
    }

    [Theory]
    [InlineData("scoop")]
    [InlineData("belly")]
    public void Mirrored_the_curve_lies_against_the_grain_and_none_of_that_is_cut_conventionally(string form)
    {
        ShapeSpec spec = form == "scoop" ? TestJobs.Scoop(80, 60) : TestJobs.Belly(80, 60);
        Contour profile = Laid(spec, 140, mirrored: true);
        FinishPlan plan = FinishRuns.For(profile, [0], new Point2(-1, 0), DirectionChoice.ByGrain, 6.35);
        foreach (GrainStretch stretch in Grain.Along(profile, 0).Where(g => g.Class == GrainClass.Against))
        {
            Assert.All(plan.Runs.Where(r => r.From < stretch.To && r.To > stretch.From), r => Assert.True(r.Climb));
        }
    }

    // The tooth pushes the fibers of the face beyond the corner outwards with what of its motion is square to that face: cos 8° = 0.990 from an end cut that leans 8° inwards onto the long
    // grain, all of it from a square one; the other way round, along the long grain onto end grain, there are no fibers along the face to break out but for sin 8° = 0.139 of them
    // (components of a vector, worked by hand).
    [Theory]
    [InlineData(90, 180, 1)]
    [InlineData(98, 180, 0.990)]
    [InlineData(82, 180, 0.990)]
    [InlineData(150, 180, 0.5)]
    [InlineData(0, 90, 0)]
    [InlineData(0, 98, 0.138)]
    [InlineData(180, 90, 0)]
    public void The_risk_at_a_corner_is_what_the_tooth_pushes_across_long_grain(double arriving, double after, double risk) =>
        Assert.Equal(risk, FinishRuns.Risk(Point2.Direction(arriving * Math.PI / 180), Point2.Direction(after * Math.PI / 180), 0), 2e-3);

    // A square end cut runs out across the long reference edge: risk 1 by the definition, so the last 10 mm (or the bit's diameter) go first.
    [Theory]
    [InlineData(6.35, 10)]
    [InlineData(12.7, 12.7)]
    public void The_corner_at_the_reference_edge_is_cut_first_from_the_edge_inwards(double diameter, double length)
    {
        Contour profile = Laid(TestJobs.Belly(80, 60), 140, mirrored: false);
        FinishPlan plan = FinishRuns.For(profile, [0], new Point2(-1, 0), DirectionChoice.ByGrain, diameter);
        FinishRun corner = Assert.Single(plan.CornersFirst);
        Assert.True(corner.Climb);
        Assert.Equal(profile.Length, corner.To, 9);
        Assert.Equal(length, corner.To - corner.From, 9);
        Assert.Equal(corner.From, plan.Runs[^1].To, 9);
    }

    // Grain that slopes down towards the nose leaves a short stretch against it: that one is climbed, and the runs meet.
    [Fact]
    public void Sloping_grain_splits_the_finish()
    {
        Contour profile = Laid(TestJobs.Belly(200, 120), 280, mirrored: false);
        double slope = Math.Atan(1.0 / 8);
        bool split = false;
        foreach (double fibre in (double[])[slope, -slope])
        {
            FinishPlan plan = FinishRuns.For(profile, [fibre], new Point2(-1, 0), DirectionChoice.ByGrain, 6.35);
            ImmutableArray<GrainStretch> against = [.. Grain.Along(profile, fibre).Where(g => g.Class == GrainClass.Against)];
            split |= plan.Runs.Length > 1;
            Assert.Equal(against.Length > 0, plan.Runs.Any(r => r.Climb));
            Assert.Equal(plan.Runs.Select(r => r.To).SkipLast(1), plan.Runs.Select(r => r.From).Skip(1));
            Assert.All(against, g => Assert.All(plan.Runs.Where(r => r.From < g.To - 1e-9 && r.To > g.From + 1e-9), r => Assert.True(r.Climb)));
        }

        Assert.True(split);
    }

    [Fact]
    public void The_job_has_the_last_word_and_panels_go_one_way()
    {
        Contour profile = Laid(TestJobs.Belly(80, 60), 140, mirrored: false);
        Assert.True(Assert.Single(FinishRuns.For(profile, [0], new Point2(-1, 0), DirectionChoice.Climb, 6).Runs).Climb);
        Assert.False(Assert.Single(FinishRuns.For(profile, [0], new Point2(-1, 0), DirectionChoice.Conventional, 6).Runs).Climb);
        Assert.True(Assert.Single(FinishRuns.For(profile, [], new Point2(-1, 0), DirectionChoice.ByGrain, 6).Runs).Climb);
    }
}
