namespace ToolpathForge.Geometry;

/// <summary>Chords that stand for a smooth curve, to be covered by arcs from vertex to vertex.</summary>
internal sealed class PolylineRun
{
    /// <summary>
    /// One arc may stand for chords alone where it turns from the directions at its ends by no more than this, radians: with another such arc beyond, less than what
    /// counts as a corner.
    /// </summary>
    private const double SmallestKink = 0.49 * Corners.LeastTurn;

    /// <summary>One arc is taken instead of two if it reaches this share as far.</summary>
    private const double AsGood = 0.8;

    /// <summary>Two arcs need more than one chord: spans up to so many are tried before giving up.</summary>
    private const int FirstSteps = 4;

    /// <summary>How many vertices to either side may help to find the direction at one.</summary>
    private const int WidestStencil = 3;

    /// <summary>And how far the chords to them may turn, radians: beyond that the curve is no circle there.</summary>
    private const double WidestStencilTurn = 0.3;

    private readonly Point2[] _points;
    private readonly Point2[] _directions;

    /// <summary>Takes the vertices and finds the directions there.</summary>
    /// <param name="points">At least three, no two neighbours alike.</param>
    /// <param name="first">The direction at the beginning, if something sets it.</param>
    /// <param name="last">The direction at the end, if something sets it.</param>
    /// <param name="isLoop">The last point is the first, and there is no corner there.</param>
    public PolylineRun(Point2[] points, Point2? first, Point2? last, bool isLoop)
    {
        _points = points;
        _directions = new Point2[points.Length];
        for (int i = 0; i < points.Length; i++)
        {
            _directions[i] = DirectionAt(i, isLoop);
        }

        _directions[0] = first ?? _directions[0];
        _directions[^1] = last ?? _directions[^1];
    }

    /// <summary>The arcs, each with the number of the vertex where it or its pair begins.</summary>
    public List<(Segment Segment, int First)> Fit(double tolerance, out double bound, double known)
    {
        var arcs = new List<(Segment, int)>();
        bound = known;
        int at = 0;
        while (at < _points.Length - 1)
        {
            Point2 leaving = _directions[at];
            int one = Longest(at, to => Single(at, to, leaving).Departure <= tolerance);
            int two = Longest(at, to => Pair(at, to, leaving).Departure <= tolerance);
            bool alone = one > at && one - at >= AsGood * (two - at);
            (Segment[] pieces, double departure) = alone
                ? Single(at, one, leaving)
                : two > at ? Pair(at, two, leaving) : ([new Segment(_points[at], _points[at + 1])], 0);
            foreach (Segment s in pieces)
            {
                arcs.Add((s.IsLine ? new Segment(s.Start, s.End) : s, at));
            }

            // An arc that is written as a line moves by its height.
            bound = Math.Max(bound, departure + pieces.Max(s => s.IsLine ? s.Sagitta : 0));
            at = alone ? one : Math.Max(two, at + 1);
        }

        return arcs;
    }

    /// <summary>The last vertex for which a span holds, doubling the span as long as it does; the beginning itself if none does.</summary>
    private int Longest(int at, Predicate<int> holds)
    {
        int last = _points.Length - 1;
        int good = at;
        int bad = last + 1;
        for (int step = 1; good < last && bad > last; step *= 2)
        {
            int next = Math.Min(last, at + step);
            if (holds(next))
            {
                good = next;
            }
            else if (good > at || step >= FirstSteps)
            {
                bad = next;
            }
        }

        while (bad - good > 1 && bad <= last)
        {
            int middle = (good + bad) / 2;
            (good, bad) = holds(middle) ? (middle, bad) : (good, middle);
        }

        return good;
    }

    private (Segment[] Pieces, double Departure) Single(int from, int to, Point2 leaving)
    {
        Point2 chord = _points[to] - _points[from];
        double first = Biarc.AngleBetween(leaving, chord);
        double second = Biarc.AngleBetween(chord, _directions[to]);
        double half = (first + second) / 2;
        var arc = new Segment(_points[from], _points[to], Math.Tan(half / 2));
        return Math.Abs(first - half) <= SmallestKink && Math.Abs(half) <= Math.PI / 2
            ? ([arc], ChordProof.Departure(_points.AsSpan(from, to - from + 1), arc))
            : ([], double.PositiveInfinity);
    }

