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
    /// <summary>A chain is balanced when its deviations differ by no more than this share.</summary>
    private const double EvenShare = 1e-6;

    /// <summary>Halvings of the tolerance's logarithm over a factor of 20: to a hundredth of a per cent.</summary>
    private const int Halvings = 15;

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

        double width = parameterAccuracy * whole;
        if (guess >= to - from && Excess(to) <= 0)
        {
            return over(from, to);
        }

        double first = Math.Min(guess, (to - from) / 2);
        double end = RootFinder.Near(Excess, from + first, 1 / first, from, to, width) ?? Bracketed(Excess, from, to, guess, width);
        if (end >= to)
        {
            return over(from, to);
        }

        Biarc found = over(from, end);

        // The root lies within rounding of the tolerance; step back to its safe side.
        for (double step = width; found.Deviation > tolerance && end - step > from; step *= 2)
        {
            end -= step;
            found = over(from, end);
        }

        return found;
    }

    private static double Bracketed(Func<double, double> excess, double from, double to, double guess, double width)
    {
        // Doubling from the span before finds a bracket without looking at far longer spans than needed.
        double low = from;
        double atLow = -1;
        double high = Math.Min(to, from + (1.5 * guess));
        double atHigh = excess(high);
        while (atHigh <= 0)
        {
            if (high >= to)
            {
                return to;
            }

            low = high;
            atLow = atHigh;
            high = Math.Min(to, from + (2 * (high - from)));
            atHigh = excess(high);
        }

        return RootFinder.Find(excess, low, atLow, high, atHigh, width);
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
        List<Biarc> chain = greedy;
        double Excess(double logTrial)
        {
            chain = Ended(from, to, Math.Exp(logTrial), greedy);
            return chain.Count < count ? -1 : Math.Cbrt(chain[^1].Deviation / Math.Exp(logTrial)) - 1;
        }

        // Cube roots of deviations add up along the curve, so their mean is nearly the balance, and the slope there nearly a third of the count.
        double mean = Math.Pow(greedy.Sum(b => Math.Cbrt(b.Deviation)) / count, 3);
        double start = Math.Log(Math.Min(mean, tolerance));
        double? balance = RootFinder.Near(Excess, start, -count / 3.0, start - 5, Math.Log(tolerance), balanceAccuracy);
        if (balance is { } settled)
        {
            Excess(settled);
            double least = chain.Min(b => b.Deviation), most = chain.Max(b => b.Deviation);
            if (chain.Count == count && most <= tolerance && most - least <= EvenShare * most)
            {
                return chain;
            }
        }

        return Halved(from, to, tolerance, greedy);
    }

    /// <summary>
    /// Where the deviation does not simply grow with the span (across a turning point of the curvature): the least tolerance that is found, by halving, to need no more biarcs.
    /// </summary>
    private List<Biarc> Halved(double from, double to, double tolerance, List<Biarc> greedy)
    {
        List<Biarc> best = greedy;
        double low = Math.Log(tolerance) - 3;
        double high = Math.Log(tolerance);
        for (int step = 0; step < Halvings; step++)
        {
            double middle = (low + high) / 2;
            int left = best.Count;
            List<Biarc> chain = Greedy(from, to, Math.Exp(middle), b => left-- == 0);
            bool ended = chain.Count > 0 && chain[^1].To >= to;
            (low, high) = ended ? (low, middle) : (middle, high);
            best = ended ? chain : best;
        }

        return best;
    }

    private List<Biarc> Ended(double from, double to, double deviation, List<Biarc> like)
    {
        int count = like.Count;
        var chain = new List<Biarc>(count);
        double at = from;
        for (int i = 0; i < count - 1 && at < to; i++)
        {
            Biarc next = Longest(at, to, deviation, to - from, like[i].To - like[i].From);
            chain.Add(next);
            at = next.To;
        }

        if (at < to)
        {
            chain.Add(over(at, to));
        }

        return chain;
    }
}
