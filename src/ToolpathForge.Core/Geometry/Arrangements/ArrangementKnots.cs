namespace ToolpathForge.Geometry;

/// <content>Runs that begin and end in knots: tested one by one, coincident ones paired off, the rest joined by direction.</content>
internal sealed partial class Arrangement
{
    private KnotRun[] _runs = [];
    private Slice[] _runSlices = [];
    private int[] _byStart = [];
    private int[] _byEnd = [];
    private int _runCount;

    private bool StitchKnots<TTest>(ref TTest test)
        where TTest : struct, ISliceTest
    {
        CollectRuns(ref test);
        PairOffCoincident();
        Balance();
        return LinkRuns() && EmitRuns();
    }

    private void CollectRuns<TTest>(ref TTest test)
        where TTest : struct, ISliceTest
    {
        _runCount = 0;
        int used = 0;
        for (int e = 0; e < EdgeCount; e++)
        {
            int slices = _eventStart[e + 1] - _eventStart[e] + 1;
            for (int k = 0; k < slices; k++)
            {
                if (_states[SliceIndex(e, k)] != SliceState.FromKnot)
                {
                    continue;
                }

                int length = Follow(new Slice(e, k), out _);
                Slice last = _path[length - 1];
                int end = EndNode(last);
                if (!_knotted[Root(end)] || !Test(_path.AsSpan(0, length), ref test))
                {
                    continue;
                }

                Extend(ref _runSlices, used + length);
                _path.AsSpan(0, length).CopyTo(_runSlices.AsSpan(used));
                Extend(ref _runs, _runCount + 1);
                _runs[_runCount++] = new KnotRun
                {
                    From = used,
                    Length = length,
                    Start = Root(k > 0 ? (2 * EdgeCount) + (_events[_eventStart[e] + k - 1] >> 1) : StartNode(e)),
                    End = Root(end),
                    Next = -1,
                };
                used += length;
            }
        }
    }

    private int EndNode(Slice slice)
    {
        int i = _eventStart[slice.Edge] + slice.Rank;
        return i < _eventStart[slice.Edge + 1] ? (2 * EdgeCount) + (_events[i] >> 1) : slice.Edge;
    }

    // Pieces that coincide: as many as run one way cancel as many as run the other; of the rest one stays. A strip of no width so leaves nothing.
    private void PairOffCoincident()
    {
        for (int r = 0; r < _runCount; r++)
        {
            ref KnotRun run = ref _runs[r];
            if (run.Length == 1 && !run.Dropped)
            {
                Slice slice = _runSlices[run.From];
                (double from, double to) = Places(slice);
                run.Middle = Edges[slice.Edge].At(Edges[slice.Edge].Halfway(from, to));
            }
        }

        SortBy(ref _byStart, static (in KnotRun run) => ((long)Math.Min(run.Start, run.End) << 32) | (uint)Math.Max(run.Start, run.End));
        for (int i = 0; i < _runCount; i++)
        {
            ref KnotRun run = ref _runs[_byStart[i]];
            if (run.Length != 1 || run.Dropped || run.Settled)
            {
                continue;
            }

            int net = 1;
            for (int k = i + 1; k < _runCount && SameNodes(run, _runs[_byStart[k]]); k++)
            {
                ref KnotRun other = ref _runs[_byStart[k]];
                if (Coincide(run, other))
                {
                    net += Along(run, other) ? 1 : -1;
                }
            }

            bool kept = false;
            for (int k = i; k < _runCount && SameNodes(run, _runs[_byStart[k]]); k++)
            {
                ref KnotRun other = ref _runs[_byStart[k]];
                if (k > i && !Coincide(run, other))
                {
                    continue;
                }

                bool keep = !kept && net != 0 && (k == i || Along(run, other)) == net > 0;
                kept |= keep;
                other.Dropped = !keep;
                other.Settled = true;
            }
        }

        bool SameNodes(in KnotRun a, in KnotRun b) => (a.Start == b.Start && a.End == b.End) || (a.Start == b.End && a.End == b.Start);

        bool Coincide(in KnotRun a, in KnotRun b) =>
            b.Length == 1 && !b.Dropped && !b.Settled && a.Middle.DistanceTo(b.Middle) <= 4 * _tolerance;

        bool Along(in KnotRun a, in KnotRun b)
        {
            Slice s = _runSlices[a.From];
            Slice t = _runSlices[b.From];
            (double s0, double s1) = Places(s);
            (double t0, double t1) = Places(t);
            return Edges[s.Edge].DirectionAt((s0 + s1) / 2).Dot(Edges[t.Edge].DirectionAt((t0 + t1) / 2)) > 0;
        }
    }

