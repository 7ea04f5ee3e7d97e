using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace ToolpathForge.Geometry;

/// <summary>
/// A set of edges that answers how near a point lies to them and how often they wind round it. Edges of one loop stand together and in order.
/// An instance is a workspace that keeps its arrays from call to call.
/// </summary>
internal sealed class EdgeField
{
    private readonly BoxTree _tree = new();
    private int[] _found = new int[64];
    private int[] _stack = new int[64];

    /// <summary>The edges; <see cref="Count"/> of them count.</summary>
    internal Edge[] Edges = new Edge[64];

    /// <summary>For each edge the closed chain or path it is part of; ascending.</summary>
    internal int[] ChainOf = new int[64];

    /// <summary>For each edge its contour as it was given.</summary>
    internal int[] ContourOf = new int[64];

    /// <summary>For each edge its segment in the contour as it was given.</summary>
    internal int[] SegmentOf = new int[64];

    /// <summary>How many edges there are.</summary>
    internal int Count { get; private set; }

    /// <summary>An edge whose start is a flat end, beyond which nothing is near; -1 for none.</summary>
    internal int FlatStart { get; set; }

    /// <summary>An edge whose end is a flat end, beyond which nothing is near; -1 for none.</summary>
    internal int FlatEnd { get; set; }

    /// <summary>Begins anew with room for a number of edges.</summary>
    internal void Clear(int room)
    {
        Count = 0;
        FlatStart = -1;
        FlatEnd = -1;
        if (Edges.Length < room)
        {
            int size = Math.Max(room, Edges.Length * 2);
            Edges = new Edge[size];
            ChainOf = new int[size];
            ContourOf = new int[size];
            SegmentOf = new int[size];
        }
    }

    /// <summary>Adds an edge, to be written where it stays. The caller has asked for room.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal ref Edge Add(int chain, int contour, int segment)
    {
        int index = Count++;
        ChainOf[index] = chain;
        ContourOf[index] = contour;
        SegmentOf[index] = segment;
        return ref Edges[index];
    }

    /// <summary>Takes back the edges from an index on.</summary>
    internal void Trim(int count) => Count = count;

    /// <summary>Builds the index once all edges are there.</summary>
    /// <param name="largest">Bound of the coordinates, mm.</param>
    /// <param name="scattered">See <see cref="BoxTree.Build"/>.</param>
    internal void Build(double largest, bool scattered)
    {
        _tree.Reset(Count);
        double pad = BoxTree.PadFor(largest, 0);
        for (int i = 0; i < Count; i++)
        {
            _tree.Set(i, Edges[i], pad);
        }

        _tree.Build(scattered);
    }

    /// <summary>True when no edge, but for two that may be named, lies nearer to the point than the limit.</summary>
    internal bool IsClear(double x, double y, double limit, int butA = -1, int butB = -1)
    {
        BoxTree.Box1 box = BoxTree.Box1.Around(x, y, limit);
        int near = _tree.Collect(box, 0, ref _found);
        return IsClear(x, y, limit, box, near, butA, butB);
    }

    /// <summary>The same for many points that lie near each other: lists the edges near a box once, for <see cref="IsClearOfListed"/>.</summary>
    internal int List(in BoxTree.Box1 box) => _tree.Collect(box, 0, ref _found);

    /// <summary>Like <see cref="IsClear(double, double, double, int, int)"/>, among the edges that <see cref="List"/> found.</summary>
    internal bool IsClearOfListed(double x, double y, double limit, int listed, int butA = -1, int butB = -1) =>
        IsClear(x, y, limit, BoxTree.Box1.Around(x, y, limit), listed, butA, butB);

