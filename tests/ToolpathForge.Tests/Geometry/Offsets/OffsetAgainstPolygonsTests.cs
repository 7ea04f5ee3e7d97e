using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>Outside reference: NetTopologySuite's buffer (SimplifyFactor 0), see <see cref="PolygonOracle"/> for the bounds.</summary>
public class OffsetAgainstPolygonsTests
{
    private const int Count = 2_000;

    [Fact]
    public void Two_thousand_random_shapes_lie_between_two_polygon_offsets()
    {
        var wrong = new List<string>();
        int before = PolygonOracle.Contradictions;
        for (int seed = 0; seed < Count; seed++)
        {
            (Region shape, double distance) = RandomShapes.Any(seed);
            OffsetResult result = Offsetter.Closed(shape, distance);
            string? fault = result.Unproven is null ? new PolygonOracle(shape, distance).Judge(result.ToRegion()) : OffsetFuzzTests.Reason(result);
            if (fault is not null)
            {
                wrong.Add(FormattableString.Invariant($"seed {seed}, distance {distance:R}: {fault}"));
            }
        }

        Assert.InRange(PolygonOracle.Contradictions - before, 0, Count / 200);
        Assert.True(wrong.Count == 0, wrong.Count + " wrong\n" + string.Join("\n", wrong.Take(30)));
    }
}
