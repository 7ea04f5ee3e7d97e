namespace ToolpathForge.Geometry;

/// <summary>
/// Covers a spiral with the fewest biarcs whose joints lie on it, then spends the tolerance that is left: all biarcs get the same deviation, the least at that count.
/// The deviation of a biarc grows with its span, so the longest span that fits is always the right one to take, and the chain cannot have fewer.
/// </summary>
internal static class SpiralChain
{
    /// <summary>Ends are found to this share of the whole spiral.</summary>
    private const double ParameterAccuracy = 1e-14;

    /// <summary>The balanced deviation is found to this share of itself.</summary>
    private const double BalanceAccuracy = 1e-12;

    /// <summary>More biarcs than this in one spiral is a mistaken tolerance, not a curve.</summary>
    private const int MostBiarcs = 100_000;

    public static List<Biarc> Fit(Curve spiral, double from, double to, double tolerance)
    {
        List<Biarc> greedy = Greedy(spiral, from, to, tolerance);
        return greedy.Count == 1 ? greedy : Balanced(spiral, from, to, tolerance, greedy);
    }

    /// <summary>The longest spans that hold the tolerance, from the start on; the last may have tolerance to spare.</summary>
    public static List<Biarc> Greedy(Curve spiral, double from, double to, double tolerance)
    {
        var chain = new List<Biarc>();
        double guess = to - from;
        double at = from;
        while (at < to)
        {
            Biarc next = Longest(spiral, at, to, tolerance, to - from, guess);
            chain.Add(next);
            guess = next.To - at;
            at = next.To;
            if (chain.Count > MostBiarcs)
            {
                throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "Far too fine for this curve.");
            }
        }

        return chain;
    }

    private static Biarc Longest(Curve spiral, double from, double to, double tolerance, double whole, double guess)
    {
        // The deviation grows with the third power of the span, so its cube root is nearly straight and the search takes few steps.
        double Excess(double end) => Math.Cbrt(Biarc.Over(spiral, from, end).Deviation / tolerance) - 1;

        // Doubling from the span before finds a bracket without looking at far longer spans than needed.
        double low = from;
        double atLow = -1;
        double high = Math.Min(to, from + (1.5 * guess));
        double atHigh = Excess(high);
        while (atHigh <= 0)
        {
            if (high >= to)
            {
                return Biarc.Over(spiral, from, to);
            }

            low = high;
            atLow = atHigh;
            high = Math.Min(to, from + (2 * (high - from)));
            atHigh = Excess(high);
        }

        double end = RootFinder.Find(Excess, low, atLow, high, atHigh, ParameterAccuracy * whole);
        Biarc found = Biarc.Over(spiral, from, end);

        // The root lies within rounding of the tolerance; step back to its safe side.
        for (double step = ParameterAccuracy * whole; found.Deviation > tolerance && end - step > from; step *= 2)
        {
            end -= step;
            found = Biarc.Over(spiral, from, end);
        }

        return found;
    }

    private static List<Biarc> Balanced(Curve spiral, double from, double to, double tolerance, List<Biarc> greedy)
    {
        int count = greedy.Count;

        // With all but the last at a trial deviation, the last takes what is left: more than its share below the balance, less above it.
        double Excess(double logTrial)
        {
            double trial = Math.Exp(logTrial);
            double at = from;
            double guess = (to - from) / count;
            for (int i = 0; i < count - 1; i++)
            {
                Biarc next = Longest(spiral, at, to, trial, to - from, guess);
                guess = next.To - at;
                at = next.To;
                if (at >= to)
                {
                    return -1;
                }
            }

            return Math.Cbrt(Biarc.Over(spiral, at, to).Deviation / trial) - 1;
        }

        double high = Math.Log(tolerance);
        double atHigh = Math.Cbrt(greedy[^1].Deviation / tolerance) - 1;
        double low = high;
        double atLow = atHigh;
        while (atLow <= 0)
        {
            high = low;
            atHigh = atLow;
            low -= 1;
            atLow = Excess(low);
        }

        double balance = Math.Min(tolerance, Math.Exp(RootFinder.Find(Excess, low, atLow, high, atHigh, BalanceAccuracy)));
        return Ended(spiral, from, to, balance, count) is { } chain && chain.TrueForAll(b => b.Deviation <= tolerance) ? chain : greedy;
    }

    private static List<Biarc> Ended(Curve spiral, double from, double to, double deviation, int count)
    {
        var chain = new List<Biarc>(count);
        double at = from;
        double guess = (to - from) / count;
        for (int i = 0; i < count - 1 && at < to; i++)
        {
            Biarc next = Longest(spiral, at, to, deviation, to - from, guess);
            chain.Add(next);
            guess = next.To - at;
            at = next.To;
        }

        if (at < to)
        {
            chain.Add(Biarc.Over(spiral, at, to));
        }

        return chain;
    }
}