    /// <summary>
    /// How often the loops wind round a point. A part of a loop whose box lies to the right counts by its two ends alone, whatever it does in between; so only boxes
    /// that hold the point are opened.
    /// </summary>
    internal int Winding(double x, double y)
    {
        BoxTree.Box1 ray = new((float)x, (float)y, float.PositiveInfinity, (float)y);
        int winding = 0;
        int depth = 0;
        int topLevel = _tree.Levels - 1;
        int topGroups = topLevel == 0 ? _tree.Groups : 1;
        while (depth < topGroups)
        {
            _stack[depth] = (topLevel << 27) | depth;
            depth++;
        }

        while (depth > 0)
        {
            int top = _stack[--depth];
            int level = top >> 27;
            int group = top & 0x7FFFFFF;
            BoxTree.Boxes8 boxes = _tree.Group(level, group);
            uint mask = boxes.Meeting(ray);
            if (depth + 8 > _stack.Length)
            {
                Array.Resize(ref _stack, _stack.Length * 2);
            }

            while (mask != 0)
            {
                int lane = BitOperations.TrailingZeroCount(mask);
                mask &= mask - 1;
                int item = (group << 3) + lane;
                bool whole = _tree.Span(level, item, out int first, out int last);

                // A float below x by at least its rounding is below x.
                if (whole && boxes.MinX.GetElement(lane) > x && ChainOf[first] == ChainOf[last])
                {
                    winding += Crossing(Edges[first].Y0, Edges[last].Y1, y);
                }
                else if (level > 0)
                {
                    _stack[depth++] = ((level - 1) << 27) | (level == 1 ? first >> 3 : item);
                }
                else
                {
                    winding += Crossing(Edges[item], x, y);
                }
            }
        }

        return winding;
    }

    private static int Crossing(double y0, double y1, double y) => y0 <= y ? (y1 > y ? 1 : 0) : (y1 <= y ? -1 : 0);

    // The chord's crossing of the ray, and the cap between arc and chord that it leaves out (see Winding).
    private static int Crossing(in Edge e, double x, double y)
    {
        double dx = x - ((e.X0 + e.X1) / 2);
        double dy = y - ((e.Y0 + e.Y1) / 2);
        double v = (dx * e.Uy) - (dy * e.Ux);
        int crossing = Crossing(e.Y0, e.Y1, y);

        // The ray runs to the right of the point: it meets an upward chord when the point is on the chord's left.
        if ((crossing > 0 && v >= 0) || (crossing < 0 && v <= 0))
        {
            crossing = 0;
        }

        if (e.Kappa == 0)
        {
            return crossing;
        }

        bool beyondChord = e.Bulge > 0 ? v > 0 : v < 0;
        if (v == 0)
        {
            double side = e.Uy != 0 ? e.Uy : -e.Ux;
            beyondChord = e.Bulge > 0 ? side > 0 : side < 0;
        }

        if (beyondChord)
        {
            double u = (dx * e.Ux) + (dy * e.Uy);
            double f = (e.Kappa / 2 * ((u * u) + (v * v) - (e.Half * e.Half))) + (v * e.CosHalf);
            if (e.Bulge > 0 ? f < 0 : f > 0)
            {
                crossing += e.Bulge > 0 ? 1 : -1;
            }
        }

        return crossing;
    }

    private bool IsClear(double x, double y, double limit, in BoxTree.Box1 box, int near, int butA, int butB)
    {
        Edge[] edges = Edges;
        int[] found = _found;
        for (int k = 0; k < near; k++)
        {
            int group = found[k];
            uint mask = _tree.Group(group).Meeting(box);
            while (mask != 0)
            {
                int i = (group << 3) + BitOperations.TrailingZeroCount(mask);
                mask &= mask - 1;
                if (i != butA && i != butB && edges[i].IsNearer(x, y, limit) && !IsBeyondFlat(i, x, y))
                {
                    return false;
                }
            }
        }

        return true;
    }

    // Past the line across a flat end, or on it.
    private bool IsBeyondFlat(int i, double x, double y)
    {
        ref Edge e = ref Edges[i];
        return (i == FlatStart && e.StartDirection.Dot(new Point2(x - e.X0, y - e.Y0)) < Accuracy.SamePoint)
            || (i == FlatEnd && e.EndDirection.Dot(new Point2(x - e.X1, y - e.Y1)) > -Accuracy.SamePoint);
    }
}
