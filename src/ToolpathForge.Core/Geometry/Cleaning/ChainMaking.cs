using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>Lines and arcs in a row, made of pieces.</summary>
internal sealed record Chain(Vertex[] Row, bool IsClosed, ImmutableArray<int> Sources)
{
    /// <summary>A total order.</summary>
    internal static int Compare(Chain a, Chain b)
    {
        int row = VertexOrder.Compare(a.Row, b.Row);
        return row != 0 ? row : a.IsClosed != b.IsClosed ? a.IsClosed.CompareTo(b.IsClosed) : a.Sources.AsSpan().SequenceCompareTo(b.Sources.AsSpan());
    }
}

/// <summary>Puts joined pieces together into chains.</summary>
internal static class ChainMaking
{
    /// <summary>Two ends are moved together only where the segments at them are so many times longer than the gap; else a short line joins them.</summary>
    private const double LongEnough = 4;

    /// <summary>Joins the ends of open pieces and makes chains of everything, in order.</summary>
    internal static List<Chain> Make(List<UsablePiece> pieces, double same, double gap, List<Repair> repairs)
    {
        List<UsablePiece> open = [.. pieces.Where(p => !p.IsClosed)];
        var ends = new EndKnots(open, same);
        List<int> junctions = Junctions.Join(ends);
        Meet(ends, repairs);
        foreach (int k in junctions)
        {
            List<int> knot = ends.Knots[k];
            double turn = knot.Where(e => ends.Link[e] >= 0).Select(e => ends.Turn(e, ends.Link[e])).DefaultIfEmpty(0).Max();
            repairs.Add(new Repair(RepairKind.JunctionDecided, ends.At[knot[0]], turn, PieceSources.Of(knot.Select(ends.SourceOf))));
        }

        var bridged = new HashSet<int>();
        foreach ((int a, int b) in GapClosing.Join(ends, open, gap))
        {
            Close(ends, a, b, bridged, repairs);
        }

        List<Chain> chains = [.. pieces.Where(p => p.IsClosed).Select(p => new Chain(p.Vertices, true, [p.Source]))];
        var used = new bool[open.Count];

        // Open chains from their free ends, then what is left: rings.
        for (int e = 0; e < ends.Link.Length; e++)
        {
            if (ends.Link[e] < 0 && !used[e >> 1])
            {
                Add(Walk(ends, open, e, used, bridged), false);
            }
        }

        for (int p = 0; p < open.Count; p++)
        {
            if (!used[p])
            {
                Add(Walk(ends, open, 2 * p, used, bridged), true);
            }
        }

        chains.Sort(Chain.Compare);
        return chains;

        void Add((List<Vertex> Row, List<int> From) walked, bool closed)
        {
            Vertex[] row = WithoutDoubled(walked.Row, closed);
            ImmutableArray<int> sources = PieceSources.Of(walked.From);
            if (row.Length < 2 || (closed && row.Length == 2 && row[0].Bulge + row[1].Bulge == 0))
            {
                repairs.Add(new Repair(RepairKind.ZeroLengthDropped, row[0].Point, row[0].Point.DistanceTo(row[^1].Point), sources));
                return;
            }

            chains.Add(new Chain(VertexOrder.Canonical(row, closed), closed, sources));
        }
    }

    // Ends of one point are moved to their middle, joined or not, so that what meets there meets exactly.
    private static void Meet(EndKnots ends, List<Repair> repairs)
    {
        foreach (List<int> knot in ends.Knots)
        {
            Box2 box = Box2.Empty;
            foreach (int e in knot)
            {
                box = box.Including(ends.At[e]);
            }

            double apart = new Point2(box.Width, box.Height).Length;
            if (apart == 0)
            {
                continue;
            }

            Point2 middle = box.Center;
            foreach (int e in knot)
            {
                ends.At[e] = middle;
            }

            if (apart > Accuracy.SamePoint)
            {
                repairs.Add(new Repair(RepairKind.EndsMoved, middle, apart, PieceSources.Of(knot.Select(ends.SourceOf))));
            }
        }
    }

    private static void Close(EndKnots ends, int a, int b, HashSet<int> bridged, List<Repair> repairs)
    {
        double apart = ends.At[a].DistanceTo(ends.At[b]);
        Point2 middle = VertexOrder.Compare(ends.At[a], ends.At[b]) <= 0 ? ends.At[a].Towards(ends.At[b], 0.5) : ends.At[b].Towards(ends.At[a], 0.5);
        ImmutableArray<int> sources = PieceSources.Of(ends.SourceOf(a), ends.SourceOf(b));
        if (apart <= CleaningOptions.UsualGap && Math.Min(ends.Leaving(a).Chord, ends.Leaving(b).Chord) > LongEnough * apart)
        {
            ends.At[a] = ends.At[b] = middle;
            repairs.Add(new Repair(RepairKind.EndsMoved, middle, apart, sources));
            return;
        }

        bridged.Add(a);
        bridged.Add(b);
        repairs.Add(new Repair(RepairKind.GapBridged, middle, apart, sources));
    }

    private static (List<Vertex> Row, List<int> From) Walk(EndKnots ends, List<UsablePiece> open, int first, bool[] used, HashSet<int> bridged)
    {
        var row = new List<Vertex>();
        var from = new List<int>();
        for (int at = first; ;)
        {
            UsablePiece piece = open[at >> 1];
            used[at >> 1] = true;
            from.Add(piece.Source);
            ReadOnlySpan<Vertex> walked = (at & 1) == 0 ? piece.Vertices : VertexOrder.Reversed(piece.Vertices, false);
            row.Add(new Vertex(ends.At[at], walked[0].Bulge));
            row.AddRange(walked[1..^1]);
            int last = at ^ 1;
            at = ends.Link[last];
            if (at < 0 || bridged.Contains(last))
            {
                row.Add(new Vertex(ends.At[last]));
            }

            if (at < 0 || used[at >> 1])
            {
                return (row, from);
            }
        }
    }

    // Moving ends may have used up a segment that was shorter than the move.
    private static Vertex[] WithoutDoubled(List<Vertex> row, bool closed)
    {
        var kept = new List<Vertex>(row.Count);
        foreach (Vertex v in row)
        {
            if (kept.Count > 0 && kept[^1].Point.DistanceTo(v.Point) < Accuracy.SamePoint)
            {
                kept[^1] = new Vertex(kept[^1].Point, v.Bulge);
            }
            else
            {
                kept.Add(v);
            }
        }

        if (closed && kept.Count > 1 && kept[^1].Point.DistanceTo(kept[0].Point) < Accuracy.SamePoint)
        {
            kept.RemoveAt(kept.Count - 1);
        }

        return [.. kept];
    }
}
