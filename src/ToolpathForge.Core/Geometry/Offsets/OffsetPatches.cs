namespace ToolpathForge.Geometry;

/// <summary>
/// What sharp corners and flat ends put beside a round offset, as small closed loops; the result is where the round loops and these wind at least once.
/// A loop that adds runs counter-clockwise, one that takes away clockwise.
/// </summary>
internal sealed class OffsetPatches
{
    private readonly List<Vertex> _vertices = [];

    /// <summary>The loops so far.</summary>
    internal List<Contour> Loops { get; } = [];

    /// <summary>For each segment of each loop what it belongs to.</summary>
    internal List<Candidate[]> Sources { get; } = [];

    internal void Clear()
    {
        Loops.Clear();
        Sources.Clear();
    }

    /// <summary>Adds loops that an arrangement has found, in its own coordinates.</summary>
    /// <param name="arrangement">Holds the loops.</param>
    /// <param name="sources">For each of its edges what it belongs to.</param>
    internal void AddFound(Arrangement arrangement, Candidate[] sources)
    {
        var origins = new List<Candidate>();
        for (int k = 0; k < arrangement.LoopCount; k++)
        {
            _vertices.Clear();
            origins.Clear();
            foreach (ref readonly LoopPiece piece in arrangement.Loop(k))
            {
                ref Edge edge = ref arrangement.Edges[piece.Edge];
                double bulge = piece.IsWhole ? edge.Bulge : edge.BulgeBetween(piece.From, piece.To);
                _vertices.Add(new Vertex(piece.X, piece.Y, Math.Clamp(bulge, -1, 1)));
                origins.Add(sources[piece.Edge]);
            }

            Add(origins.ToArray());
        }
    }

    /// <summary>Adds the kites of sharp corners: vertex, foot, apex, foot. They run as the walk turns: to the left, and add, where the offset grows; else the other way.</summary>
    internal void AddCorners(SharpCorners corners, double right)
    {
        foreach (SharpCorners.Corner c in corners.All)
        {
            // A corner that an arc would miss by next to nothing is as good as round.
            if (c.Vertex.DistanceTo(c.Apex) - Math.Abs(right) < Accuracy.StraightSagitta)
            {
                continue;
            }

            var source = new Candidate(c.Edge, c.Other, c.Role);
            Take(c.Vertex, 0);
            Take(c.Vertex + (c.Arriving.Right * right), 0);
            Take(c.Apex, 0);
            Take(c.Vertex + (c.Leaving.Right * right), 0);
            Add([source, source, source, source]);
        }
    }

    /// <summary>Adds the circle about the vertex between two edges.</summary>
    internal void AddCircle(Point2 about, double size, Candidate source)
    {
        Take(about + new Point2(size, 0), 1);
        Take(about - new Point2(size, 0), 1);
        Add([source, source]);
    }

    /// <summary>
    /// Adds what lies about the end piece of a path on the path's side of the line across its flat end: what a line of twice the distance sweeps that stands square on
    /// the piece, and for an arc smaller than the distance also half the circle about the end.
    /// </summary>
    /// <param name="e">The piece, leaving the flat end.</param>
    /// <param name="index">The index of its edge.</param>
    /// <param name="size">The distance, mm.</param>
    /// <param name="role">That of a parallel on the right of <paramref name="e"/>: none at the start of a path, back at its end.</param>
    internal void AddFlatEnd(in Edge e, int index, double size, CandidateRole role)
    {
        var cap = new Candidate(index, index, CandidateRole.Join | CandidateRole.Cap);
        var right = new Candidate(index, -1, role);
        var left = new Candidate(index, -1, role ^ CandidateRole.Back);
        Point2 start = new(e.X0, e.Y0);
        Point2 end = new(e.X1, e.Y1);
        Point2 across = e.StartDirection.Right * size;
        Point2 endAcross = e.EndDirection.Right * size;
        bool hasRight = e.HalfOfParallel(size) > Accuracy.SamePoint;
        bool hasLeft = e.HalfOfParallel(-size) > Accuracy.SamePoint;
        if (hasRight && hasLeft)
        {
            Take(start + across, e.Bulge);
            Take(end + endAcross, 0);
            Take(end - endAcross, -e.Bulge);
            Take(start - across, 0);
            Add([right, cap, left, cap]);
            return;
        }

        // Past the centre of the arc nothing is swept.
        Point2 centre = start + (e.StartDirection.Left / e.Kappa);
        if (hasRight)
        {
            Take(start + across, e.Bulge);
            Take(end + endAcross, 0);
            Take(centre, 0);
            Add([right, cap, cap]);
        }
        else if (hasLeft)
        {
            Take(end - endAcross, -e.Bulge);
            Take(start - across, 0);
            Take(centre, 0);
            Add([left, cap, cap]);
        }

        Take(start + across, 1);
        Take(start - across, 0);
        Add([cap, cap]);
    }

    private void Take(Point2 p, double bulge) => _vertices.Add(new Vertex(p, bulge));

    private void Add(Candidate[] sources)
    {
        if (_vertices.Count > 1)
        {
            Loops.Add(new Contour(_vertices.ToArray(), true, true));
            Sources.Add(sources);
        }

        _vertices.Clear();
    }
}
