using System.Numerics;
using System.Runtime.Intrinsics;

namespace ToolpathForge.Geometry;

/// <summary>Edges of many owners in no order of place, which tells what lies near a box. Coordinates are taken about a near origin.</summary>
internal sealed class EdgeIndex
{
    private readonly BoxTree _tree = new();
    private readonly double _pad;
    private int[] _groups = new int[64];

    /// <summary>Takes rows of vertices; each is an owner, by its place in the list.</summary>
    internal EdgeIndex(IReadOnlyList<(Vertex[] Row, bool IsClosed)> rows, double touching)
    {
        Box2 box = Box2.Empty;
        int count = 0;
        foreach ((Vertex[] row, bool closed) in rows)
        {
            count += closed ? row.Length : row.Length - 1;
            foreach (Vertex v in row)
            {
                box = box.Including(v.Point);
            }
        }

        Edges = new Edge[count];
        OwnerOf = new int[count];
        FirstOf = new int[rows.Count + 1];
        Shift = box.IsEmpty ? default : new Point2(Math.Round(box.Center.X), Math.Round(box.Center.Y));

        // An arc of at most half a turn leaves the box of its ends by half its chord.
        Largest = box.Width + box.Height + 1;
        int at = 0;
        for (int r = 0; r < rows.Count; r++)
        {
            (Vertex[] row, bool closed) = rows[r];
            FirstOf[r] = at;
            for (int i = 0; i < (closed ? row.Length : row.Length - 1); i++)
            {
                Point2 a = row[i].Point - Shift;
                Point2 b = row[i + 1 < row.Length ? i + 1 : 0].Point - Shift;
                OwnerOf[at] = r;
                Edges[at++] = Edge.Of(a.X, a.Y, b.X, b.Y, Math.Clamp(row[i].Bulge, -1, 1));
            }
        }

        FirstOf[rows.Count] = at;
        Touching = Math.Max(touching, Accuracy.MergeWithin(Largest));
        _pad = BoxTree.PadFor(Largest, Touching);
        _tree.Reset(count);
        for (int i = 0; i < count; i++)
        {
            _tree.Set(i, Edges[i], _pad);
        }

        if (count > 0)
        {
            _tree.Build(true);
        }
    }

    /// <summary>The edges, owner by owner, each in its order.</summary>
    internal Edge[] Edges { get; }

    /// <summary>Whose each edge is.</summary>
    internal int[] OwnerOf { get; }

    /// <summary>The first edge of each owner, and one past the last.</summary>
    internal int[] FirstOf { get; }

    /// <summary>What was taken off the coordinates.</summary>
    internal Point2 Shift { get; }

    /// <summary>A bound of the coordinates, mm.</summary>
    internal double Largest { get; }

    /// <summary>What counts as touching, mm.</summary>
    internal double Touching { get; }

    /// <summary>Lists, ascending, the edges from a number on whose boxes come within what counts as touching of an edge's.</summary>
    internal void Near(int edge, int from, List<int> found)
    {
        Edges[edge].Bounds(out Vector128<double> min, out Vector128<double> max);
        Near(min[0], min[1], max[0], max[1], from, found);
    }

    /// <summary>The same for a box about the shifted origin.</summary>
    internal void Near(double minX, double minY, double maxX, double maxY, int from, List<int> found)
    {
        found.Clear();
        if (Edges.Length == 0)
        {
            return;
        }

        var box = new BoxTree.Box1((float)minX, (float)minY, (float)maxX, (float)maxY);
        int groups = _tree.Collect(box, from >> 3, ref _groups);

        // A group holds a run of numbers: in the order of the groups all of them ascend.
        Array.Sort(_groups, 0, groups);
        for (int k = 0; k < groups; k++)
        {
            uint mask = _tree.Group(_groups[k]).Meeting(box);
            while (mask != 0)
            {
                int item = (_groups[k] << 3) + BitOperations.TrailingZeroCount(mask);
                mask &= mask - 1;
                if (item >= from)
                {
                    found.Add(item);
                }
            }
        }
    }
}
