using System.Collections.Immutable;

namespace ToolpathForge.Nesting;

/// <summary>
/// Lays pieces of any outline on as few panels as it finds: true outlines with their openings, so that a small piece may lie in an opening of a large
/// one. Several orders are tried, then changes of the best; the amount of work is counted, not timed, so that the same request gives the same nest on
/// every machine. Last, the pieces settle down and to the left.
/// </summary>
public static class Nester
{
    /// <summary>Comparisons of spans that are spent on trials: about two seconds on a slow machine.</summary>
    private const long MostWork = 250_000_000;

    /// <summary>Lays the pieces of a request.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="cancel">Asked between trials.</param>
    public static NestResult Nest(NestRequest request, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        var kinds = new NestKinds(request);
        ImmutableArray<int> left = [.. Enumerable.Range(0, request.Parts.Length).Where(part => !kinds.Fits(part))];
        int[] laid = [.. Enumerable.Range(0, request.Parts.Length).Where(part => !left.Contains(part))];
        if (laid.Length == 0)
        {
            return new NestResult([], left);
        }

        NestTrial best = Search(kinds, request, laid, cancel);
        return new NestResult([.. best.Panels.Select(p => new NestedPanel(Settling.Settle(p, request.Room, request.Gap, kinds.Obstacles)))], left);
    }

    private static NestTrial Search(NestKinds kinds, NestRequest request, int[] laid, CancellationToken cancel)
    {
        NestTrial? best = null;
        int[] order = [];
        NestChoice choice = NestChoice.LowTop;
        long work = 0;
        void Try(int[] tried, NestChoice by)
        {
            cancel.ThrowIfCancellationRequested();
            NestTrial trial = NestTrial.Run(kinds, tried, by);
            work += trial.Work;
            if (best is null || trial.IsBetterThan(best))
            {
                (best, order, choice) = (trial, tried, by);
            }
        }

        foreach (Func<NestVariant, double> size in Sizes)
        {
            int[] byPart = [.. laid.OrderByDescending(part => kinds.Variants(part).Max(v => size(v.Piece))).ThenBy(part => part)];
            int[] all = [.. byPart.SelectMany(part => Enumerable.Repeat(part, request.Parts[part].Count))];
            foreach (NestChoice by in (ReadOnlySpan<NestChoice>)[NestChoice.LowTop, NestChoice.LowMiddle, NestChoice.LowFoot])
            {
                if (best is null || work < MostWork)
                {
                    Try(all, by);
                }
            }
        }

        var random = new Draw();
        for (int change = 0; change < request.Changes && work < MostWork && order.Length > 2; change++)
        {
            var changed = (int[])order.Clone();
            int from = random.Below(changed.Length);
            int to = random.Below(changed.Length);
            int moved = changed[from];
            if (from < to)
            {
                Array.Copy(changed, from + 1, changed, from, to - from);
            }
            else
            {
                Array.Copy(changed, to, changed, to + 1, from - to);
            }

            changed[to] = moved;
            if (!changed.AsSpan().SequenceEqual(order))
            {
                Try(changed, (change & 3) == 3 ? (NestChoice)random.Below(3) : choice);
            }
        }

        return best!;
    }

    private static ImmutableArray<Func<NestVariant, double>> Sizes { get; } =
    [
        v => v.Area,
        v => v.Height,
        v => Math.Max(v.Width, v.Height),
        v => v.Width * v.Height,
    ];

    /// <summary>Numbers that look drawn and are always the same (a linear congruence modulo 2^64, Knuth's multiplier).</summary>
    private sealed class Draw
    {
        private ulong _state = 1;

        /// <summary>The next, from 0 to below the bound.</summary>
        internal int Below(int bound)
        {
            _state = (_state * 6364136223846793005) + 1442695040888963407;
            return (int)((_state >> 33) % (ulong)bound);
        }
    }
}
