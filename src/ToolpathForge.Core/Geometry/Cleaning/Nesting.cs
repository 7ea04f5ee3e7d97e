using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>
/// Which closed contours lie in which. The depth of each is how often all of them, walked counter-clockwise, wind round a point just outside it. The one it lies in is found from
/// its leftmost point to the left: the nearest contour there that is not deeper is either the one round it, or a neighbour in the same one.
/// </summary>
internal sealed class Nesting
{
    /// <summary>How far outside a contour its depth is looked up, mm: ten times what counts as touching.</summary>
    private const double Aside = 1e-6;

    private readonly EdgeIndex _index;
    private readonly bool[] _counts;
    private readonly Box2[] _boxes;

    /// <summary>Finds depths and parents.</summary>
    /// <param name="index">The edges of all contours.</param>
    /// <param name="rows">The contours.</param>
    /// <param name="counts">Which of them count: closed and sound. The others get depth 0 and no parent.</param>
    internal Nesting(EdgeIndex index, IReadOnlyList<(Vertex[] Row, bool IsClosed)> rows, bool[] counts)
    {
        _index = index;
        _counts = counts;
        Depth = new int[rows.Count];
        Parent = new int[rows.Count];
        IsCounterClockwise = new bool[rows.Count];
        Array.Fill(Parent, -1);
        _boxes = new Box2[rows.Count];
        for (int i = 0; i < rows.Count; i++)
        {
            if (rows[i].IsClosed)
            {
                var contour = new Contour(rows[i].Row, true, true);
                _boxes[i] = contour.Box;
                IsCounterClockwise[i] = contour.IsCounterClockwise;
            }
        }

        FindDepths();
        FindParents();
    }

    /// <summary>How many others each lies in.</summary>
    internal int[] Depth { get; }

    /// <summary>The innermost one each lies in; -1 for none.</summary>
    internal int[] Parent { get; }

    /// <summary>Whether each closed one is written counter-clockwise.</summary>
    internal bool[] IsCounterClockwise { get; }

    private void FindDepths()
    {
        // The winding is counted along a ray; in a long row of contours it should run across the row, so a wide drawing is mirrored at the diagonal.
        Box2 all = Box2.Empty;
        foreach (ref readonly Edge e in _index.Edges.AsSpan())
        {
            all = all.Including(new Point2(e.X0, e.Y0));
        }

        bool mirror = all.Width > all.Height;
        var field = new EdgeField();
        field.Clear(_index.Edges.Length);
        for (int i = 0; i < _counts.Length; i++)
        {
            if (_counts[i])
            {
                int from = _index.FirstOf[i];
                int to = _index.FirstOf[i + 1];
                for (int k = 0; k < to - from; k++)
                {
                    bool asWritten = IsCounterClockwise[i] != mirror;
                    Edge edge = asWritten ? _index.Edges[from + k] : _index.Edges[to - 1 - k].Reversed;
                    field.Add(i, i, k) = mirror ? Edge.Of(edge.Y0, edge.X0, edge.Y1, edge.X1, -edge.Bulge) : edge;
                }
            }
        }

        if (field.Count == 0)
        {
            return;
        }

        field.Build(_index.Largest, true);
        for (int from = 0; from < field.Count;)
        {
            int owner = field.ChainOf[from];
            int to = from + _index.FirstOf[owner + 1] - _index.FirstOf[owner];
            Point2 outside = Outside(field, from);
            for (int e = from; e < to; e++)
            {
                Point2 p = Outside(field, e);
                if (field.IsClear(p.X, p.Y, 4 * Aside, e))
                {
                    outside = p;
                    break;
                }
            }

            Depth[owner] = field.Winding(outside.X, outside.Y);
            from = to;
        }
    }

    private static Point2 Outside(EdgeField field, int edge) => field.Edges[edge].At(0) + (field.Edges[edge].DirectionAt(0).Right * Aside);

    private void FindParents()
    {
        int[] order = [.. Enumerable.Range(0, _counts.Length).Where(i => _counts[i]).OrderBy(i => _boxes[i].MinX).ThenBy(i => i)];
        var done = new bool[_counts.Length];
        var near = new List<int>();
        foreach (int i in order)
        {
            if (Depth[i] > 0)
            {
                int beside = NearestLeft(i, done, near);
                Parent[i] = beside < 0 ? -1 : Depth[beside] < Depth[i] ? beside : Parent[beside];
            }

            done[i] = true;
        }
    }

    private int NearestLeft(int contour, bool[] done, List<int> near)
    {
        Point2 from = Leftmost(contour);
        double whole = _index.Largest * 2;
        for (double width = Math.Min(whole, Math.Max(1e-3, _boxes[contour].Width)); ; width = Math.Min(whole, width * 2))
        {
            Edge ray = Edge.Of(from.X, from.Y, from.X - width, from.Y, 0);
            _index.Near(from.X - width, from.Y, from.X, from.Y, 0, near);
            int best = -1;
            double bestX = double.NegativeInfinity;
            Meetings found = default;
            foreach (int e in near)
            {
                int owner = _index.OwnerOf[e];
                if (owner == contour || !done[owner] || Depth[owner] > Depth[contour])
                {
                    continue;
                }

                EdgeMeeting.Find(ray, _index.Edges[e], _index.Touching, ref found);
                for (int k = 0; k < found.Count; k++)
                {
                    if (found[k].X > bestX)
                    {
                        (bestX, best) = (found[k].X, owner);
                    }
                }
            }

            if (best >= 0 || width >= whole)
            {
                return best;
            }
        }
    }

    private Point2 Leftmost(int contour)
    {
        var best = new Point2(double.PositiveInfinity, 0);
        for (int e = _index.FirstOf[contour]; e < _index.FirstOf[contour + 1]; e++)
        {
            ref Edge edge = ref _index.Edges[e];
            best = edge.X0 < best.X ? new Point2(edge.X0, edge.Y0) : best;
            if (edge.Kappa == 0)
            {
                continue;
            }

            // Where an arc that turns left runs straight down it lies farthest left; one that turns right, straight up.
            var s = new Segment(new Point2(edge.X0, edge.Y0), new Point2(edge.X1, edge.Y1), edge.Bulge);
            if (s.SpansDirection(new Point2(-1, 0)) && s.Center.X - s.Radius < best.X)
            {
                best = s.Center - new Point2(s.Radius, 0);
            }
        }

        return best;
    }
}
