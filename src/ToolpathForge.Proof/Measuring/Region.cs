using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>A part of the plane bounded by lines and arcs, each within its <see cref="PathPart.Error"/> of the exact edge it stands for.</summary>
internal sealed class Region
{
    private readonly PartTree tree;
    private readonly int[] next;

    /// <param name="parts">Loop after loop, each in order.</param>
    /// <param name="loopEnds">How many parts there are up to the end of each loop.</param>
    private Region(List<PathPart> parts, List<int> loopEnds)
    {
        next = new int[parts.Count];
        int first = 0;
        foreach (int end in loopEnds)
        {
            for (int i = first; i < end; i++)
            {
                next[i] = i + 1 < end ? i + 1 : first;
            }

            first = end;
        }

        double[] offsets = new double[parts.Count];
        for (int i = 0; i < offsets.Length; i++)
        {
            offsets[i] = -parts[i].Error;
        }

        tree = new PartTree([.. parts], offsets);
    }

    internal Box Box => tree.Box;

    internal ReadOnlySpan<PathPart> Boundary => tree.Parts;

    /// <summary>A piece; each part's owner is the number of its edge, counted through all loops.</summary>
    internal static Region Of(TargetPiece piece, double enclosure)
    {
        var parts = new List<PathPart>();
        var ends = new List<int>();
        int owner = 0;
        foreach (ImmutableArray<TargetEdge> loop in piece.Loops)
        {
            foreach (TargetEdge edge in loop)
            {
                EdgeEnclosure.Add(parts, edge, owner++, enclosure);
            }

            ends.Add(parts.Count);
        }

        return new Region(parts, ends);
    }

    internal static Region Of(ReadOnlySpan<PlanePoint> corners)
    {
        var parts = new List<PathPart>(corners.Length);
        for (int i = 0; i < corners.Length; i++)
        {
            parts.Add(PathPart.Line(corners[i], corners[(i + 1) % corners.Length], 0, i, 0, 1));
        }

        return new Region(parts, [parts.Count]);
    }

    internal static Region Of(ImmutableArray<PlanePoint> corners) => Of(corners.AsSpan());

    /// <summary>
    /// How far a disc of some radius that travels along a path reaches into the region: the radius less the least distance, the errors of both added; the radius if the path runs inside.
    /// </summary>
    /// <param name="path">The disc's centre.</param>
    /// <param name="radius">mm.</param>
    /// <param name="above">Only what is more than this is looked for.</param>
    /// <param name="at">The centre at its deepest.</param>
    /// <returns>The depth, or <paramref name="above"/> if it is not more.</returns>
    internal double DepthOf(in PathPart path, double radius, double above, out PlanePoint at)
    {
        at = path.Start;
        double reach = radius + path.Error;
        Box box = path.Box;
        double cutoff = reach - above;
        if (cutoff <= 0 || tree.Box.SquareDistanceTo(box) >= cutoff * cutoff)
        {
            return above;
        }

        var nearest = new Nearest(double.PositiveInfinity, default, default);
        double depth = above;
        if (tree.NearestTo(path, box, ref cutoff, ref nearest) >= 0)
        {
            depth = reach - cutoff;
            at = nearest.OnFirst;
        }

        if (depth < radius && Contains(path.Start))
        {
            depth = radius;
            at = path.Start;
        }

        return depth;
    }

    /// <summary>
    /// Whether a point lies inside: counted by crossings of the polygon through the parts' starts, turned round for every arc between whose chord and curve the point lies.
    /// A point on a chord counts as being a little to the right of it and, by less, above it, for both counts alike: it may be far from the boundary, so a tie must not decide.
    /// </summary>
    internal bool Contains(PlanePoint p)
    {
        if (!tree.Box.Contains(p))
        {
            return false;
        }

        bool isInside = false;
        ReadOnlySpan<PathPart> parts = tree.Parts;
        for (int i = 0; i < parts.Length; i++)
        {
            ref readonly PathPart part = ref parts[i];
            PlanePoint a = part.Start, b = parts[next[i]].Start;
            bool crosses = a.Y > p.Y != b.Y > p.Y;
            bool isNearArc = part.IsArc && p.DistanceTo(part.Center) < part.Radius;
            if (!crosses && !isNearArc)
            {
                continue;
            }

            double side = b.Minus(a).Cross(p.Minus(a));
            side = side != 0 ? side : a.Y == b.Y ? b.X - a.X : a.Y - b.Y;
            if (crosses && side > 0 == b.Y > a.Y)
            {
                isInside = !isInside;
            }

            if (isNearArc && side * part.Sweep < 0)
            {
                isInside = !isInside;
            }
        }

        return isInside;
    }
}
