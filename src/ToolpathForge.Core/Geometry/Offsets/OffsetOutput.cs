using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace ToolpathForge.Geometry;

/// <summary>Turns the loops of an arrangement into contours with origins, in an order that depends on the input alone.</summary>
internal sealed class OffsetOutput
{
    private readonly List<OffsetLoop> _loops = [];
    private readonly List<Key> _keys = [];

    internal OffsetResult Result(LoopInput input, RawOffset raw, Arrangement arrangement, ReadOnlySpan<Contour> loops, PathSide? side)
    {
        _loops.Clear();
        _keys.Clear();
        int count = input.Field.Count == 0 ? 0 : arrangement.LoopCount;
        for (int i = 0; i < count; i++)
        {
            ReadOnlySpan<LoopPiece> loop = arrangement.Loop(i);
            if (side is PathSide.Left or PathSide.Right)
            {
                AddSides(input, raw, arrangement, loop, side.Value);
            }
            else
            {
                Add(input, raw, arrangement, loop, 0, loop.Length, true, false);
            }
        }

        OffsetLoop[] result = _loops.ToArray();
        if (result.Length > 1)
        {
            Key[] keys = _keys.ToArray();
            Array.Sort(keys, result, Comparer<Key>.Create(static (a, b) => Key.Compare(a, b)));
        }

        return new OffsetResult(ImmutableCollectionsMarshal.AsImmutableArray(result), OffsetAccount.Of(loops, result), null);
    }

    // The walk round a path cut into what lies on one side: ends and the other side fall away.
    private void AddSides(LoopInput input, RawOffset raw, Arrangement arrangement, ReadOnlySpan<LoopPiece> loop, PathSide side)
    {
        CandidateRole wanted = side == PathSide.Left ? CandidateRole.Back : CandidateRole.None;
        const CandidateRole Where = CandidateRole.Back | CandidateRole.Cap;
        int cut = 0;
        while (cut < loop.Length && (raw.Sources[loop[cut].Edge].Role & Where) == wanted)
        {
            cut++;
        }

        bool turned = side == PathSide.Left;
        if (cut == loop.Length)
        {
            Add(input, raw, arrangement, loop, 0, loop.Length, true, turned);
            return;
        }

        int from = -1;
        for (int k = 1; k <= loop.Length; k++)
        {
            int at = (cut + k) % loop.Length;
            bool isWanted = (raw.Sources[loop[at].Edge].Role & Where) == wanted;
            if (isWanted && from < 0)
            {
                from = k;
            }
            else if (!isWanted && from >= 0)
            {
                Add(input, raw, arrangement, loop, (cut + from) % loop.Length, k - from, false, turned);
                from = -1;
            }
        }
    }

    private void Add(LoopInput input, RawOffset raw, Arrangement arrangement, ReadOnlySpan<LoopPiece> loop, int start, int count, bool closed, bool turned)
    {
        // Nearly always every piece stays and the arrays are of the right size from the start.
        var vertices = new Vertex[closed ? count : count + 1];
        var origins = new SegmentOrigin[count];
        Edge[] edges = arrangement.Edges;
        Key first = default;
        Key last = default;
        Key leastKey = default;
        int n = 0;
        int least = 0;
        Point2 shift = input.Shift;
        double lastX = double.NaN;
        double lastY = 0;
        for (int k = 0; k < count; k++)
        {
            ref readonly LoopPiece piece = ref loop[start + k < loop.Length ? start + k : start + k - loop.Length];
            ref readonly Candidate source = ref raw.Sources[piece.Edge];
            SegmentOrigin origin = OriginOf(input, source);
            ref Edge edge = ref edges[piece.Edge];
            double bulge = piece.IsWhole ? edge.Bulge : edge.BulgeBetween(piece.From, piece.To);
            double dx = piece.X - lastX;
            double dy = piece.Y - lastY;
            if ((dx * dx) + (dy * dy) < Accuracy.SamePoint * Accuracy.SamePoint)
            {
                // The piece before was too short to keep: this one takes its place.
                n--;
            }

            (lastX, lastY) = (piece.X, piece.Y);
            vertices[n] = new Vertex(piece.X + shift.X, piece.Y + shift.Y, Math.Clamp(bulge, -1, 1));
            origins[n] = origin;
            last = new Key(origin, (source.Role & CandidateRole.Back) != CandidateRole.None, piece.From);
            if (n == 0)
            {
                first = last;
            }

            if (least >= n || Key.Compare(last, leastKey) < 0)
            {
                (least, leastKey) = (n, last);
            }

            n++;
        }

        if (closed)
        {
            if (n > 0 && Near(vertices[n - 1], vertices[0]))
            {
                n--;
            }

            if (n < 2)
            {
                return;
            }

            (least, leastKey) = least < n ? (least, leastKey) : (0, first);
            Rotate(vertices, n, least);
            Rotate(origins, n, least);
            (first, last) = (leastKey, leastKey);
        }
        else
        {
            ref readonly LoopPiece lastPiece = ref loop[(start + count - 1) % loop.Length];
            Point2 end = edges[lastPiece.Edge].At(lastPiece.To) + shift;
            vertices[n] = new Vertex(end);
            if (n > 1 && Near(vertices[n - 1], vertices[n]))
            {
                n--;
                vertices[n] = new Vertex(end);
            }

            if (Near(vertices[0], vertices[n]) && n == 1)
            {
                return;
            }
        }

        if (n < count)
        {
            Array.Resize(ref vertices, closed ? n : n + 1);
            Array.Resize(ref origins, n);
        }

        var contour = new Contour(vertices, closed, true);
        if (turned)
        {
            contour = contour.Reversed();
            Array.Reverse(origins);
        }

        _loops.Add(new OffsetLoop(contour, ImmutableCollectionsMarshal.AsImmutableArray(origins)));
        _keys.Add(turned ? last : first);
    }

    private static SegmentOrigin OriginOf(LoopInput input, in Candidate source)
    {
        EdgeField field = input.Field;
        bool join = source.Other >= 0;
        int edge = source.Edge;
        if (join)
        {
            // Told by the segment that ends at the vertex in the contour's own direction.
            bool turned = (source.Role & CandidateRole.Back) != CandidateRole.None || (!input.IsPath && input.Turned.Count == 1 && input.Turned[0]);
            edge = turned ? source.Other : source.Edge;
        }

        return new SegmentOrigin(field.ContourOf[edge], field.SegmentOf[edge], join);
    }

    private static bool Near(in Vertex a, in Vertex b)
    {
        double dx = a.X - b.X;
        double dy = a.Y - b.Y;
        return (dx * dx) + (dy * dy) < Accuracy.SamePoint * Accuracy.SamePoint;
    }

    private static void Rotate<T>(T[] items, int count, int first)
    {
        if (first == 0)
        {
            return;
        }

        Span<T> span = items.AsSpan(0, count);
        span[..first].Reverse();
        span[first..].Reverse();
        span.Reverse();
    }

    private readonly record struct Key(SegmentOrigin Origin, bool Back, double Place)
    {
        internal static int Compare(in Key a, in Key b)
        {
            int order = a.Origin.Contour.CompareTo(b.Origin.Contour);
            order = order != 0 ? order : a.Origin.Segment.CompareTo(b.Origin.Segment);
            order = order != 0 ? order : a.Origin.IsJoin.CompareTo(b.Origin.IsJoin);
            order = order != 0 ? order : a.Back.CompareTo(b.Back);
            return order != 0 ? order : a.Place.CompareTo(b.Place);
        }
    }
}
