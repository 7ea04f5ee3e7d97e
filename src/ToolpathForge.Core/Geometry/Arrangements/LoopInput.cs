using System.Runtime.CompilerServices;

namespace ToolpathForge.Geometry;

/// <summary>Contours made ready for the arrangement: edges about a near origin, without pieces too short to have a direction.</summary>
internal sealed class LoopInput
{
    /// <summary>The edges, loop by loop.</summary>
    internal EdgeField Field { get; } = new();

    /// <summary>First edge of each loop that has any, and one past the last.</summary>
    internal List<int> LoopStart { get; } = [];

    /// <summary>For each such loop whether it was turned round: joins are then told by the segment that follows in walking order.</summary>
    internal List<bool> Turned { get; } = [];

    /// <summary>What was taken off the coordinates.</summary>
    internal Point2 Shift { get; private set; }

    /// <summary>Bound of the coordinates once shifted, arcs included.</summary>
    internal double Largest { get; private set; }

    /// <summary>True when it is one open path.</summary>
    internal bool IsPath { get; private set; }

    /// <summary>Loads closed loops in the direction they have, or one open path.</summary>
    internal void Load(ReadOnlySpan<Contour> loops, bool isPath)
    {
        IsPath = isPath;
        LoopStart.Clear();
        Turned.Clear();
        int count = 0;
        foreach (Contour loop in loops)
        {
            count += loop.Vertices.Length;
        }

        FindFrame(loops);
        Field.Clear(count);
        LoopStart.Add(0);
        for (int i = 0; i < loops.Length; i++)
        {
            int from = Field.Count;
            AddLoop(loops[i], i);
            if (Field.Count > from)
            {
                LoopStart.Add(Field.Count);
                Turned.Add(false);
            }
        }

        Field.Build(Largest, LoopStart.Count > 2);
    }

    /// <summary>Loads a part of another input's path.</summary>
    /// <param name="whole">The path.</param>
    /// <param name="from">Its first edge here.</param>
    /// <param name="to">One past the last.</param>
    internal void LoadPart(LoopInput whole, int from, int to)
    {
        (IsPath, Shift, Largest) = (true, whole.Shift, whole.Largest);
        LoopStart.Clear();
        Turned.Clear();
        Field.Clear(to - from);
        for (int i = from; i < to; i++)
        {
            Field.Add(0, whole.Field.ContourOf[i], whole.Field.SegmentOf[i]) = whole.Field.Edges[i];
        }

        LoopStart.AddRange([0, Field.Count]);
        Turned.Add(false);
        Field.Build(Largest, false);
    }

    /// <summary>Turns a lone loop so that its inside lies on the left, where it does not.</summary>
    internal void TurnLoneLoop()
    {
        if (Turned.Count == 1 && IsClockwise())
        {
            TurnRound();
            Field.Build(Largest, false);
        }
    }

    // A shape far from the origin is moved near it, where coordinates carry as many digits as its size deserves; others keep their numbers as they are.
    private void FindFrame(ReadOnlySpan<Contour> loops)
    {
        double minX = double.PositiveInfinity;
        double minY = double.PositiveInfinity;
        double maxX = double.NegativeInfinity;
        double maxY = double.NegativeInfinity;
        foreach (Contour loop in loops)
        {
            foreach (ref readonly Vertex v in loop.Vertices)
            {
                minX = v.X < minX ? v.X : minX;
                maxX = v.X > maxX ? v.X : maxX;
                minY = v.Y < minY ? v.Y : minY;
                maxY = v.Y > maxY ? v.Y : maxY;
            }
        }

        double size = (maxX - minX) + (maxY - minY);
        double away = Math.Max(Math.Max(Math.Abs(minX), Math.Abs(maxX)), Math.Max(Math.Abs(minY), Math.Abs(maxY)));
        Shift = away > 8 * size ? new Point2(Math.Round((minX + maxX) / 2), Math.Round((minY + maxY) / 2)) : default;

        // An arc of at most half a turn leaves the box of its ends by half its chord.
        Largest = (Shift == default ? away : size) + size;
    }

    private void AddLoop(Contour loop, int index)
    {
        ReadOnlySpan<Vertex> v = loop.Vertices;
        int first = Field.Count;
        double x0 = v[0].X - Shift.X;
        double y0 = v[0].Y - Shift.Y;
        int segments = loop.SegmentCount;
        for (int i = 0; i < segments; i++)
        {
            ref readonly Vertex to = ref v[i + 1 < v.Length ? i + 1 : 0];
            double x1 = to.X - Shift.X;
            double y1 = to.Y - Shift.Y;
            double dx = x1 - x0;
            double dy = y1 - y0;
            if ((dx * dx) + (dy * dy) < Accuracy.SamePoint * Accuracy.SamePoint)
            {
                continue;
            }

            Edge.Make(x0, y0, x1, y1, Math.Clamp(v[i].Bulge, -1, 1), out Field.Add(index, index, i));
            x0 = x1;
            y0 = y1;
        }

        // Pieces dropped at the end leave the last one short of the start.
        if (loop.IsClosed && Field.Count > first)
        {
            ref Edge last = ref Field.Edges[Field.Count - 1];
            ref Edge start = ref Field.Edges[first];
            if (last.X1 != start.X0 || last.Y1 != start.Y0)
            {
                last = Edge.Of(last.X0, last.Y0, start.X0, start.Y0, last.Bulge);
            }

            if (Field.Count - first < 2)
            {
                Field.Trim(first);
            }
        }
    }

    private bool IsClockwise()
    {
        // Between 2/3 and π/4 of chord times sagitta lie between an arc and its chord: nearly always that settles the sign without an arc tangent.
        double sum = 0;
        double doubt = 0;
        Point2 o = new(Field.Edges[0].X0, Field.Edges[0].Y0);
        for (int i = 0; i < Field.Count; i++)
        {
            ref Edge e = ref Field.Edges[i];
            double cap = 4 * e.Bulge * e.Half * e.Half;
            sum += ((e.X0 - o.X) * (e.Y1 - o.Y)) - ((e.Y0 - o.Y) * (e.X1 - o.X)) + (0.726 * cap);
            doubt += Math.Abs(0.0601 * cap);
        }

        if (Math.Abs(sum) > doubt)
        {
            return sum < 0;
        }

        sum = 0;
        for (int i = 0; i < Field.Count; i++)
        {
            ref Edge e = ref Field.Edges[i];
            sum += new Segment(new Point2(e.X0, e.Y0) - o, new Point2(e.X1, e.Y1) - o, e.Bulge).DoubledArea;
        }

        return sum < 0;
    }

    private void TurnRound()
    {
        Span<Edge> edges = Field.Edges.AsSpan(0, Field.Count);
        edges.Reverse();
        Field.SegmentOf.AsSpan(0, Field.Count).Reverse();
        foreach (ref Edge e in edges)
        {
            e = e.Reversed;
        }

        Turned[0] = true;
    }
}
