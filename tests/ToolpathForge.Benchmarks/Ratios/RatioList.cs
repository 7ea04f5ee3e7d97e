using System.Diagnostics;

namespace ToolpathForge.Benchmarks.Ratios;

/// <summary>Every figure that the project promises, a line each; a new group adds its line to <see cref="Groups"/>.</summary>
internal static class RatioList
{
    private static readonly (string Name, Func<IEnumerable<Func<Figure>>> All)[] Groups =
        [("plan", PlanFigures.All), ("start", StartFigures.All), ("offset", OffsetFigures.All), ("clean", CleaningFigures.All), ("trace", TraceFigures.All), ("host", HostFigures.All)];

    /// <summary>Prints them; 1 when one falls short.</summary>
    /// <param name="only">The one group to measure; null for all.</param>
    internal static int Print(string? only)
    {
        var clock = Stopwatch.StartNew();
        bool hold = true;
        foreach ((_, Func<IEnumerable<Func<Figure>>> all) in Groups.Where(g => only is null || g.Name == only))
        {
            foreach (Func<Figure> measure in all())
            {
                Figure figure = measure();
                Console.WriteLine(figure.Line());
                hold &= figure.Holds;
            }
        }

        Console.WriteLine(FormattableString.Invariant($"{(hold ? "all hold" : "not all hold")}, {clock.Elapsed.TotalSeconds:0} s"));
        return hold ? 0 : 1;
    }
}
