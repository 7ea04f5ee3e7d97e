using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cutting;

public class StickOutTests
{
    // A 2 1/2 in bit with an inch of flute and a 1/4 in shank, 6 mm deep: 25.4 + 3 of run-out at least, 63.5 - 19 at most (grip: two shanks or 3/4 in, common practice).
    [Fact]
    public void Flutes_stay_out_of_the_collet_however_shallow_the_cut()
    {
        Bit bit = TestJobs.Bit(6.35, 25.4) with { OverallLength = 63.5, Shank = 6.35 };
        var limits = StickOut.For(bit, 6, 20, 90, null);
        Assert.Equal(28.4, limits.Least, 9);
        Assert.Equal(44.5, limits.Most, 9);
    }

    // Over the work the collet stands clearance and stick-out above stock and spoilboard; raised for a run above the work, clearance and depth more: 80 - 30 - 5 = 45, less 5 + 10 = 30.
    [Fact]
    public void The_gantry_and_the_run_above_the_work_leave_less()
    {
        Bit bit = TestJobs.Bit(6.35, 20) with { OverallLength = 76, Shank = 6.35 };
        var limits = StickOut.For(bit, 10, 30, 80, 5);
        Assert.Equal((57.0, 45.0, 30.0), (limits.ByGrip, limits.ByGantry, limits.ByDryRun));
        Assert.True(limits.AllowsDryRun);
        Assert.Equal(30, limits.Most, 9);

        // With less room the bit can still cut, but not be raised: then the gantry alone is the limit.
        var low = StickOut.For(bit, 10, 30, 65, 5);
        Assert.False(low.AllowsDryRun);
        Assert.Equal(30, low.Most, 9);
    }
}
