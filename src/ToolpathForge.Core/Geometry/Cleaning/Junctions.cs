namespace ToolpathForge.Geometry;

/// <summary>
/// Joins ends at the points where they meet. Two ends go on into each other. Where three or more meet, pieces that can be part of a loop are joined before those that cannot;
/// within each, the pair that turns least comes first. Where all that meet are loops in the end and would cross at the point, neighbours round it are joined instead,
/// so that the loops touch: an outline to be cut does not cross itself.
/// </summary>
internal static class Junctions
{
    /// <summary>Points where more ends meet than this are left alone: no outline is drawn so.</summary>
    private const int Most = 64;

    /// <summary>Turns that differ by less than this are alike, radians: what rounding to 1e-4 mm does to a millimetre of line.</summary>
    private const double AlikeTurns = 1e-4;

    /// <summary>How far along a piece it is looked which way it leaves, where directions are alike and only the bend tells, mm.</summary>
    private const double LookAhead = 0.1;

    /// <summary>Joins everything that meets. Returns the knots of three or more ends.</summary>
    internal static List<int> Join(EndKnots ends)
    {
        var junctions = new List<int>();
        for (int k = 0; k < ends.Knots.Count; k++)
        {
            List<int> knot = ends.Knots[k];
            if (knot.Count == 2)
            {
                ends.Join(knot[0], knot[1]);
            }
            else if (knot.Count > 2)
            {
                junctions.Add(k);
            }
        }

        if (junctions.Count == 0)
        {
            return junctions;
        }

        // The far ends of chains as they are now, before any junction is decided: loops of one chain are closed first where turns are alike.
        var far = new Dictionary<int, int>();
        foreach (int k in junctions)
        {
            foreach (int e in ends.Knots[k])
            {
                far[e] = ends.FarEnd(e);
            }
        }

        bool[] bridge = Bridges.Find(ends);
        foreach (int k in junctions)
        {
            if (ends.Knots[k].Count <= Most)
            {
                PairByTurn(ends, [.. ends.Knots[k].Where(e => !bridge[e >> 1])], far);
                PairByTurn(ends, [.. ends.Knots[k].Where(e => bridge[e >> 1])], far);
                PairByTurn(ends, [.. ends.Knots[k].Where(e => ends.Link[e] < 0)], far);
            }
        }

        bool[] open = InOpenChains(ends);
        foreach (int k in junctions)
        {
            List<int> knot = ends.Knots[k];
            if (knot.Count is >= 4 and <= Most && knot.TrueForAll(e => ends.Link[e] >= 0 && !open[e >> 1]))
            {
                Uncross(ends, knot, far);
            }
        }

        return junctions;
    }

    private static void PairByTurn(EndKnots ends, List<int> free, Dictionary<int, int> far)
    {
        var pairs = new List<(double Turn, int A, int B)>();
        for (int i = 0; i < free.Count; i++)
        {
            for (int j = i + 1; j < free.Count; j++)
            {
                pairs.Add((Weight(ends, free[i], free[j], far), free[i], free[j]));
            }
        }

        pairs.Sort();
        foreach ((_, int a, int b) in pairs)
        {
            if (ends.Link[a] < 0 && ends.Link[b] < 0)
            {
                ends.Join(a, b);
            }
        }
    }

    // Turns in whole steps, so that rounding decides nothing; half a step less for the two ends of one chain.
    private static double Weight(EndKnots ends, int a, int b, Dictionary<int, int> far) =>
        Math.Round(ends.Turn(a, b) / AlikeTurns) - (far.TryGetValue(a, out int end) && end == b ? 0.5 : 0);

    private static bool[] InOpenChains(EndKnots ends)
    {
        var open = new bool[ends.PieceCount];
        for (int e = 0; e < ends.Link.Length; e++)
        {
            for (int at = e; ends.Link[e] < 0 && at >= 0 && !open[at >> 1]; at = ends.Link[at ^ 1])
            {
                open[at >> 1] = true;
            }
        }

        return open;
    }

    private static void Uncross(EndKnots ends, List<int> knot, Dictionary<int, int> far)
    {
        double look = LookAhead;
        foreach (int e in knot)
        {
            look = Math.Min(look, ends.Leaving(e).Chord / 4);
        }

        // Chord of the first bit of each way: its direction turned by half of what it bends there.
        List<int> round = [.. knot.OrderBy(e => ends.Leaving(e).StartDirection.Rotated(ends.Leaving(e).Curvature * look / 2).Angle).ThenBy(e => e)];
        if (!Crosses(ends, round))
        {
            return;
        }

        while (round.Count > 0)
        {
            int best = 0;
            double least = double.PositiveInfinity;
            for (int i = 0; i < round.Count; i++)
            {
                double weight = Weight(ends, round[i], round[(i + 1) % round.Count], far);
                if (weight < least)
                {
                    (least, best) = (weight, i);
                }
            }

            int a = round[best];
            int b = round[(best + 1) % round.Count];
            ends.Join(a, b);
            round.Remove(a);
            round.Remove(b);
        }
    }

    // Pairs cross when, going round, one is opened before the last opened one is closed.
    private static bool Crosses(EndKnots ends, List<int> round)
    {
        var opened = new Stack<int>();
        foreach (int e in round)
        {
            if (opened.Count > 0 && opened.Peek() == ends.Link[e])
            {
                opened.Pop();
            }
            else if (opened.Contains(ends.Link[e]))
            {
                return true;
            }
            else
            {
                opened.Push(e);
            }
        }

        return false;
    }
}
