namespace ToolpathForge.Geometry;

/// <content>Slices followed into runs and loops.</content>
internal sealed partial class Arrangement
{
    private SliceState[] _states = [];
    private Slice[] _path = new Slice[64];
    private LoopPiece[] _pieces = new LoopPiece[64];
    private int[] _loopStart = new int[17];
    private int _pieceCount;

    /// <summary>How many loops the last run gave.</summary>
    internal int LoopCount { get; private set; }

    /// <summary>The pieces of a loop in order; each ends where the next begins.</summary>
    internal ReadOnlySpan<LoopPiece> Loop(int index) => _pieces.AsSpan(_loopStart[index].._loopStart[index + 1]);

    /// <summary>Forgets edges and loops, to be told both by <see cref="TakeLoop"/>.</summary>
    internal void TakeLoops()
    {
        Clear(0);
        (LoopCount, _pieceCount) = (0, 0);
    }

    /// <summary>Takes a closed loop as it is, an edge for each of its segments.</summary>
    internal void TakeLoop(ReadOnlySpan<Vertex> loop)
    {
        for (int i = 0; i < loop.Length; i++)
        {
            Point2 p = loop[i].Point;
            Point2 q = loop[i + 1 < loop.Length ? i + 1 : 0].Point;
            MakeRoom();
            Edge.Make(p.X, p.Y, q.X, q.Y, loop[i].Bulge, out Add());
            double end = Edges[EdgeCount - 1].EndPlace;
            if (_pieceCount == _pieces.Length)
            {
                Array.Resize(ref _pieces, _pieceCount * 2);
            }

            _pieces[_pieceCount++] = new LoopPiece { X = p.X, Y = p.Y, From = -end, To = end, Edge = EdgeCount - 1, IsWhole = true };
        }

        CloseLoop();
    }

    private bool Trace<TTest>(NodeRule rule, ref TTest test)
        where TTest : struct, ISliceTest
    {
        LoopCount = 0;
        _pieceCount = 0;
        _loopStart[0] = 0;
        RateSlices(rule);
        if (_anyKnot && !StitchKnots(ref test))
        {
            return false;
        }

        for (int e = 0; e < EdgeCount; e++)
        {
            int slices = _eventStart[e + 1] - _eventStart[e] + 1;
            int first = SliceIndex(e, 0);
            for (int k = 0; k < slices; k++)
            {
                if (_states[first + k] != SliceState.Open)
                {
                    continue;
                }

                int length = Follow(new Slice(e, k), out bool closed);
                if (closed && Test(_path.AsSpan(0, length), ref test))
                {
                    Emit(_path.AsSpan(0, length));
                    CloseLoop();
                }
            }
        }

        return true;
    }

    private int SliceIndex(int edge, int rank) => _eventStart[edge] + edge + rank;

    private void RateSlices(NodeRule rule)
    {
        Grow(ref _states, EdgeCount + _eventStart[EdgeCount] + 1);
        bool union = rule == NodeRule.Union;
        for (int e = 0; e < EdgeCount; e++)
        {
            int from = _eventStart[e];
            int to = _eventStart[e + 1];
            int at = from + e;
            if (from == to && !_anyKnot)
            {
                // Nothing meets it: it is as good as its ends.
                _states[at] = (Traits[e] & EdgeTraits.StartJoined) != EdgeTraits.None && Next[e] >= 0 ? SliceState.Open : SliceState.Wrong;
                continue;
            }

            // Where an edge starts free it starts in the open jaws of a corner, nearer than wanted.
            SliceState start = (Traits[e] & EdgeTraits.StartJoined) != EdgeTraits.None ? SliceState.Open : SliceState.Wrong;
            if (_anyKnot && _knotted[Root(StartNode(e))])
            {
                start = SliceState.FromKnot;
            }

            for (int i = from; i < to; i++)
            {
                ref Contact contact = ref _contacts[_events[i] >> 1];
                if (_anyKnot && _knotted[Root((2 * EdgeCount) + (_events[i] >> 1))])
                {
                    _states[at++] = start == SliceState.FromKnot && IsSpeck(e, i) ? SliceState.Wrong : start;
                    start = SliceState.FromKnot;
                    continue;
                }

                bool entersLeft = contact.EntersLeft == ((_events[i] & 1) == 0);
                bool endsWell = entersLeft == union;
                _states[at++] = endsWell ? start : SliceState.Wrong;
                start = endsWell ? SliceState.Wrong : SliceState.Open;
            }

            bool endsKnotted = _anyKnot && _knotted[Root(e)];
            bool endsFree = Next[e] < 0 && !endsKnotted;
            _states[at] = endsFree || (start == SliceState.FromKnot && endsKnotted && IsSpeck(e, to)) ? SliceState.Wrong : start;
        }
    }

