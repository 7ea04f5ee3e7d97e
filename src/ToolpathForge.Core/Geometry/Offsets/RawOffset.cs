using System.Runtime.CompilerServices;

namespace ToolpathForge.Geometry;

/// <summary>
/// The candidates of an offset: the parallel of every edge, and something about every vertex that opens away from the offset side. What bounds the result
/// is among them; at a vertex that closes in nothing is needed, for no point has its nearest point there.
/// </summary>
internal sealed class RawOffset
{
    /// <summary>The sharp corners, asked about by the test of a slice.</summary>
    internal SharpCorners Corners { get; } = new();

    /// <summary>For each candidate what it belongs to.</summary>
    internal Candidate[] Sources = new Candidate[64];

    private Arrangement _arrangement = null!;
    private double _right;
    private double _same;
    private JoinStyle _join;
    private EndStyle _end;

    // The edge whose end is where the next candidate begins, -1 for none, Head while the first is still to come.
    private int _tail;
    private bool _tangent;
    private int _head;
    private bool _headTangent;
    private const int Head = -2;

    /// <summary>Fills an arrangement with candidates.</summary>
    /// <param name="input">What is offset.</param>
    /// <param name="right">Distance to the right of the walk, mm: positive outwards.</param>
    /// <param name="join">Corners.</param>
    /// <param name="end">Ends of a path.</param>
    /// <param name="arrangement">Where the candidates go.</param>
    internal void Fill(LoopInput input, double right, JoinStyle join, EndStyle end, Arrangement arrangement)
    {
        _arrangement = arrangement;
        _right = right;
        _join = join;
        _end = end;
        _same = Accuracy.SamePoint;
        Corners.Clear();
        EdgeField field = input.Field;
        int perEdge = (join == JoinStyle.Sharp ? 3 : 2) * (input.IsPath ? 2 : 1);
        int room = (field.Count * perEdge) + 10;
        arrangement.Clear(room);
        if (Sources.Length < room)
        {
            Sources = new Candidate[Math.Max(room, Sources.Length * 2)];
        }

        if (input.IsPath)
        {
            FillPath(field);
        }
        else
        {
            for (int loop = 0; loop + 1 < input.LoopStart.Count; loop++)
            {
                FillLoop(field, input.LoopStart[loop], input.LoopStart[loop + 1]);
            }
        }

        Corners.Build(Math.Abs(right));
    }

    private void FillLoop(EdgeField field, int from, int to)
    {
        Begin();
        Edge[] edges = field.Edges;
        for (int i = from; i < to; i++)
        {
            int next = i + 1 < to ? i + 1 : from;
            AddParallel(edges[i], i, default);
            AddVertex(edges[i], edges[next], i, next, default);
        }

        Finish();
    }

    // There on the right side, round the end, back on the other, round the start: one closed walk with the path's surroundings on its left.
    private void FillPath(EdgeField field)
    {
        Begin();
        int n = field.Count;
        for (int k = 0; k < 2 * n; k++)
        {
            bool back = k >= n;
            int i = back ? (2 * n) - 1 - k : k;
            int after = (k + 1) % (2 * n);
            int next = after >= n ? (2 * n) - 1 - after : after;
            Edge e = back ? field.Edges[i].Reversed : field.Edges[i];
            Edge f = after >= n ? field.Edges[next].Reversed : field.Edges[next];
            CandidateRole role = back ? CandidateRole.Back : default;
            AddParallel(e, i, role);
            AddVertex(e, f, i, next, i == next ? role | CandidateRole.Cap : role);
        }

        Finish();
    }

    private void Begin()
    {
        _tail = Head;
        _tangent = true;
        _head = -1;
        _headTangent = true;
    }

