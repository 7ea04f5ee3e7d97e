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
    internal const double Apart = 15;

    /// <summary>Diameter of the screws, mm: 4 mm, about a no. 8 (from memory).</summary>
    internal const double Diameter = 4;

    /// <summary>Diameter of the hole that is drilled for one beforehand, mm: about its core (common practice).</summary>
    internal const double Pilot = 3;

    /// <summary>What stays of the spoilboard below a screw's point, mm (judgment).</summary>
    internal const double AboveBed = 3;

    /// <summary>Longest screw that does not meet the bed, mm: stock and spoilboard, less what stays below its point.</summary>
    /// <param name="thickness">Of the stock, mm.</param>
    /// <param name="spoilboard">Thickness of the spoilboard, mm.</param>
    internal static double Longest(double thickness, double spoilboard) => thickness + spoilboard - AboveBed;

    /// <summary>Two places, as far apart as the waste allows, so that it cannot turn; one where there is room for one only, none where there is none.</summary>
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
        var spots = new List<Point2>();
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
                    spots.Add(at);
                }
            }
        }

        if (spots.Count == 0)
        {
            return [];
        }

        (Point2 A, Point2 B) best = (spots[0], spots[0]);
        Point2[] outer = [.. Enumerable.Range(0, Looks).SelectMany(i => (Point2[])[spots.MaxBy(s => s.Dot(Ray(i))), spots.MinBy(s => s.Dot(Ray(i)))]).Distinct()];
        foreach (Point2 a in outer)
        {
            foreach (Point2 other in outer)
            {
                best = a.DistanceTo(other) > best.A.DistanceTo(best.B) + 1e-9 ? (a, other) : best;
            }
        }

        return best.A.DistanceTo(best.B) >= Apart ? [best.A, best.B] : [best.A];
    }

    // The two farthest of many points are the outermost ones in some direction; so many are looked at.
    private const int Looks = 24;

    private static Point2 Ray(int look) => Point2.Direction(Math.PI * look / Looks);

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
