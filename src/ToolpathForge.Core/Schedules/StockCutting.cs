using System.Collections.Immutable;

namespace ToolpathForge.Schedules;

/// <summary>Pieces of one length.</summary>
/// <param name="Length">mm.</param>
/// <param name="Count">How many.</param>
public readonly record struct PieceLength(double Length, int Count);

/// <summary>A bought length and what is sawn from it.</summary>
/// <param name="Bought">mm.</param>
/// <param name="Pieces">Lengths sawn from it, the longest first, mm.</param>
public sealed record SawnLength(double Bought, ImmutableArray<double> Pieces);

/// <summary>What to buy for pieces of one timber.</summary>
/// <param name="Lengths">One for each board to buy, the longest first; of equal ones those with the longest pieces first.</param>
/// <param name="Oversize">Pieces that are longer than anything sold.</param>
/// <param name="IsLeast">Whether nothing shorter in all would do; false where there were too many ways to try them all.</param>
public sealed record StockPlan(ImmutableArray<SawnLength> Lengths, ImmutableArray<PieceLength> Oversize, bool IsLeast);

/// <summary>
/// Chooses what lengths to buy and how to saw them, so that the total bought is least. k pieces with their kerfs fit a board when
/// Σ(piece + kerf) ≤ bought - 2 trim + kerf: the last piece is parted from the trim by a cut of its own. Every state of what is still wanted is settled
/// once; where there are more states than can be kept, the longest piece that still fits is taken again and again.
/// </summary>
public static class StockCutting
{
    /// <summary>Up to so many states, and ways to go on from them, everything is tried.</summary>
    private const long MostWays = 4_000_000;

    /// <summary>Plans the lengths.</summary>
    /// <param name="pieces">What is wanted; lengths and counts more than 0.</param>
    /// <param name="sold">Lengths sold, mm; at least one.</param>
    /// <param name="kerf">Of the saw, mm.</param>
    /// <param name="trim">Sawn off either end of a bought length, mm.</param>
    public static StockPlan Plan(ImmutableArray<PieceLength> pieces, ImmutableArray<double> sold, double kerf, double trim)
    {
        ImmutableArray<double> lengths = [.. sold.Distinct().Order()];
        double Room(double bought) => bought - (2 * trim) + kerf;
        PieceLength[] all = [.. pieces.GroupBy(p => p.Length).Select(g => new PieceLength(g.Key, g.Sum(p => p.Count))).OrderByDescending(p => p.Length)];
        PieceLength[] wanted = [.. all.Where(p => p.Length + kerf <= Room(lengths[^1]) + 1e-9)];
        int[][] patterns = [.. Patterns([.. wanted.Select(p => p.Length + kerf)], [.. wanted.Select(p => p.Count)], Room(lengths[^1]))];
        double Cost(int[] pattern)
        {
            double used = pattern.Zip(wanted, (n, p) => n * (p.Length + kerf)).Sum();
            return lengths.First(l => used <= Room(l) + 1e-9);
        }

        long states = wanted.Aggregate(1L, (product, p) => Math.Min(MostWays + 1, product * (p.Count + 1)));
        bool exact = states * Math.Max(1, patterns.Length) <= MostWays;
        IEnumerable<int[]> chosen = exact ? Least(wanted, patterns, Cost) : Greedy(wanted, kerf, Room(lengths[^1]));
        ImmutableArray<SawnLength> bought =
        [
            .. chosen.Select(p => new SawnLength(Cost(p), [.. p.SelectMany((n, i) => Enumerable.Repeat(wanted[i].Length, n))]))
                .OrderByDescending(s => s.Bought).ThenByDescending(s => s.Pieces, LongestFirst.Instance),
        ];
        return new StockPlan(bought, [.. all.Where(p => !wanted.Contains(p))], exact);
    }

    // Every way to fill one board with something, in a fixed order.
    private static IEnumerable<int[]> Patterns(double[] sizes, int[] most, double room)
    {
        var pattern = new int[sizes.Length];
        return From(0, room);

        IEnumerable<int[]> From(int at, double left)
        {
            if (at == sizes.Length)
            {
                if (pattern.Any(n => n > 0))
                {
                    yield return (int[])pattern.Clone();
                }

                yield break;
            }

            for (int n = Math.Min(most[at], (int)Math.Floor((left + 1e-9) / sizes[at])); n >= 0; n--)
            {
                pattern[at] = n;
                foreach (int[] one in From(at + 1, left - (n * sizes[at])))
                {
                    yield return one;
                }
            }

            pattern[at] = 0;
        }
    }

    // The longest piece still wanted must come from some board: trying every board that holds it tries everything.
    private static List<int[]> Least(PieceLength[] wanted, int[][] patterns, Func<int[], double> cost)
    {
        double[] costs = [.. patterns.Select(cost)];
        int[] places = new int[wanted.Length];
        int states = 1;
        for (int i = wanted.Length - 1; i >= 0; i--)
        {
            places[i] = states;
            states *= wanted[i].Count + 1;
        }

        int[] offsets = [.. patterns.Select(p => p.Zip(places, (n, place) => n * place).Sum())];
        var least = new double[states];
        var by = new int[states];
        var left = new int[wanted.Length];
        for (int state = 1; state < states; state++)
        {
            for (int i = 0, rest = state; i < left.Length; i++)
            {
                (left[i], rest) = Math.DivRem(rest, places[i]);
            }

            int longest = Array.FindIndex(left, n => n > 0);
            least[state] = double.PositiveInfinity;
            for (int k = 0; k < patterns.Length; k++)
            {
                if (patterns[k][longest] > 0 && Fits(patterns[k], left) && costs[k] + least[state - offsets[k]] < least[state] - 1e-9)
                {
                    least[state] = costs[k] + least[state - offsets[k]];
                    by[state] = k;
                }
            }
        }

        var chosen = new List<int[]>();
        for (int state = states - 1; state > 0; state -= offsets[by[state]])
        {
            chosen.Add(patterns[by[state]]);
        }

        return chosen;
    }

    private static bool Fits(int[] pattern, int[] left)
    {
        for (int i = 0; i < pattern.Length; i++)
        {
            if (pattern[i] > left[i])
            {
                return false;
            }
        }

        return true;
    }

    private static List<int[]> Greedy(PieceLength[] wanted, double kerf, double room)
    {
        int[] left = [.. wanted.Select(p => p.Count)];
        var chosen = new List<int[]>();
        while (left.Any(n => n > 0))
        {
            var pattern = new int[left.Length];
            double rest = room;
            for (int i = 0; i < left.Length; i++)
            {
                pattern[i] = Math.Min(left[i], (int)Math.Floor((rest + 1e-9) / (wanted[i].Length + kerf)));
                rest -= pattern[i] * (wanted[i].Length + kerf);
                left[i] -= pattern[i];
            }

            chosen.Add(pattern);
        }

        return chosen;
    }

    private sealed class LongestFirst : IComparer<ImmutableArray<double>>
    {
        internal static LongestFirst Instance { get; } = new();

        public int Compare(ImmutableArray<double> x, ImmutableArray<double> y)
        {
            for (int i = 0; i < Math.Min(x.Length, y.Length); i++)
            {
                if (x[i] != y[i])
                {
                    return x[i].CompareTo(y[i]);
                }
            }

            return x.Length.CompareTo(y.Length);
        }
    }
}
