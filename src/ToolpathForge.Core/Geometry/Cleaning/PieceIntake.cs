using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Geometry;

/// <summary>A piece that can be used: its vertices in their one way of writing, bulges within ±1, no segment without length.</summary>
internal sealed record UsablePiece(Vertex[] Vertices, bool IsClosed, double Length, int Source)
{
    /// <summary>How many lines and arcs it has.</summary>
    internal int SegmentCount => IsClosed ? Vertices.Length : Vertices.Length - 1;

    /// <summary>One of them.</summary>
    internal Segment this[int index]
    {
        get
        {
            ref readonly Vertex a = ref Vertices[index];
            return new Segment(a.Point, Vertices[index + 1 < Vertices.Length ? index + 1 : 0].Point, a.Bulge);
        }
    }

    /// <summary>A total order that knows nothing of the order in which pieces came.</summary>
    internal static int Compare(UsablePiece a, UsablePiece b)
    {
        int shape = CompareShape(a, b);
        return shape != 0 ? shape : a.Source.CompareTo(b.Source);
    }

    /// <summary>The same without the source: 0 for what is drawn twice to the last digit.</summary>
    internal static int CompareShape(UsablePiece a, UsablePiece b)
    {
        int row = VertexOrder.Compare(a.Vertices, b.Vertices);
        return row != 0 ? row : a.IsClosed.CompareTo(b.IsClosed);
    }
}

/// <summary>Takes in loose pieces: refuses what has no numbers, drops what has no length, and puts the rest in order.</summary>
internal static class PieceIntake
{
    /// <summary>The usable pieces in order, without those that are equal to the last digit.</summary>
    /// <param name="loose">What was read.</param>
    /// <param name="shortest">Single lines and arcs shorter than this have no length, mm.</param>
    /// <param name="repairs">Where it is told what was dropped.</param>
    /// <param name="findings">Where it is told what cannot be used.</param>
    internal static List<UsablePiece> Take(IEnumerable<LoosePiece> loose, double shortest, List<Repair> repairs, List<Finding> findings)
    {
        var pieces = new List<UsablePiece>();
        var refused = new List<LoosePiece>();
        foreach (LoosePiece piece in loose)
        {
            if (Usable(piece) is not { } row)
            {
                refused.Add(piece);
            }
            else if (Make(row, piece, shortest, repairs) is { } made)
            {
                pieces.Add(made);
            }
        }

        foreach (LoosePiece piece in refused.OrderBy(p => p.Source))
        {
            findings.Add(Finding.Of(
                GeometryFindings.PieceUnusable, Place.None, Arg.Of("source", Quantity.Number(piece.Source)), Arg.Of("largest", Quantity.Length(Accuracy.LargestCoordinate))));
        }

        pieces.Sort(UsablePiece.Compare);
        int kept = 0;
        for (int i = 0; i < pieces.Count; i++)
        {
            if (kept > 0 && UsablePiece.CompareShape(pieces[kept - 1], pieces[i]) == 0)
            {
                repairs.Add(Doubled(pieces[i], pieces[kept - 1].Source));
            }
            else
            {
                pieces[kept++] = pieces[i];
            }
        }

        pieces.RemoveRange(kept, pieces.Count - kept);
        return pieces;
    }

    /// <summary>That a piece was dropped because it lies on another.</summary>
    internal static Repair Doubled(UsablePiece piece, int other) =>
        new(RepairKind.DoubledDropped, piece[0].PointAt(0.5), piece.Length, PieceSources.Of(piece.Source, other));

    // The vertices with arcs of more than half a turn in two; null when there is a number that is none, or one too large.
    private static Vertex[]? Usable(LoosePiece piece)
    {
        if (piece.Vertices.IsDefaultOrEmpty)
        {
            return null;
        }

        ReadOnlySpan<Vertex> given = piece.Vertices.AsSpan();
        if (!piece.IsClosed && given.Length == 2 && IsAsItShouldBe(given[0], given[1]))
        {
            // Nothing writes into rows, so that single lines and arcs, of which a drawing may hold a hundred thousand, need no second copy.
            return System.Runtime.InteropServices.ImmutableCollectionsMarshal.AsArray(piece.Vertices)!;
        }

        var row = new Vertex[given.Length];
        bool wide = false;
        for (int i = 0; i < given.Length; i++)
        {
            bool leaves = i + 1 < given.Length || piece.IsClosed;
            double bulge = leaves ? given[i].Bulge : 0;
            if (!(Math.Abs(given[i].X) <= Accuracy.LargestCoordinate && Math.Abs(given[i].Y) <= Accuracy.LargestCoordinate && double.IsFinite(bulge)))
            {
                return null;
            }

            wide |= Math.Abs(bulge) > 1;
            row[i] = new Vertex(given[i].X + 0.0, given[i].Y + 0.0, bulge + 0.0);
        }

        row = VertexOrder.Canonical(row, piece.IsClosed);
        return wide ? Halved(row) : row;
    }