    private void Finish()
    {
        if (_head >= 0 && _tail >= 0 && _head != _tail)
        {
            _arrangement.Link(_tail, _head, _tangent && _headTangent);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void AddParallel(in Edge e, int index, CandidateRole role)
    {
        double half = e.HalfOfParallel(_right);
        if (half > 1e-9)
        {
            e.Parallel(_right, half, out Append(index, -1, role, true));
        }
        else if (half > -1e-9)
        {
            // The radius is used up to nothing: the neighbours meet in the centre, at a corner.
            _tangent = false;
        }
        else
        {
            _tail = -1;
        }
    }

    private void AddVertex(in Edge e, in Edge f, int index, int next, CandidateRole role)
    {
        Point2 arriving = e.EndDirection;
        Point2 leaving = f.StartDirection;
        double sin = arriving.Cross(leaving);
        double cos = arriving.Dot(leaving);
        double size = Math.Abs(_right);
        bool cap = (role & CandidateRole.Cap) != CandidateRole.None;
        bool reversal = cap || (cos < 0 && Math.Abs(sin) < Accuracy.SameDirection);
        if (!reversal && cos > 0 && Math.Abs(sin) * size <= _same)
        {
            return;
        }

        if (!reversal && sin * _right <= 0)
        {
            _tail = -1;
            return;
        }

        role |= CandidateRole.Join;
        Point2 vertex = new(e.X1, e.Y1);
        Point2 p = vertex + (arriving.Right * _right);
        Point2 q = vertex + (leaving.Right * _right);
        if (cap && _end == EndStyle.Flat)
        {
            _tangent = false;
            Edge.Make(p.X, p.Y, q.X, q.Y, 0, out Append(index, next, role, false));
            return;
        }

        // Half the turn: each of sine and cosine from the other where it is the better known.
        double cosHalf;
        double sinHalf;
        if (reversal)
        {
            (cosHalf, sinHalf) = (0, 1);
        }
        else if (cos > 0)
        {
            cosHalf = Math.Sqrt((1 + cos) / 2);
            sinHalf = Math.Abs(sin) / (2 * cosHalf);
        }
        else
        {
            sinHalf = Math.Sqrt((1 - cos) / 2);
            cosHalf = Math.Abs(sin) / (2 * sinHalf);
        }

        if (_join == JoinStyle.Sharp && !cap && cosHalf * Offsetter.SharpLimit >= 1 - 1e-12)
        {
            double reach = size * sinHalf / cosHalf;
            Point2 apex = p + (arriving * reach);
            Append(index, next, role, true) = Line(p, apex, arriving, reach);
            Append(index, next, role, true) = Line(apex, q, leaving, reach);
            Corners.Add(new SharpCorners.Corner(vertex, arriving, leaving, apex, index, next, role));
            return;
        }

        ref Edge arc = ref Append(index, next, role, true);
        arc.X0 = p.X;
        arc.Y0 = p.Y;
        arc.X1 = q.X;
        arc.Y1 = q.Y;
        Point2 chord = cos > 0 ? (arriving + leaving) / (2 * cosHalf) : (q - p) / (2 * size * sinHalf);
        arc.Ux = chord.X;
        arc.Uy = chord.Y;
        arc.Half = size * sinHalf;
        arc.CosHalf = cosHalf;
        arc.Kappa = 1 / _right;
        arc.Bulge = Math.CopySign(1, _right) * sinHalf / (1 + cosHalf);
    }

    private static Edge Line(Point2 from, Point2 to, Point2 direction, double length) => new()
    {
        X0 = from.X,
        Y0 = from.Y,
        X1 = to.X,
        Y1 = to.Y,
        Ux = direction.X,
        Uy = direction.Y,
        Half = length / 2,
        CosHalf = 1,
    };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private ref Edge Append(int edge, int other, CandidateRole role, bool tangentNext)
    {
        int index = _arrangement.EdgeCount;
        ref Edge slot = ref _arrangement.Add();
        Sources[index] = new Candidate(edge, other, role);
        if (_tail >= 0)
        {
            _arrangement.Link(_tail, index, _tangent);
        }
        else if (_tail == Head)
        {
            _head = index;
            _headTangent = _tangent;
        }

        _tail = index;
        _tangent = tangentNext;
        return ref slot;
    }
}

/// <summary>What a candidate belongs to.</summary>
/// <param name="Edge">The edge it is parallel to, or the edge that ends at the vertex it goes round.</param>
/// <param name="Other">The edge that leaves that vertex; -1 for a parallel.</param>
/// <param name="Role">What it is.</param>
internal readonly record struct Candidate(int Edge, int Other, CandidateRole Role);

/// <summary>What a candidate is.</summary>
[Flags]
internal enum CandidateRole : byte
{
    /// <summary>A parallel of an edge in its own direction.</summary>
    None = 0,

    /// <summary>It goes round a vertex.</summary>
    Join = 1,

    /// <summary>It lies on the left of a path, walked backwards.</summary>
    Back = 2,

    /// <summary>It goes round an end of a path.</summary>
    Cap = 4,
}