    private bool LinkRuns()
    {
        SortBy(ref _byStart, static (in KnotRun run) => run.Dropped ? long.MaxValue : run.Start);
        SortBy(ref _byEnd, static (in KnotRun run) => run.Dropped ? long.MaxValue : run.End);
        int count = 0;
        while (count < _runCount && !_runs[_byStart[count]].Dropped)
        {
            count++;
        }

        for (int i = 0; i < count;)
        {
            int node = _runs[_byStart[i]].Start;
            int to = i + 1;
            while (to < count && _runs[_byStart[to]].Start == node)
            {
                to++;
            }

            bool even = _runs[_byEnd[i]].End == node && _runs[_byEnd[to - 1]].End == node && (to == count || _runs[_byEnd[to]].End != node);
            if (!even || !LinkNode(_byEnd.AsSpan(i..to), _byStart.AsSpan(i..to)))
            {
                Fail("runs do not meet in a knot", _runs[_byStart[i]]);
                return false;
            }

            i = to;
        }

        return true;
    }

    private bool LinkNode(ReadOnlySpan<int> arriving, ReadOnlySpan<int> leaving)
    {
        if (arriving.Length == 1)
        {
            _runs[arriving[0]].Next = leaving[0];
            return true;
        }

        double reach = double.PositiveInfinity;
        foreach (int r in arriving)
        {
            reach = Math.Min(reach, ReachOf(_runSlices[_runs[r].From + _runs[r].Length - 1]));
        }

        foreach (int r in leaving)
        {
            reach = Math.Min(reach, ReachOf(_runSlices[_runs[r].From]));
        }

        Span<bool> taken = leaving.Length <= 64 ? stackalloc bool[leaving.Length] : new bool[leaving.Length];
        taken.Clear();
        foreach (int r in arriving)
        {
            // What is wanted lies on the left: the first to leave, clockwise from where this one came, closes the tightest loop.
            Point2 back = Glance(_runSlices[_runs[r].From + _runs[r].Length - 1], reach, true);
            int best = -1;
            double bestTurn = double.PositiveInfinity;
            for (int k = 0; k < leaving.Length; k++)
            {
                Point2 ahead = Glance(_runSlices[_runs[leaving[k]].From], reach, false);
                double turn = Math.Atan2(ahead.Cross(back), ahead.Dot(back));
                turn = turn <= 0 ? turn + (2 * Math.PI) : turn;
                if (!taken[k] && turn < bestTurn)
                {
                    (best, bestTurn) = (k, turn);
                }
            }

            taken[best] = true;
            _runs[r].Next = leaving[best];
        }

        return true;
    }

    private double ReachOf(Slice slice)
    {
        (double from, double to) = Places(slice);
        return (to - from) / 2;
    }

    // Direction from an end of a slice to a point a little way along it: curves that leave in one direction part there.
    private Point2 Glance(Slice slice, double reach, bool fromEnd)
    {
        (double from, double to) = Places(slice);
        ref Edge edge = ref Edges[slice.Edge];
        return fromEnd ? edge.At(to - reach) - edge.At(to) : edge.At(from + reach) - edge.At(from);
    }

    private bool EmitRuns()
    {
        for (int first = 0; first < _runCount; first++)
        {
            if (_runs[first].Dropped || _runs[first].Emitted)
            {
                continue;
            }

            for (int r = first; !_runs[r].Emitted; r = _runs[r].Next)
            {
                _runs[r].Emitted = true;
                Emit(_runSlices.AsSpan(_runs[r].From, _runs[r].Length));
                if (_runs[r].Next < 0)
                {
                    Fail("a run ends in a knot", _runs[r]);
                    return false;
                }
            }

            CloseLoop();
        }

        return true;
    }

    private void Fail(string reason, in KnotRun run)
    {
        Slice slice = _runSlices[run.From];
        Failure = reason;
        FailedAt = Edges[slice.Edge].At(Places(slice).From);
    }

    /// <summary>Where the last run failed.</summary>
    internal Point2 FailedAt { get; private set; }

    private delegate long KeyOf(in KnotRun run);

    private void SortBy(ref int[] order, KeyOf key)
    {
        Extend(ref order, _runCount);
        var keys = new long[_runCount];
        for (int i = 0; i < _runCount; i++)
        {
            order[i] = i;
            keys[i] = key(_runs[i]);
        }

        // Equal keys stay in the order of the runs.
        Array.Sort(order, 0, _runCount, Comparer<int>.Create((a, b) => keys[a] != keys[b] ? keys[a].CompareTo(keys[b]) : a.CompareTo(b)));
    }

    private static void Extend<T>(ref T[] array, int size)
    {
        if (array.Length < size)
        {
            Array.Resize(ref array, Math.Max(size, Math.Max(16, array.Length * 2)));
        }
    }

    /// <summary>A run between knots that passed its test.</summary>
    private struct KnotRun
    {
        internal Point2 Middle;
        internal int From, Length, Start, End, Next;
        internal bool Dropped, Settled, Emitted;
    }
}