    /// <summary>Two tangent arcs that meet near the curve: between the vertices where the tangents of arcs through them would pass from one sign of difference to the other.</summary>
    private (Segment[] Pieces, double Departure) Pair(int from, int to, Point2 leaving)
    {
        Point2 start = _points[from];
        Point2 end = _points[to];
        Point2 arriving = _directions[to];
        double turn = Biarc.AngleBetween(leaving, arriving);
        double first = FirstHalf(from, to, leaving, turn);
        double second = (turn / 2) - first;
        Point2 firstChord = leaving.Rotated(first);
        Point2 secondChord = arriving.Rotated(-second);
        Point2 way = end - start;
        double sine = firstChord.Cross(secondChord);
        double toMeet = way.Cross(secondChord) / sine;
        double fromMeet = firstChord.Cross(way) / sine;
        if (!(toMeet > Accuracy.SamePoint && fromMeet > Accuracy.SamePoint && Math.Abs(first) <= Math.PI / 2 && Math.Abs(second) <= Math.PI / 2))
        {
            return ([], double.PositiveInfinity);
        }

        Point2 meet = start + (firstChord * toMeet);
        Point2 along = leaving.Rotated(2 * first);
        double split = RootFinder.Find(t => (At(t) - meet).Dot(along), from, (start - meet).Dot(along), to, (end - meet).Dot(along), 1e-12 * (to - from));
        int below = (int)Math.Min(split, to - 1e-9);
        Point2[] before = [.. _points[from..(below + 1)], At(split)];
        Point2[] after = [At(split), .. _points[(below + 1)..(to + 1)]];
        var one = new Segment(start, meet, Math.Tan(first / 2));
        var two = new Segment(meet, end, Math.Tan(second / 2));
        return ([one, two], Math.Max(ChordProof.Departure(before, one), ChordProof.Departure(after, two)));
    }

    private double FirstHalf(int from, int to, Point2 leaving, double turn)
    {
        Point2 arriving = _directions[to];
        double before = double.NaN, excessBefore = double.NaN;
        for (int i = from + 1; i < to; i++)
        {
            double half = Biarc.AngleBetween(leaving, _points[i] - _points[from]);
            double excess = (2 * (half + Biarc.AngleBetween(_points[to] - _points[i], arriving))) - turn;
            if (excess * excessBefore <= 0 && excess != excessBefore)
            {
                return before + ((half - before) * excessBefore / (excessBefore - excess));
            }

            (before, excessBefore) = (half, excess);
        }

        return turn / 4;
    }

    private Point2 At(double t)
    {
        int i = Math.Clamp((int)t, 0, _points.Length - 2);
        return _points[i].Towards(_points[i + 1], t - i);
    }

    /// <summary>
    /// The tangent of the circle through a vertex and two others, some vertices away on either side (or all to one side at an end): exact on arcs, and the farther away the
    /// less moved by rounding.
    /// </summary>
    private Point2 DirectionAt(int i, bool isLoop)
    {
        int last = _points.Length - 1;
        for (int reach = WidestStencil; ; reach--)
        {
            bool wraps = isLoop && 2 * reach <= last;
            bool inner = wraps || (i >= reach && i + reach <= last);
            bool fits = inner || (2 * reach <= last && (i == 0 || i == last));
            if (fits || reach == 1)
            {
                (int a, int b) = inner ? (i - reach, i + reach) : i == 0 ? (reach, 2 * reach) : (last - (2 * reach), last - reach);
                Point2 before = _points[(a + last) % last];
                Point2 after = _points[b > last ? b - last : b];
                double turn = inner ? Biarc.AngleBetween(_points[i] - before, after - _points[i]) : Biarc.AngleBetween(before - _points[i], after - before);
                if (Math.Abs(turn) <= WidestStencilTurn || reach == 1)
                {
                    return inner ? Through(before, _points[i], after) : i == 0 ? AtFirst(_points[i], before, after) : AtLast(before, after, _points[i]);
                }
            }
        }
    }

    // Between tangent and chord lies the angle under which the third point sees the chord.
    private static Point2 Through(Point2 a, Point2 b, Point2 c) => (b - a).Unit().Rotated(Biarc.AngleBetween(a - c, b - c));

    private static Point2 AtFirst(Point2 a, Point2 b, Point2 c) => (b - a).Unit().Rotated(-Biarc.AngleBetween(a - c, b - c));

    private static Point2 AtLast(Point2 a, Point2 b, Point2 c) => (c - b).Unit().Rotated(Biarc.AngleBetween(b - a, c - a));
}