    // A slice between two events of one knot that is no longer than what the tolerance joins.
    private bool IsSpeck(int edge, int @event)
    {
        int from = _eventStart[edge];
        int to = _eventStart[edge + 1];
        double a = @event > from ? PlaceOf(_events[@event - 1]) : -Edges[edge].EndPlace;
        double b = @event < to ? PlaceOf(_events[@event]) : Edges[edge].EndPlace;
        int start = @event > from ? (2 * EdgeCount) + (_events[@event - 1] >> 1) : StartNode(edge);
        int end = @event < to ? (2 * EdgeCount) + (_events[@event] >> 1) : edge;
        return Root(start) == Root(end) && b - a < 16 * _tolerance;
    }

    // Follows slices from an open one until the run closes, ends in a knot, or goes wrong; all of it is marked as walked.
    private int Follow(Slice first, out bool closed)
    {
        if (!_anyKnot)
        {
            return FollowPlain(first, out closed);
        }

        int length = 0;
        Slice at = first;
        closed = false;
        while (true)
        {
            ref SliceState state = ref _states[SliceIndex(at.Edge, at.Rank)];
            if (state is SliceState.Walked or SliceState.Wrong || (state == SliceState.FromKnot && length > 0))
            {
                closed = length > 0 && at == first && state == SliceState.Walked;
                return length;
            }

            state = SliceState.Walked;
            if (length == _path.Length)
            {
                Array.Resize(ref _path, length * 2);
            }

            _path[length++] = at;
            if (!Step(ref at))
            {
                return length;
            }
        }
    }

    // The same where no node is knotted: nearly always.
    private int FollowPlain(Slice first, out bool closed)
    {
        int[] start = _eventStart;
        SliceState[] states = _states;
        int length = 0;
        (int edge, int rank) = first;
        while (true)
        {
            int i = start[edge] + rank;
            ref SliceState state = ref states[i + edge];
            if (state != SliceState.Open)
            {
                closed = state == SliceState.Walked && edge == first.Edge && rank == first.Rank;
                return length;
            }

            state = SliceState.Walked;
            if (length == _path.Length)
            {
                Array.Resize(ref _path, length * 2);
            }

            _path[length++] = new Slice(edge, rank);
            if (i < start[edge + 1])
            {
                int e = _events[i];
                ref Contact contact = ref _contacts[e >> 1];
                (edge, rank) = (e & 1) == 0 ? (contact.B, contact.RankB + 1) : (contact.A, contact.RankA + 1);
                continue;
            }

            edge = Next[edge];
            rank = 0;
            if (edge < 0)
            {
                closed = false;
                return length;
            }
        }
    }

    // The slice that goes on where this one ends; false at a free end and at a knot.
    private bool Step(ref Slice at)
    {
        int from = _eventStart[at.Edge];
        int i = from + at.Rank;
        if (i == _eventStart[at.Edge + 1])
        {
            if (Next[at.Edge] < 0 || (_anyKnot && _knotted[Root(at.Edge)]))
            {
                return false;
            }

            at = new Slice(Next[at.Edge], 0);
            return true;
        }

        int c = _events[i] >> 1;
        if (_anyKnot && _knotted[Root((2 * EdgeCount) + c)])
        {
            return false;
        }

        ref Contact contact = ref _contacts[c];
        at = (_events[i] & 1) == 0 ? new Slice(contact.B, contact.RankB + 1) : new Slice(contact.A, contact.RankA + 1);
        return true;
    }

