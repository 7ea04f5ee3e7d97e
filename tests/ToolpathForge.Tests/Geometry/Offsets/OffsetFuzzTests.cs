using System.Diagnostics;
using System.Globalization;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>Seeded random shapes: no exception, the engine's own check satisfied, and none that it could not vouch for.</summary>
public class OffsetFuzzTests(ITestOutputHelper output)
{
    /// <summary>About ten seconds' worth of one core.</summary>
    private const int Normally = 100_000;

    [Fact]
    public void Every_random_shape_is_offset_and_vouched_for()
    {
        int count = LongRun.Iterations(Normally, 1_000_000);
        var unproven = new List<string>();
        int unprovenCount = 0;
        int retried = 0;
        var clock = Stopwatch.StartNew();
        for (int seed = 0; seed < count; seed++)
        {
            (Region shape, double distance) = RandomShapes.Any(seed);
            OffsetResult result = Offsetter.Closed(shape, distance);
            retried += OffsetEngine.LastTries > 1 ? 1 : 0;
            if (result.Unproven is not null)
            {
                unprovenCount++;
                if (unproven.Count < 20)
                {
                    unproven.Add(FormattableString.Invariant($"seed {seed}: {Reason(result)}"));
                }
            }
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} shapes in {clock.Elapsed.TotalSeconds:0.0} s, offset-unproven {unprovenCount}, tried again {retried}"));
        Assert.True(unprovenCount == 0, string.Join("\n", unproven));
    }

    internal static string Reason(OffsetResult result) => string.Join(", ", result.Unproven!.Args.Select(static a => a.Text).Take(1)) + " at " + result.Unproven.Place.Point;
}
