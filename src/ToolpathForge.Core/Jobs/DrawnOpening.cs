using ToolpathForge.Catalogue;
using ToolpathForge.Geometry;

namespace ToolpathForge.Jobs;

/// <summary>Makes openings of the holes of a drawing: round ones and slots are known as such, whatever pieces they are drawn in, so that they can be drilled and bored.</summary>
internal static class DrawnOpening
{
    /// <summary>Centres and radii this near are one, mm: the accuracy that curves of drawings are taken with.</summary>
    private const double Same = 1e-4;

    /// <summary>The opening.</summary>
    /// <param name="hole">Its edge, clockwise, piece frame.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="bit">What it is cut with.</param>
    /// <param name="at">Where the job speaks of it.</param>
    internal static Opening Of(Contour hole, string name, Bit bit, Places at)
    {
        Segment[] parts = [.. Enumerable.Range(0, hole.SegmentCount).Select(i => hole[i])];
        Segment[] arcs = [.. parts.Where(s => !s.IsLine)];
        if (arcs.Length > 0 && arcs.All(s => Math.Abs(s.Radius - arcs[0].Radius) <= Same && s.Sweep < 0))
        {
            Point2 first = arcs[0].Center;
            Segment[] others = [.. arcs.Where(s => s.Center.DistanceTo(first) > Same)];
            if (arcs.Length == parts.Length && others.Length == 0)
            {
                return new Opening(name, first, first, 2 * arcs[0].Radius, bit, at);
            }

            // A slot: half a turn about either end, and the sides as long as its centre line.
            if (others.Length > 0 && others.All(s => s.Center.DistanceTo(others[0].Center) <= Same) && IsHalf(others) && IsHalf([.. arcs.Except(others)])
                && Math.Abs(parts.Where(s => s.IsLine).Sum(s => s.Length) - (2 * first.DistanceTo(others[0].Center))) <= Same)
            {
                return new Opening(name, first, others[0].Center, 2 * arcs[0].Radius, bit, at);
            }
        }

        Box2 box = hole.Box;
        return new Opening(name, new Point2(box.MinX, box.MinY), new Point2(box.MaxX, box.MaxY), Math.Min(box.Width, box.Height), bit, at)
        {
            Edge = ContourCurves.Of(hole),
        };
    }

    private static bool IsHalf(Segment[] arcs) => Math.Abs(arcs.Sum(s => s.Sweep) + Math.PI) <= 1e-6;
}
