using System.Diagnostics;

namespace ToolpathForge.Benchmarks.Ratios;

/// <summary>Every figure that the project promises, a line each; a new group adds its line to <see cref="Groups"/>.</summary>
internal static class RatioList
{
    private static readonly Func<IEnumerable<Func<Figure>>>[] Groups = [PlanFigures.All, StartFigures.All, OffsetFigures.All, CleaningFigures.All, TraceFigures.All];

    /// <summary>Prints them; 1 when one falls short.</summary>
    internal static int Print()
    {
        var clock = Stopwatch.StartNew();
        bool hold = true;
        foreach (Func<IEnumerable<Func<Figure>>> group in Groups)
        {
            foreach (Func<Figure> measure in group())
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