    private (double From, double To) Places(Slice slice)
    {
        int from = _eventStart[slice.Edge];
        int i = from + slice.Rank;
        double end = Edges[slice.Edge].EndPlace;
        return (i > from ? PlaceOf(_events[i - 1]) : -end, i < _eventStart[slice.Edge + 1] ? PlaceOf(_events[i]) : end);
    }

    private bool Test<TTest>(ReadOnlySpan<Slice> run, ref TTest test)
        where TTest : struct, ISliceTest
    {
        // The longest slice of the first few speaks for all: its middle is farthest from what rounding blurs.
        Slice best = run[0];
        double longest = -1;
        foreach (Slice slice in run[..Math.Min(run.Length, 8)])
        {
            (double from, double to) = Places(slice);
            if (to - from > longest)
            {
                (best, longest) = (slice, to - from);
            }
        }

        (double a, double b) = Places(best);
        ref Edge edge = ref Edges[best.Edge];
        double middle = (a + b) / 2;
        return test.Keep(best.Edge, edge.At(middle), edge.DirectionAt(middle));
    }

    private void Emit(ReadOnlySpan<Slice> run)
    {
        if (_pieceCount + run.Length > _pieces.Length)
        {
            Array.Resize(ref _pieces, Math.Max(_pieceCount + run.Length, _pieces.Length * 2));
        }

        foreach (Slice slice in run)
        {
            if (_eventStart[slice.Edge] == _eventStart[slice.Edge + 1])
            {
                ref Edge edge = ref Edges[slice.Edge];
                ref LoopPiece whole = ref _pieces[_pieceCount++];
                whole.Edge = slice.Edge;
                whole.To = edge.EndPlace;
                whole.From = -whole.To;
                whole.IsWhole = true;
                whole.X = edge.X0;
                whole.Y = edge.Y0;
                continue;
            }

            (double from, double to) = Places(slice);
            if (_pieceCount > _loopStart[LoopCount])
            {
                // Two slices of one edge in a row: the contact between them turned out to matter to neither.
                ref LoopPiece last = ref _pieces[_pieceCount - 1];
                if (last.Edge == slice.Edge && last.To == from)
                {
                    last.To = to;
                    continue;
                }
            }

            ref LoopPiece piece = ref _pieces[_pieceCount++];
            piece.Edge = slice.Edge;
            piece.From = from;
            piece.To = to;
            piece.IsWhole = false;
            if (slice.Rank == 0)
            {
                piece.X = Edges[slice.Edge].X0;
                piece.Y = Edges[slice.Edge].Y0;
            }
            else
            {
                ref Contact contact = ref _contacts[_events[_eventStart[slice.Edge] + slice.Rank - 1] >> 1];
                piece.X = contact.X;
                piece.Y = contact.Y;
            }
        }
    }

    private void CloseLoop()
    {
        // The last piece may run on into the first.
        int start = _loopStart[LoopCount];
        ref LoopPiece first = ref _pieces[start];
        ref LoopPiece last = ref _pieces[_pieceCount - 1];
        if (_pieceCount - start > 1 && first.Edge == last.Edge && last.To == first.From)
        {
            first.From = last.From;
            first.X = last.X;
            first.Y = last.Y;
            _pieceCount--;
        }

        LoopCount++;
        if (LoopCount + 1 > _loopStart.Length)
        {
            Array.Resize(ref _loopStart, _loopStart.Length * 2);
        }

        _loopStart[LoopCount] = _pieceCount;
    }

    private enum SliceState : byte
    {
        /// <summary>It ends or starts where nothing wanted can.</summary>
        Wrong,

        /// <summary>Both ends allow it.</summary>
        Open,

        /// <summary>It starts at a knot, and its end allows it.</summary>
        FromKnot,

        /// <summary>It has been followed.</summary>
        Walked,
    }

    private readonly record struct Slice(int Edge, int Rank);
}

/// <summary>A part of an edge in a loop.</summary>
internal struct LoopPiece
{
    /// <summary>The point where it begins.</summary>
    internal double X, Y;

    /// <summary>The place on the edge where it begins and ends.</summary>
    internal double From, To;

    /// <summary>The index of the edge.</summary>
    internal int Edge;

    /// <summary>True when it is all of the edge and known to be; false says nothing.</summary>
    internal bool IsWhole;
}
