using System.Globalization;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>
/// Seeded random shapes, holes and islands among them, with sharp corners: between the round offset and the reach of a corner, and none that could not
/// be vouched for.
/// </summary>
public class OffsetSharpFuzzTests(ITestOutputHelper output)
{
    private const int Normally = 30_000;

    [Fact]
    public void Every_random_shape_keeps_its_sharp_corners()
    {
        int count = LongRun.Iterations(Normally, 100_000);
        var wrong = new List<string>();
        int retried = 0;
        int givenUp = 0;
        for (int seed = 0; seed < count; seed++)
        {
            (Region shape, double distance) = RandomShapes.Any(seed);
            OffsetResult sharp = Offsetter.Closed(shape, distance, JoinStyle.Sharp);
            retried += OffsetEngine.LastTries > 1 ? 1 : 0;
            OffsetResult round = Offsetter.Closed(shape, distance);
            OffsetResult far = Offsetter.Closed(shape, Offsetter.SharpLimit * distance);
            givenUp += sharp.Unproven is not null ? 1 : 0;
            string? fault = sharp.Unproven is not null ? null : Fault(sharp.ToRegion(), round.ToRegion(), far.ToRegion(), distance);
            if (fault is not null)
            {
                wrong.Add(string.Create(CultureInfo.InvariantCulture, $"seed {seed}, distance {distance:R}: {fault}"));
            }
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} shapes, wrong {wrong.Count}, tried again {retried}, given up {givenUp}"));
        Assert.True(wrong.Count == 0, wrong.Count + " wrong\n" + string.Join("\n", wrong.Take(20)));
        Assert.Equal(0, givenUp);
    }

    // Growing: round within sharp within twice the distance; shrinking the other way about.
    private static string? Fault(Region sharp, Region round, Region far, double distance)
    {
        (double least, double most) = distance > 0 ? (round.Area, far.Area) : (far.Area, round.Area);
        double allowed = Accuracy.OffsetCheck * (1 + sharp.Loops.Concat(round.Loops).Concat(far.Loops).Sum(static l => l.Length));
        return sharp.Area < least - allowed || sharp.Area > most + allowed
            ? FormattableString.Invariant($"area {sharp.Area} is not between {least} and {most}")
            : null;
    }
}
