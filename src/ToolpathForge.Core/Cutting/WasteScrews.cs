using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>Finds where the waste of a board's end can be screwed to the spoilboard, clear of the bit by the gap that metal is kept at.</summary>
internal static class WasteScrews
{
    /// <summary>Radius of a screw's head, mm: that of a 4 mm wood screw (from memory).</summary>
    internal const double Head = 4;

    /// <summary>A screw nearer to an edge than this splits the wood, mm (common practice).</summary>
    internal const double EdgeDistance = 10;

    /// <summary>Two screws nearer to one another than this hold little better than one, mm (judgment).</summary>
    internal const double Apart = 25;

    /// <summary>One or two places, the roomiest first; none where there is no room.</summary>
    /// <param name="placed">The piece where it lies.</param>
    /// <param name="paths">Everything the bits do there.</param>
    /// <param name="top">Height of the stock's upper face, mm.</param>
    /// <param name="radius">Of the bit, mm.</param>
    /// <param name="step">What places are rounded to, so that they can be marked with a rule, mm.</param>
    internal static ImmutableArray<Point2> Find(PlacedContour placed, IEnumerable<Toolpath> paths, double top, double radius, double step)
    {
        Box2 block = placed.Placed.Block;
        double clear = radius + Clamping.MetalGap + Head;
        Segment[] ways = [.. paths.SelectMany(p => p.WaysBelow(top)).Where(w => w.Box.Grown(clear + block.Width).Meets(block)).Distinct()];
        var spots = new List<(Point2 At, double Room)>();
        for (int row = (int)Math.Ceiling((block.MinY + EdgeDistance) / step); row * step <= block.MaxY - EdgeDistance; row++)
        {
            for (int column = (int)Math.Floor((block.MaxX - EdgeDistance) / step); column * step >= block.MinX; column--)
            {
                var at = new Point2(column * step, row * step);
                if (placed.Contour.Contains(at))
                {
                    break;
                }

                double room = Math.Min(Room(at, ways, clear), placed.Contour.Distance(at) - clear);
                if (room >= 0)
                {
                    spots.Add((at, room));
                }
            }
        }

        if (spots.Count == 0)
        {
            return [];
        }

        (Point2 first, _) = spots.MaxBy(s => s.Room);
        (Point2 At, double Room)[] others = [.. spots.Where(s => s.At.DistanceTo(first) >= Apart)];
        return others.Length == 0 ? [first] : [first, others.MaxBy(s => s.Room).At];
    }

    private static double Room(Point2 at, Segment[] ways, double clear)
    {
        double room = double.PositiveInfinity;
        foreach (Segment way in ways)
        {
            room = Math.Min(room, way.Distance(at) - clear);
            if (room < 0)
            {
                return room;
            }
        }

        return room;
    }
}
