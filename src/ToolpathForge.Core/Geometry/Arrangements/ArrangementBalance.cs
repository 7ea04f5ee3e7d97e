namespace ToolpathForge.Geometry;

/// <content>
/// Knots in which more runs begin than end. Where edges all but coincide, further along than the tolerance can tell them apart, two ways from one knot to another
/// both pass their test. One of them is taken out: the shorter, and only where the other really runs beside it.
/// </content>
internal sealed partial class Arrangement
{
    /// <summary>How far apart two ways may lie to count as one, in tolerances: 1e-7 mm, what a line may leave an arc that it stands for.</summary>
    private const double BesideTolerances = 100;

    private void Balance()
    {
        Dictionary<int, int> surplus = Surplus();
        if (surplus.Count == 0)
        {
            return;
        }

        var leaving = new Dictionary<int, List<int>>();
        for (int r = 0; r < _runCount; r++)
        {
            if (!_runs[r].Dropped)
            {
                if (!leaving.TryGetValue(_runs[r].Start, out List<int>? list))
                {
                    leaving[_runs[r].Start] = list = [];
                }

                list.Add(r);
            }
        }

        int[] starts = [.. surplus.Where(static p => p.Value > 0).Select(static p => p.Key).Order()];
        foreach (int start in starts)
        {
            while (surplus[start] > 0 && ShortestWay(start, surplus, leaving) is { } way && IsBesideAnother(way))
            {
                foreach (int r in way)
                {
                    _runs[r].Dropped = true;
                }

                surplus[start]--;
                surplus[_runs[way[^1]].End]++;
            }
        }
    }

    private Dictionary<int, int> Surplus()
    {
        var surplus = new Dictionary<int, int>();
        for (int r = 0; r < _runCount; r++)
        {
            if (!_runs[r].Dropped)
            {
                surplus[_runs[r].Start] = surplus.GetValueOrDefault(_runs[r].Start) + 1;
                surplus[_runs[r].End] = surplus.GetValueOrDefault(_runs[r].End) - 1;
            }
        }

        foreach (int node in surplus.Where(static p => p.Value == 0).Select(static p => p.Key).ToArray())
        {
            surplus.Remove(node);
        }

        return surplus;
    }

    // From a knot where too many begin to the nearest where too many end.
    private List<int>? ShortestWay(int start, Dictionary<int, int> surplus, Dictionary<int, List<int>> leaving)
    {
        var best = new Dictionary<int, (double Length, int Run)> { [start] = (0, -1) };
        var settled = new HashSet<int>();
        var open = new PriorityQueue<int, (double, int)>();
        open.Enqueue(start, (0, start));
        while (open.TryDequeue(out int node, out _))
        {
            if (!settled.Add(node))
            {
                continue;
            }

            if (surplus.GetValueOrDefault(node) < 0)
            {
                var way = new List<int>();
                for (int at = node; best[at].Run >= 0; at = _runs[best[at].Run].Start)
                {
                    way.Add(best[at].Run);
                }

                way.Reverse();
                return way;
            }

            foreach (int r in leaving.GetValueOrDefault(node) ?? [])
            {
                double length = best[node].Length + LengthOf(_runs[r]);
                int end = _runs[r].End;
                if (!_runs[r].Dropped && !settled.Contains(end) && (!best.TryGetValue(end, out (double Length, int Run) before) || length < before.Length))
                {
                    best[end] = (length, r);
                    open.Enqueue(end, (length, end));
                }
            }
        }

        return null;
    }

    private double LengthOf(in KnotRun run)
    {
        double sum = 0;
        foreach (Slice slice in _runSlices.AsSpan(run.From, run.Length))
        {
            (double from, double to) = Places(slice);
            sum += Edges[slice.Edge].LengthBetween(from, to);
        }

        return sum;
    }

    private bool IsBesideAnother(List<int> way)
    {
        foreach (int r in way)
        {
            foreach (Slice slice in _runSlices.AsSpan(_runs[r].From, _runs[r].Length))
            {
                (double from, double to) = Places(slice);
                if (!IsBesideAnother(Edges[slice.Edge].At((from + to) / 2), way))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private bool IsBesideAnother(Point2 p, List<int> way)
    {
        double beside = BesideTolerances * _tolerance;
        for (int r = 0; r < _runCount; r++)
        {
            if (_runs[r].Dropped || way.Contains(r))
            {
                continue;
            }

            foreach (Slice slice in _runSlices.AsSpan(_runs[r].From, _runs[r].Length))
            {
                ref Edge e = ref Edges[slice.Edge];
                if (e.DistanceSquared(p.X, p.Y, out int end) > beside * beside)
                {
                    continue;
                }

                (double from, double to) = Places(slice);
                double place = end == 0 ? e.PlaceOf(p.X, p.Y) : end * e.EndPlace;
                if (place >= from - beside && place <= to + beside)
                {
                    return true;
                }
            }
        }

        return false;
    }
}
