namespace ToolpathForge.Geometry;

/// <summary>
/// Joins ends that were meant to meet and do not: always the two that lie nearest each other first. A chain is not closed on itself across a gap of half its own length or more.
/// </summary>
internal sealed class GapClosing
{
    private readonly EndKnots _ends;
    private readonly int[] _free;
    private readonly EndTree _tree;
    private readonly double[] _chainLength;
    private readonly int[] _far;
    private readonly double _gap;

    private GapClosing(EndKnots ends, List<UsablePiece> pieces, double gap)
    {
        _ends = ends;
        _gap = gap;

        // An end of a point where too many meet to be joined is none that was meant to meet another.
        int[] freeAt = [.. ends.Knots.Select(knot => knot.Count(e => ends.Link[e] < 0))];
        _free = [.. Enumerable.Range(0, ends.Link.Length).Where(e => ends.Link[e] < 0 && freeAt[ends.KnotOf(e)] == 1)];
        _tree = new EndTree([.. _free.Select(e => ends.At[e])]);
        _far = new int[_free.Length];
        _chainLength = new double[_free.Length];
        var numberOf = new Dictionary<int, int>();
        for (int i = 0; i < _free.Length; i++)
        {
            numberOf.Add(_free[i], i);
        }

        for (int i = 0; i < _free.Length; i++)
        {
            double length = pieces[_free[i] >> 1].Length;
            int at = _free[i] ^ 1;
            while (ends.Link[at] >= 0)
            {
                at = ends.Link[at];
                length += pieces[at >> 1].Length;
                at ^= 1;
            }

            _far[i] = numberOf.TryGetValue(at, out int far) ? far : -1;
            _chainLength[i] = length;
        }
    }

    /// <summary>Joins what lies within the gap. Returns the pairs in the order of their first ends.</summary>
    internal static List<(int A, int B)> Join(EndKnots ends, List<UsablePiece> pieces, double gap)
    {
        var closing = new GapClosing(ends, pieces, gap);
        List<(int A, int B)> joined = closing._free.Length < 2 ? [] : closing.Run();
        joined.Sort();
        return joined;
    }

    // From each end to its nearest, from there to its nearest, until two are each other's: those are joined, and it goes on from the end before them.
    private List<(int A, int B)> Run()
    {
        var joined = new List<(int A, int B)>();
        var done = new bool[_free.Length];
        var way = new List<int>();
        for (int start = 0; start < _free.Length; start++)
        {
            way.Clear();
            way.Add(start);
            while (way.Count > 0)
            {
                int at = way[^1];
                int nearest = done[at] ? -1 : _tree.Nearest(at, _gap, MayMeet);
                if (nearest < 0)
                {
                    way.RemoveAt(way.Count - 1);
                    continue;
                }

                // Of ends as near as each other the smallest number is taken, by both: so the way cannot go round in a ring of more than two.
                if (way.Count < 2 || way[^2] != nearest)
                {
                    way.Add(nearest);
                    continue;
                }

                Join(at, nearest);
                done[at] = done[nearest] = true;
                joined.Add((Math.Min(_free[at], _free[nearest]), Math.Max(_free[at], _free[nearest])));
                way.RemoveRange(way.Count - 2, 2);
            }
        }

        return joined;
    }

    private bool MayMeet(int a, int b) => _far[a] != b || _ends.At[_free[a]].DistanceTo(_ends.At[_free[b]]) < _chainLength[a] / 2;

    private void Join(int a, int b)
    {
        _ends.Join(_free[a], _free[b]);
        _tree.Remove(a);
        _tree.Remove(b);
        int farA = _far[a];
        int farB = _far[b];
        double length = _chainLength[a] + _chainLength[b] + _ends.At[_free[a]].DistanceTo(_ends.At[_free[b]]);
        if (farA >= 0)
        {
            (_far[farA], _chainLength[farA]) = (farB, length);
        }

        if (farB >= 0)
        {
            (_far[farB], _chainLength[farB]) = (farA, length);
        }
    }
}
