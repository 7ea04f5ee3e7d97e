namespace ToolpathForge.Geometry;

/// <summary>Points halved in turns by X and Y, from which points can be taken out; it finds the nearest that a test admits.</summary>
internal sealed class EndTree
{
    private readonly Point2[] _points;
    private readonly int[] _order;
    private readonly int[] _alive;
    private readonly int[] _slotOf;
    private readonly Box2[] _boxes;

    /// <summary>Builds it over all points.</summary>
    internal EndTree(Point2[] points)
    {
        _points = points;
        _order = new int[points.Length];
        _slotOf = new int[points.Length];
        for (int i = 0; i < points.Length; i++)
        {
            _order[i] = i;
        }

        _alive = new int[4 * Math.Max(1, points.Length)];
        _boxes = new Box2[_alive.Length];
        Build(1, 0, points.Length);
        for (int i = 0; i < points.Length; i++)
        {
            _slotOf[_order[i]] = i;
        }
    }

    /// <summary>Takes a point out.</summary>
    internal void Remove(int point)
    {
        int slot = _slotOf[point];
        int node = 1;
        int from = 0;
        int to = _order.Length;
        while (true)
        {
            _alive[node]--;
            if (to - from == 1)
            {
                return;
            }

            int middle = (from + to) / 2;
            node *= 2;
            if (slot < middle)
            {
                to = middle;
            }
            else
            {
                from = middle;
                node++;
            }
        }
    }

    /// <summary>The nearest point but itself within a distance that the test admits; of several as near the one of the smallest number. -1 for none.</summary>
    internal int Nearest(int point, double within, Func<int, int, bool> admits)
    {
        var best = (Distance: within, Point: int.MaxValue);
        Search(1, 0, _order.Length, point, admits, ref best);
        return best.Point == int.MaxValue ? -1 : best.Point;
    }

    private void Search(int node, int from, int to, int point, Func<int, int, bool> admits, ref (double Distance, int Point) best)
    {
        if (_alive[node] == 0 || _boxes[node].Distance(_points[point]) > best.Distance)
        {
            return;
        }

        if (to - from == 1)
        {
            int other = _order[from];
            double distance = _points[point].DistanceTo(_points[other]);
            if (other != point && (distance < best.Distance || (distance == best.Distance && other < best.Point)) && admits(point, other))
            {
                best = (distance, other);
            }

            return;
        }

        int middle = (from + to) / 2;
        bool lowFirst = _boxes[2 * node].Distance(_points[point]) <= _boxes[(2 * node) + 1].Distance(_points[point]);
        if (lowFirst)
        {
            Search(2 * node, from, middle, point, admits, ref best);
        }

        Search((2 * node) + 1, middle, to, point, admits, ref best);
        if (!lowFirst)
        {
            Search(2 * node, from, middle, point, admits, ref best);
        }
    }

    private void Build(int node, int from, int to)
    {
        _alive[node] = to - from;
        Box2 box = Box2.Empty;
        for (int i = from; i < to; i++)
        {
            box = box.Including(_points[_order[i]]);
        }

        _boxes[node] = box;
        if (to - from < 2)
        {
            return;
        }

        bool wide = box.Width >= box.Height;
        Array.Sort(_order, from, to - from, Comparer<int>.Create((a, b) =>
        {
            int first = wide ? _points[a].X.CompareTo(_points[b].X) : _points[a].Y.CompareTo(_points[b].Y);
            return first != 0 ? first : a.CompareTo(b);
        }));
        int middle = (from + to) / 2;
        Build(2 * node, from, middle);
        Build((2 * node) + 1, middle, to);
    }
}
