using System.Diagnostics;
using System.Globalization;

namespace ToolpathForge.Benchmarks.Ratios;

/// <summary>
/// Times two ways of doing one thing in turns, so that whatever else the machine does burdens both alike, and takes the median of the pairs' ratios.
/// </summary>
internal static class Pairs
{
    private const int Count = 9;

    /// <summary>How many times longer the baseline takes.</summary>
    internal static Figure Ratio(string name, string baselineName, double goal, Func<object> ours, Func<object> baseline)
    {
        (int oursRounds, int baselineRounds) = (Rounds(ours), Rounds(baseline));
        var ratios = new double[Count];
        var oursTimes = new double[Count];
        var baselineTimes = new double[Count];
        for (int i = 0; i < Count; i++)
        {
            oursTimes[i] = Time(ours, oursRounds);
            baselineTimes[i] = Time(baseline, baselineRounds);
            ratios[i] = baselineTimes[i] / oursTimes[i];
        }

        return new Figure(name, Median(ratios), "x", baselineName, goal, true, $"{Text(Median(oursTimes))} against {Text(Median(baselineTimes))}");
    }

    /// <summary>The exponent with which time grows with size: log of the times' ratio over log of the sizes' ratio.</summary>
    internal static Figure Growth(string name, string baselineName, double goal, double sizes, Func<object> small, Func<object> large)
    {
        (int smallRounds, int largeRounds) = (Rounds(small), Rounds(large));
        var exponents = new double[Count];
        var smallTimes = new double[Count];
        var largeTimes = new double[Count];
        for (int i = 0; i < Count; i++)
        {
            smallTimes[i] = Time(small, smallRounds);
            largeTimes[i] = Time(large, largeRounds);
            exponents[i] = Math.Log(largeTimes[i] / smallTimes[i]) / Math.Log(sizes);
        }

        return new Figure(name, Median(exponents), "", baselineName, goal, false, $"{Text(Median(smallTimes))} to {Text(Median(largeTimes))}");
    }

    // Warm until the compiler has settled, then as many rounds as fill some 40 ms.
    private static int Rounds(Func<object> work)
    {
        var clock = Stopwatch.StartNew();
        int done = 0;
        do
        {
            GC.KeepAlive(work());
            done++;
        }
        while (clock.ElapsedMilliseconds < 400 || done < 3);
        double once = Time(work, Math.Max(1, done / 20));
        return Math.Clamp((int)(0.04 / once), 1, 1_000_000);
    }

    private static double Time(Func<object> work, int rounds)
    {
        long from = Stopwatch.GetTimestamp();
        for (int i = 0; i < rounds; i++)
        {
            GC.KeepAlive(work());
        }

        return Stopwatch.GetElapsedTime(from).TotalSeconds / rounds;
    }

    private static double Median(double[] values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }

    private static string Text(double seconds) => seconds < 1e-3
        ? string.Create(CultureInfo.InvariantCulture, $"{seconds * 1e6:0.0} us")
        : string.Create(CultureInfo.InvariantCulture, $"{seconds * 1e3:0.00} ms");
}
