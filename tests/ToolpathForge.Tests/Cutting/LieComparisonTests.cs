using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cutting;

public class LieComparisonTests
{
    private static Contour Laid(ShapeSpec spec) =>
        ArcFit.Fit(spec.Shape.Scale(spec, 280, [])!.Exact.Placed(new Placement(Math.PI, default, false)), 0.01).Contour;

    // Straight grain: as laid and end over end have all of the curve with the grain, turned flat and rolled over all of it against.
    [Fact]
    public void With_straight_grain_only_as_laid_and_end_over_end_leave_nothing_against_it()
    {
        ImmutableArray<LieReading> lies = LieComparison.Of(Laid(TestJobs.Belly(200, 120)), Math.PI, 0);
        Assert.Equal([Lie.AsLaid, Lie.TurnedFlat, Lie.RolledOver, Lie.EndOverEnd], lies.Select(l => l.Lie));
        Assert.Equal([true, false, false, true], lies.Select(l => l.Proposed));
        Assert.All(lies.Where(l => l.Proposed), l => Assert.Equal(0, l.Against, 9));
        Assert.All(lies.Where(l => !l.Proposed), l => Assert.Equal(lies[0].With, l.Against, 6));
        Assert.Equal([true, false, false, true], lies.Select(l => l.ReferenceAtFence));
    }

    // Grain that slopes by 1 in 8 adds to the angle at one end and takes from it at the other.
    [Fact]
    public void Sloping_grain_tells_the_ends_apart()
    {
        Contour profile = Laid(TestJobs.Belly(200, 120));
        ImmutableArray<LieReading> lies = LieComparison.Of(profile, Math.PI, Math.Atan(1.0 / 8));
        Assert.NotEqual(lies[0].Against, lies[3].Against, 3);
        Assert.All(lies.Where(l => l.Proposed), l => Assert.True(l.Against <= lies.Where(o => o.OtherEnd == l.OtherEnd).Min(o => o.Against) + 1e-6));

        // Rolled over is the mirror of as laid: what was with the grain is against it.
        Assert.Equal(lies[0].With, lies[2].Against, 6);
        Assert.Equal(lies[0].Against, lies[2].With, 6);
    }

    [Fact]
    public void The_proposal_never_has_more_against_the_grain_than_any_other_way_for_its_end()
    {
        foreach (double slope in (double[])[-0.2, -0.1, 0.05, 0.3])
        {
            foreach (ShapeSpec spec in (ShapeSpec[])[TestJobs.Belly(150, 90), TestJobs.Scoop(180, 100, 12)])
            {
                ImmutableArray<LieReading> lies = LieComparison.Of(Laid(spec), Math.PI, slope);
                Assert.Equal(2, lies.Count(l => l.Proposed));
                Assert.All(lies.Where(l => l.Proposed), l => Assert.All(lies.Where(o => o.OtherEnd == l.OtherEnd), o => Assert.True(l.Against <= o.Against + 1e-6)));
            }
        }
    }
}