    // Numbers within bounds, no minus zero, no arc of more than half a turn, the smaller end first.
    private static bool IsAsItShouldBe(in Vertex a, in Vertex b) =>
        IsPlain(a.X) && IsPlain(a.Y) && IsPlain(b.X) && IsPlain(b.Y) && Math.Abs(a.Bulge) <= 1 && !IsMinusZero(a.Bulge) && b.Bulge == 0 && !IsMinusZero(b.Bulge)
        && VertexOrder.Compare(a.Point, b.Point) < 0;

    private static bool IsPlain(double coordinate) => Math.Abs(coordinate) <= Accuracy.LargestCoordinate && !IsMinusZero(coordinate);

    private static bool IsMinusZero(double value) => value == 0 && double.IsNegative(value);

    private static Vertex[]? Halved(Vertex[] row)
    {
        var result = new List<Vertex>(row.Length + 4);
        for (int i = 0; i < row.Length; i++)
        {
            Vertex v = row[i];
            if (Math.Abs(v.Bulge) <= 1)
            {
                result.Add(v);
                continue;
            }

            // The apex stands off the middle of the chord by the sagitta, to the right of an arc that turns left.
            Point2 end = row[i + 1 < row.Length ? i + 1 : 0].Point;
            Point2 apex = v.Point.Towards(end, 0.5) + ((end - v.Point).Right * (v.Bulge / 2));
            if (!(Math.Abs(apex.X) <= Accuracy.LargestCoordinate && Math.Abs(apex.Y) <= Accuracy.LargestCoordinate))
            {
                return null;
            }

            double half = Math.Tan(Math.Atan(v.Bulge) / 2);
            result.Add(new Vertex(v.Point, half));
            result.Add(new Vertex(apex, half));
        }

        return [.. result];
    }

    private static UsablePiece? Make(Vertex[] row, LoosePiece from, double shortest, List<Repair> repairs)
    {
        // Most of what drawings hold is single lines and arcs with a length: they are as they should be.
        if (row.Length == 2 && !from.IsClosed && row[0].Point.DistanceTo(row[1].Point) is var chord && chord >= shortest && chord >= Accuracy.SamePoint)
        {
            return new UsablePiece(row, false, new Segment(row[0].Point, row[1].Point, row[0].Bulge).Length, from.Source);
        }

        var kept = new List<Vertex>(row.Length);
        int toldBefore = repairs.Count;
        for (int i = 0; i < row.Length; i++)
        {
            Point2 p = row[i].Point;
            double step = kept.Count > 0 ? kept[^1].Point.DistanceTo(p) : double.PositiveInfinity;
            if (step >= Accuracy.SamePoint)
            {
                kept.Add(row[i]);
                continue;
            }

            // The segment that arrives here has no length; the one that leaves is kept, and begins at the earlier point.
            kept[^1] = new Vertex(kept[^1].Point, row[i].Bulge);
            repairs.Add(new Repair(RepairKind.ZeroLengthDropped, p, step, [from.Source]));
        }

        // A closed row that comes back to its first vertex says twice that it is closed: that is usual and not told.
        if (from.IsClosed && kept.Count > 1 && kept[^1].Point.DistanceTo(kept[0].Point) < Accuracy.SamePoint)
        {
            kept.RemoveAt(kept.Count - 1);
        }

        bool closed = from.IsClosed && (kept.Count > 2 || (kept.Count == 2 && kept[0].Bulge + kept[1].Bulge != 0));
        if (!closed)
        {
            kept[^1] = new Vertex(kept[^1].Point);
        }

        var piece = new UsablePiece(VertexOrder.Canonical(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(kept), closed), closed, 0, from.Source);
        double length = 0;
        for (int i = 0; i < piece.SegmentCount; i++)
        {
            length += piece[i].Length;
        }

        if (kept.Count < 2 || length < shortest || (!closed && kept.Count == 2 && kept[0].Point.DistanceTo(kept[1].Point) < shortest))
        {
            // The whole stands for its parts.
            repairs.RemoveRange(toldBefore, repairs.Count - toldBefore);
            repairs.Add(new Repair(RepairKind.ZeroLengthDropped, kept[0].Point, length, [from.Source]));
            return null;
        }

        if (from.IsClosed && !closed)
        {
            // Out and back along the same line.
            repairs.Add(new Repair(RepairKind.DoubledDropped, kept[0].Point.Towards(kept[1].Point, 0.5), length, [from.Source]));
        }

        return piece with { Length = length };
    }
}

/// <summary>Lists of sources: ascending, each once.</summary>
internal static class PieceSources
{
    /// <summary>Two as a list.</summary>
    internal static ImmutableArray<int> Of(int a, int b) => a == b ? [a] : a < b ? [a, b] : [b, a];

    /// <summary>Many as a list.</summary>
    internal static ImmutableArray<int> Of(IEnumerable<int> all) => [.. all.Distinct().Order()];
}
