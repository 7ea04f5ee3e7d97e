namespace ToolpathForge.Geometry;

/// <summary>The biarc over a span of a curve, from one parameter to a larger one. Its deviation is infinite where none can be vouched for.</summary>
internal delegate Biarc BiarcOver(double from, double to);

/// <summary>
/// Covers a curve with few biarcs whose joints lie on it, then spends the tolerance that is left: all biarcs get the same deviation, the least at that count.
/// On a spiral the deviation of a biarc grows with its span, so the longest span that fits is always the right one to take, and the chain cannot have fewer.
/// </summary>
/// <param name="over">Makes the biarc over a span.</param>
/// <param name="parameterAccuracy">Ends are found to this share of the range covered.</param>
/// <param name="balanceAccuracy">The balanced deviation is found to this share of itself.</param>
internal sealed class BiarcChain(BiarcOver over, double parameterAccuracy, double balanceAccuracy)
{
    /// <summary>More biarcs than this in one curve is a mistaken tolerance, not a curve.</summary>
    private const int MostBiarcs = 100_000;

    public List<Biarc> Fit(double from, double to, double tolerance)
    {
        List<Biarc> greedy = Greedy(from, to, tolerance);
        return Balanced(from, to, tolerance, greedy);
    }

    /// <summary>The longest spans that hold the tolerance, from the start on; the last may have tolerance to spare.</summary>
    /// <param name="from">Where to begin.</param>
    /// <param name="to">Where to end.</param>
    /// <param name="tolerance">mm.</param>
    /// <param name="isStuck">Told of each span; where it says so, the chain ends before that span.</param>
    public List<Biarc> Greedy(double from, double to, double tolerance, Predicate<Biarc>? isStuck = null)
    {
        var chain = new List<Biarc>();
        double guess = to - from;
        double at = from;
        while (at < to)
        {
            Biarc next = Longest(at, to, tolerance, to - from, guess);
            if (isStuck?.Invoke(next) == true)
            {
                break;
            }

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

    private Biarc Longest(double from, double to, double tolerance, double whole, double guess)
    {
        // The deviation grows with the third power of the span, so its cube root is nearly straight and the search takes few steps.
        double Excess(double end) => Math.Cbrt(over(from, end).Deviation / tolerance) - 1;

        // Doubling from the span before finds a bracket without looking at far longer spans than needed.
        double low = from;
        double atLow = -1;
        double high = Math.Min(to, from + (1.5 * guess));
        double atHigh = Excess(high);
        while (atHigh <= 0)
        {
            if (high >= to)
            {
                return over(from, to);
            }

            low = high;
            atLow = atHigh;
            high = Math.Min(to, from + (2 * (high - from)));
            atHigh = Excess(high);
        }

        double end = RootFinder.Find(Excess, low, atLow, high, atHigh, parameterAccuracy * whole);
        Biarc found = over(from, end);

        // The root lies within rounding of the tolerance; step back to its safe side.
        for (double step = parameterAccuracy * whole; found.Deviation > tolerance && end - step > from; step *= 2)
        {
            end -= step;
            found = over(from, end);
        }

        return found;
    }

    /// <summary>As many biarcs as a greedy chain, all with the same deviation.</summary>
    public List<Biarc> Balanced(double from, double to, double tolerance, List<Biarc> greedy)
    {
        int count = greedy.Count;
        if (count < 2)
        {
            return greedy;
        }

        // With all but the last at a trial deviation, the last takes what is left: more than its share below the balance, less above it.
        double Excess(double logTrial)
        {
            double trial = Math.Exp(logTrial);
            double at = from;
            double guess = (to - from) / count;
            for (int i = 0; i < count - 1; i++)
            {
                Biarc next = Longest(at, to, trial, to - from, guess);
                guess = next.To - at;
                at = next.To;
                if (at >= to)
                {
                    return -1;
                }
            }

            return Math.Cbrt(over(at, to).Deviation / trial) - 1;
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

        double balance = Math.Min(tolerance, Math.Exp(RootFinder.Find(Excess, low, atLow, high, atHigh, balanceAccuracy)));
        List<Biarc> chain = Ended(from, to, balance, count);
        return chain.TrueForAll(b => b.Deviation <= tolerance) ? chain : greedy;
    }

    private List<Biarc> Ended(double from, double to, double deviation, int count)
    {
        var chain = new List<Biarc>(count);
        double at = from;
        double guess = (to - from) / count;
        for (int i = 0; i < count - 1 && at < to; i++)
        {
            Biarc next = Longest(at, to, deviation, to - from, guess);
            chain.Add(next);
            guess = next.To - at;
            at = next.To;
        }

        if (at < to)
        {
            chain.Add(over(at, to));
        }

        return chain;
    }
}
