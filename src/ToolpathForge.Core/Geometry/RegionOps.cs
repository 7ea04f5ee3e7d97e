using System.Runtime.InteropServices;

namespace ToolpathForge.Geometry;

/// <summary>Union, intersection and difference of regions of lines and arcs; arcs stay arcs.</summary>
/// <remarks>
/// All three are one question: where does the sum of the winding numbers reach a level? Union: 1. Intersection of n regions: n. Difference: 1, with what is taken
/// away walked backwards. Loops that cross each other or themselves count by winding number, so the union of one such region puts it right. Every result is checked
/// against the contours as they were given (see <see cref="RegionResult.Unproven"/>).
/// </remarks>
public static class RegionOps
{
    /// <summary>Everything that lies in at least one of the regions.</summary>
    /// <param name="regions">Any number.</param>
    public static RegionResult Union(params ReadOnlySpan<Region> regions) => Level(Loops(regions), 1);

    /// <summary>What both regions share.</summary>
    /// <param name="a">One region.</param>
    /// <param name="b">The other region.</param>
    public static RegionResult Intersection(Region a, Region b) => Level(Loops([a, b]), 2);

    /// <summary>What lies in one region and not in the other.</summary>
    /// <param name="a">What is kept.</param>
    /// <param name="b">What is taken away.</param>
    public static RegionResult Difference(Region a, Region b)
    {
        List<Contour> loops = Loops([a]);
        foreach (Contour loop in b.Loops)
        {
            loops.Add(loop.Reversed());
        }

        return Level(loops, 1);
    }

    private static List<Contour> Loops(ReadOnlySpan<Region> regions)
    {
        var loops = new List<Contour>();
        foreach (Region region in regions)
        {
            loops.AddRange(region.Loops);
        }

        return loops;
    }

    private static RegionResult Level(List<Contour> loops, int level) => LevelEngine.Run(CollectionsMarshal.AsSpan(loops), level);
}
