using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>A place where two parts of a boundary stand opposite each other, nearer than just beside it.</summary>
/// <param name="Width">How far apart they are, mm.</param>
/// <param name="A">The point on one part.</param>
/// <param name="B">The point on the other.</param>
/// <param name="LoopA">Which loop of the region the first lies on.</param>
/// <param name="LoopB">Which loop the second lies on; the same one in most necks.</param>
public readonly record struct NarrowPlace(double Width, Point2 A, Point2 B, int LoopA, int LoopB);

/// <summary>
/// Necks and slots: where the material, or the gap in it, is thinnest.
/// <para>
/// A narrow place is a circle that touches the boundary at two opposite points, holds none of it within, and could not slide to either side without having to shrink or keeping
/// its size: a local least width. (Along the medial axis the radius has a minimum there, and at a minimum the two touching points lie opposite each other, half a turn apart as seen
/// from the centre.) So a wedge has none, for it only gets thinner towards its tip; a disc or an ellipse has none, for it gets thinner on both sides;
/// a strip with parallel edges has one at its middle, and one more at a mouth where it opens between two corners. Two loops that touch have a width of 0 there, which is not told: a drawing's clean-up tells it.
/// </para>
/// <para>Exact for lines and arcs: the points are ends and feet of common normals, not samples.</para>
/// </summary>
public static class NarrowPlaces
{
    /// <summary>The thinnest place of the material; null when it has none (a disc, a wedge, any shape that only bulges).</summary>
    /// <param name="region">Loops that do not cross.</param>
    public static NarrowPlace? Neck(Region region) => Narrowest(region, Side.Left, double.PositiveInfinity);

    /// <summary>The thinnest gap: between parts of one outline, within a hole, or between two outlines; null when there is none.</summary>
    /// <param name="region">Loops that do not cross.</param>
    /// <param name="widest">Slots wider than this are not looked for, mm: the time to find that there is none grows with it.</param>
    public static NarrowPlace? Slot(Region region, double widest = double.PositiveInfinity) => Narrowest(region, Side.Right, widest);

    /// <summary>Every neck up to a width, the narrowest first.</summary>
    /// <param name="region">Loops that do not cross.</param>
    /// <param name="widest">mm.</param>
    public static ImmutableArray<NarrowPlace> Necks(Region region, double widest) => new NarrowSearch(region, Side.Left).UpTo(widest);

    /// <summary>Every slot up to a width, the narrowest first.</summary>
    /// <param name="region">Loops that do not cross.</param>
    /// <param name="widest">mm.</param>
    public static ImmutableArray<NarrowPlace> Slots(Region region, double widest) => new NarrowSearch(region, Side.Right).UpTo(widest);

    // In growing circles: what is found within a reach is the narrowest of all.
    private static NarrowPlace? Narrowest(Region region, Side side, double widest)
    {
        if (region.IsEmpty)
        {
            return null;
        }

        Box2 box = region.Box;
        double whole = Math.Min(widest, box.Width + box.Height);
        var search = new NarrowSearch(region, side);
        for (double reach = Math.Min(whole, (box.Width + box.Height) / 64); ; reach = Math.Min(whole, reach * 4))
        {
            ImmutableArray<NarrowPlace> found = search.UpTo(reach);
            if (found.Length > 0)
            {
                return found[0];
            }

            if (reach >= whole)
            {
                return null;
            }
        }
    }
}
