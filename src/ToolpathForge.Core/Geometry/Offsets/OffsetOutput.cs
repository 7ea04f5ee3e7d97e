using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace ToolpathForge.Geometry;

/// <summary>Turns the loops of an arrangement into contours with origins, in an order that depends on the input alone.</summary>
internal sealed class OffsetOutput
{
    private readonly List<OffsetLoop> _loops = [];
    private readonly List<Key> _keys = [];
    private Vertex[] _vertices = new Vertex[64];
    private SegmentOrigin[] _origins = new SegmentOrigin[64];
    private Key[] _pieceKeys = new Key[64];

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

    private void Add(LoopInput input, RawOffset raw, Arrangement arrangement, ReadOnlySpan<LoopPiece> loop, int first, int count, bool closed, bool turned)
    {
        if (_vertices.Length < count + 1)
        {
            int size = Math.Max(count + 1, _vertices.Length * 2);
            _vertices = new Vertex[size];
            _origins = new SegmentOrigin[size];
            _pieceKeys = new Key[size];
        }

        int n = 0;
        int least = 0;
        Point2 shift = input.Shift;
        double lastX = double.NaN;
        double lastY = 0;
        for (int k = 0; k < count; k++)
        {
            ref readonly LoopPiece piece = ref loop[first + k < loop.Length ? first + k : first + k - loop.Length];
            Candidate source = raw.Sources[piece.Edge];
            SegmentOrigin origin = OriginOf(input, source);
            double bulge = arrangement.Edges[piece.Edge].BulgeBetween(piece.From, piece.To);
            double dx = piece.X - lastX;
            double dy = piece.Y - lastY;
            if ((dx * dx) + (dy * dy) < Accuracy.SamePoint * Accuracy.SamePoint)
            {
                // The piece before was too short to keep: this one takes its place.
                n--;
            }

            (lastX, lastY) = (piece.X, piece.Y);
            _vertices[n] = new Vertex(piece.X + shift.X, piece.Y + shift.Y, Math.Clamp(bulge, -1, 1));
            _origins[n] = origin;
            _pieceKeys[n] = new Key(origin, (source.Role & CandidateRole.Back) != CandidateRole.None, piece.From);
            if (least >= n || Key.Compare(_pieceKeys[n], _pieceKeys[least]) < 0)
            {
                least = n;
            }

            n++;
        }

        if (closed)
        {
            if (n > 0 && Near(_vertices[n - 1], _vertices[0]))
            {
                n--;
            }

            if (n < 2)
            {
                return;
            }

            least = least < n ? least : 0;
            Rotate(_vertices, n, least);
            Rotate(_origins, n, least);
            (_pieceKeys[0], _pieceKeys[least]) = (_pieceKeys[least], _pieceKeys[0]);
        }
        else
        {
            ref readonly LoopPiece last = ref loop[(first + count - 1) % loop.Length];
            Point2 end = arrangement.Edges[last.Edge].At(last.To) + shift;
            _vertices[n] = new Vertex(end);
            if (n > 1 && Near(_vertices[n - 1], _vertices[n]))
            {
                n--;
                _vertices[n] = new Vertex(end);
            }

            if (Near(_vertices[0], _vertices[n]) && n == 1)
            {
                return;
            }
        }

        var contour = new Contour(_vertices.AsSpan(0, closed ? n : n + 1).ToArray(), closed, true);
        SegmentOrigin[] origins = _origins.AsSpan(0, n).ToArray();
        Key key = _pieceKeys[0];
        if (turned)
        {
            contour = contour.Reversed();
            Array.Reverse(origins);
            key = _pieceKeys[closed ? 0 : n - 1];
        }

        _loops.Add(new OffsetLoop(contour, ImmutableCollectionsMarshal.AsImmutableArray(origins)));
        _keys.Add(key);
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
