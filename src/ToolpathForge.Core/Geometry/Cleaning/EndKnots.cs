namespace ToolpathForge.Geometry;

/// <summary>The ends of open pieces, two each, and which of them are one point. End 2p is where piece p begins, 2p + 1 where it ends.</summary>
internal sealed class EndKnots
{
    private readonly List<UsablePiece> _pieces;
    private readonly int[] _knotOf;

    /// <summary>Gathers ends that lie within a distance of each other, from one to the next.</summary>
    internal EndKnots(List<UsablePiece> pieces, double within)
    {
        _pieces = pieces;
        int count = pieces.Count * 2;
        At = new Point2[count];
        Link = new int[count];
        Array.Fill(Link, -1);
        for (int e = 0; e < count; e++)
        {
            Vertex[] row = pieces[e >> 1].Vertices;
            At[e] = (e & 1) == 0 ? row[0].Point : row[^1].Point;
        }

        var parent = new int[count];
        for (int e = 0; e < count; e++)
        {
            parent[e] = e;
        }

        Gather(parent, within);
        _knotOf = new int[count];

        // The root is the first of its knot, so that knots are numbered by their first ends' turn to be seen.
        var sizes = new int[count];
        for (int e = 0; e < count; e++)
        {
            sizes[Root(parent, e)]++;
        }

        for (int e = 0; e < count; e++)
        {
            int root = Root(parent, e);
            if (root == e)
            {
                _knotOf[e] = Knots.Count;
                Knots.Add(new List<int>(sizes[e]));
            }

            _knotOf[e] = _knotOf[root];
            Knots[_knotOf[e]].Add(e);
        }
    }

    /// <summary>Where each end lies. Joining moves it.</summary>
    internal Point2[] At { get; }

    /// <summary>The end that each one goes on into; -1 for none.</summary>
    internal int[] Link { get; }

    /// <summary>The ends that are one point, ascending.</summary>
    internal List<List<int>> Knots { get; } = [];

    /// <summary>How many pieces there are.</summary>
    internal int PieceCount => _pieces.Count;

    /// <summary>The knot of an end.</summary>
    internal int KnotOf(int end) => _knotOf[end];

    /// <summary>Where an end came from.</summary>
    internal int SourceOf(int end) => _pieces[end >> 1].Source;

    /// <summary>The segment at an end, walked away from it.</summary>
    internal Segment Leaving(int end)
    {
        UsablePiece piece = _pieces[end >> 1];
        return (end & 1) == 0 ? piece[0] : piece[piece.SegmentCount - 1].Reversed;
    }

    /// <summary>How far the way turns that arrives along one end's piece and leaves along another's, radians, 0 straight on to π straight back.</summary>
    internal double Turn(int a, int b) => Math.Abs(Corners.TurnBetween(-Leaving(a).StartDirection, Leaving(b).StartDirection));

    /// <summary>Joins two ends.</summary>
    internal void Join(int a, int b)
    {
        Link[a] = b;
        Link[b] = a;
    }

    /// <summary>The far end of the chain that an end begins; -1 when the chain comes back to it. The end must be free, or the chain closed.</summary>
    internal int FarEnd(int end)
    {
        int at = end ^ 1;
        while (Link[at] >= 0)
        {
            at = Link[at] ^ 1;
            if (at == (end ^ 1))
            {
                return -1;
            }
        }

        return at;
    }

    // Cells of a size that makes all ends in one of them near enough; then neighbours, one end with the few of each cell.
    private void Gather(int[] parent, double within)
    {
        const int Few = 8;
        double size = within / 1.5;

        // The ends of a cell hang together: the dictionary has the last, each has the one before it.
        var cells = new Dictionary<(long X, long Y), int>(At.Length / 2);
        var before = new int[At.Length];
        for (int e = 0; e < At.Length; e++)
        {
            (long x, long y) = ((long)Math.Floor(At[e].X / size), (long)Math.Floor(At[e].Y / size));
            int here = 0;
            int last = -1;
            for (long dx = -2; dx <= 2; dx++)
            {
                for (long dy = -2; dy <= 2; dy++)
                {
                    if (!cells.TryGetValue((x + dx, y + dy), out int first))
                    {
                        continue;
                    }

                    for (int other = first; other >= 0; other = before[other])
                    {
                        if (At[e].DistanceTo(At[other]) <= within)
                        {
                            Unite(parent, e, other);
                        }

                        here += dx == 0 && dy == 0 ? 1 : 0;
                    }

                    last = dx == 0 && dy == 0 ? first : last;
                }
            }

            if (here < Few)
            {
                before[e] = last;
                cells[(x, y)] = e;
            }
        }
    }

    private static int Root(int[] parent, int e)
    {
        while (parent[e] != e)
        {
            parent[e] = parent[parent[e]];
            e = parent[e];
        }

        return e;
    }

    private static void Unite(int[] parent, int a, int b)
    {
        int x = Root(parent, a);
        int y = Root(parent, b);
        parent[Math.Max(x, y)] = Math.Min(x, y);
    }
}
