using System.Globalization;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>
/// Set operations on seeded random regions: every result vouched for, areas that add up, and the areas of an outside reference, NetTopologySuite's overlay.
/// </summary>
public class RegionFuzzTests(ITestOutputHelper output)
{
    private const int Normally = 1_500;

    [Fact]
    public void Random_regions_combine_to_areas_that_add_up()
    {
        int count = LongRun.Iterations(Normally, 30_000);
        var wrong = new List<string>();
        int retried = 0;
        for (int seed = 0; seed < count; seed++)
        {
            (Region a, Region b) = Pair(seed);
            RegionResult union = RegionOps.Union(a, b);
            retried += LevelEngine.LastTries > 0 ? 1 : 0;
            RegionResult both = RegionOps.Intersection(a, b);
            RegionResult rest = RegionOps.Difference(a, b);
            string? fault = Fault(a, b, union, both, rest, seed % 5 == 0);
            if (fault is not null)
            {
                wrong.Add(string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {fault}"));
            }
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} pairs, wrong {wrong.Count}, tried again {retried}"));
        Assert.True(wrong.Count == 0, wrong.Count + " wrong\n" + string.Join("\n", wrong.Take(20)));
    }

    // Shapes of all kinds over each other; cells on cells share whole edges, and every ninth pair is a shape and itself, turned a hair.
    private static (Region A, Region B) Pair(int seed)
    {
        Region a = RandomShapes.Any(seed).Shape;
        var random = new Random(seed);
        if (seed % 9 == 0)
        {
            double hair = Math.Pow(10, -3 - (8 * random.NextDouble()));
            return (a, Region.Of(Variants.Mapped([.. a.Loops], hair, 1, default)));
        }

        bool cells = seed % 5 == 3;
        Region b = RandomShapes.Any(cells ? seed + 5 : seed + 1 + random.Next(4)).Shape;
        Point2 shift = cells ? new Point2(10 * random.Next(3), 10 * random.Next(3)) : new Point2(60 * (random.NextDouble() - 0.5), 60 * (random.NextDouble() - 0.5));
        return (a, Region.Of(Variants.Mapped([.. b.Loops], 0, 1, shift)));
    }

    private static string? Fault(Region a, Region b, RegionResult union, RegionResult both, RegionResult rest, bool outside)
    {
        foreach (RegionResult result in (RegionResult[])[union, both, rest])
        {
            if (result.Unproven is { } finding)
            {
                return "unproven: " + finding.Args[0].Text + " at " + finding.Place.Point;
            }
        }

        // Strips thinner than 1e-7 mm come and go as a whole, along whatever bounds the two.
        double boundary = a.Loops.Concat(b.Loops).Sum(static l => l.Length);
        double allowed = 2e-7 * boundary;
        double sum = a.Area + b.Area;
        if (Math.Abs(union.Region.Area + both.Region.Area - sum) > allowed)
        {
            return FormattableString.Invariant($"union {union.Region.Area} and intersection {both.Region.Area} are not {sum}");
        }

        if (Math.Abs(rest.Region.Area + both.Region.Area - a.Area) > allowed)
        {
            return FormattableString.Invariant($"difference {rest.Region.Area} and intersection {both.Region.Area} are not {a.Area}");
        }

        if (!outside)
        {
            return null;
        }

        NetTopologySuite.Geometries.Geometry p = PolygonOracle.Polygon(a);
        NetTopologySuite.Geometries.Geometry q = PolygonOracle.Polygon(b);
        double chords = (boundary * PolygonOracle.ChordError) + 1e-6;
        double theirs = OverlayNGRobust.Overlay(p, q, SpatialFunction.Union).Area;
        return Math.Abs(theirs - union.Region.Area) > chords
            ? FormattableString.Invariant($"union {union.Region.Area}, the polygon library {theirs}")
            : null;
    }
}
