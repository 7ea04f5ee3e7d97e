using System.Runtime.CompilerServices;

namespace ToolpathForge.Geometry;

/// <summary>
/// Judges an offset by its definition, not by the way it was made: every piece of the result must lie at the distance from the input and on the right side of it,
/// and every place that is plainly on the true result must be in this one. It may miss a fault; it never condemns a good result.
/// </summary>
internal struct OffsetCheck
{
    private readonly LoopInput _input;
    private readonly RawOffset _raw;
    private readonly Arrangement _arrangement;
    private readonly double _distance;
    private readonly bool _outwards;
    private readonly double _slack;

    internal OffsetCheck(LoopInput input, RawOffset raw, Arrangement arrangement, double distance, bool outwards)
    {
        _input = input;
        _raw = raw;
        _arrangement = arrangement;
        _distance = distance;
        _outwards = outwards;
        _slack = Accuracy.OffsetCheck;
        Reason = null;
        Where = default;
    }

    /// <summary>What is wrong; null when nothing is.</summary>
    internal string? Reason { get; private set; }

    /// <summary>Where it is wrong, in the input's own coordinates.</summary>
    internal Point2 Where { get; private set; }

    /// <summary>True when nothing wrong was found.</summary>
    /// <param name="used">Scratch: one flag for each candidate.</param>
    internal bool Passes(Span<bool> used)
    {
        used.Clear();
        for (int loop = 0; loop < _arrangement.LoopCount; loop++)
        {
            if (!LoopPasses(_arrangement.Loop(loop), used))
            {
                return false;
            }
        }

        return NothingMissing(used);
    }

    private bool LoopPasses(ReadOnlySpan<LoopPiece> loop, Span<bool> used)
    {
        EdgeField field = _input.Field;
        if (!_input.IsPath)
        {
            ref Edge e = ref _arrangement.Edges[loop[0].Edge];
            Point2 p = e.At((loop[0].From + loop[0].To) / 2);
            if (field.Winding(p.X, p.Y) > 0 == _outwards)
            {
                return Fails("a loop lies on the wrong side", p);
            }
        }

        double limit = _distance - _slack;
        Edge[] edges = _arrangement.Edges;
        Candidate[] sources = _raw.Sources;
        Span<Point2> middles = stackalloc Point2[8];
        for (int from = 0; from < loop.Length; from += 8)
        {
            int count = Math.Min(8, loop.Length - from);
            double minX = double.PositiveInfinity;
            double minY = double.PositiveInfinity;
            double maxX = double.NegativeInfinity;
            double maxY = double.NegativeInfinity;
            for (int k = 0; k < count; k++)
            {
                ref readonly LoopPiece piece = ref loop[from + k];
                used[piece.Edge] = true;
                ref Edge edge = ref edges[piece.Edge];
                Point2 p = piece.IsWhole ? edge.Middle : edge.At((piece.From + piece.To) / 2);
                middles[k] = p;
                minX = p.X < minX ? p.X : minX;
                maxX = p.X > maxX ? p.X : maxX;
                minY = p.Y < minY ? p.Y : minY;
                maxY = p.Y > maxY ? p.Y : maxY;
                ref readonly Candidate source = ref sources[piece.Edge];
                if (!AtDistance(field.Edges[source.Edge], source, p))
                {
                    return Fails("a piece is farther than the distance", p);
                }
            }

            int listed = field.List(new BoxTree.Box1((float)(minX - _distance), (float)(minY - _distance), (float)(maxX + _distance), (float)(maxY + _distance)));
            for (int k = 0; k < count; k++)
            {
                if (!field.IsClearOfListed(middles[k].X, middles[k].Y, limit, listed))
                {
                    return Fails("a piece is nearer than the distance", middles[k]);
                }

                if (_raw.Corners.Holds(middles[k], _slack))
                {
                    return Fails("a piece lies within a sharp corner", middles[k]);
                }
            }
        }

        return true;
    }

    // No farther than the distance from what it is parallel to; the edges of a sharp corner up to its apex, those of a flat end nearer.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly bool AtDistance(in Edge edge, in Candidate source, Point2 p)
    {
        return edge.IsNearer(p.X, p.Y, _distance + _slack)
            || ((source.Role & CandidateRole.Join) != CandidateRole.None
                && _raw.Corners.Any
                && edge.IsNearer(p.X, p.Y, (_distance * Offsetter.SharpLimit) + _slack));
    }

    // A candidate that no loop uses, and whose middle is clear of all but its own edges and outside all sharp corners but its own by more than the slack, should
    // have been used. What goes round the tip
    // of a cusp on its far side is such a candidate too, but lies on the wrong side.
    private bool NothingMissing(Span<bool> used)
    {
        for (int i = 0; i < used.Length; i++)
        {
            if (used[i])
            {
                continue;
            }

            Candidate source = _raw.Sources[i];
            Point2 p = _arrangement.Edges[i].Middle;
            if (NeighboursCover(source.Edge, p))
            {
                continue;
            }

            if (_input.Field.IsClear(p.X, p.Y, _distance + _slack, source.Edge, source.Other)
                && !_raw.Corners.Holds(p, -_slack, source.Edge, source.Other)
                && (_input.IsPath || _input.Field.Winding(p.X, p.Y) > 0 != _outwards)
                && !IsOnResult(p))
            {
                return Fails("a piece is missing", p);
            }
        }

        return true;
    }

    // Most candidates that no loop uses are cut off by an edge close by along the contour: that is asked first, for it needs no search.
    private readonly bool NeighboursCover(int edge, Point2 p)
    {
        double limit = _distance - _slack;
        int last = Math.Min(edge + 3, _input.Field.Count - 1);
        for (int i = Math.Max(0, edge - 2); i <= last; i++)
        {
            if (i != _input.Field.FlatStart && i != _input.Field.FlatEnd && _input.Field.Edges[i].IsNearer(p.X, p.Y, limit))
            {
                return true;
            }
        }

        return false;
    }

    // Where a path runs back on itself a candidate may coincide with another one that a loop uses.
    private readonly bool IsOnResult(Point2 p)
    {
        for (int loop = 0; loop < _arrangement.LoopCount; loop++)
        {
            foreach (ref readonly LoopPiece piece in _arrangement.Loop(loop))
            {
                ref Edge e = ref _arrangement.Edges[piece.Edge];
                if (e.DistanceSquared(p.X, p.Y, out int end) <= _slack * _slack)
                {
                    double place = end == 0 ? e.PlaceOf(p.X, p.Y) : end * e.EndPlace;
                    if (place >= piece.From - _slack && place <= piece.To + _slack)
                    {
                        return true;
                    }
                }
            }
        }

        return false;
    }

    private bool Fails(string reason, Point2 where)
    {
        Reason = reason;
        Where = where + _input.Shift;
        return false;
    }
}
