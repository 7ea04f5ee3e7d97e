using System.Globalization;
using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;

namespace ToolpathForge.RunSheets;

/// <summary>What the sheet says about the run itself: the first move, the dry run, every stop and the end.</summary>
internal static class RunSteps
{
    internal static IEnumerable<string> Of(Job job, CutPlan cut)
    {
        string Say(double mm) => ShopText.Size(mm, job.Unit);
        var heights = new RunHeights(job, cut);
        yield return $"Before every start bring the bit up by hand, with nothing above it. The first move is straight up to Z {Say(heights.Travel)}, then across to {At(First(cut.Works[0].Path), job.Unit)}, from wherever the bit stands: "
            + $"nothing on the bed may stand higher than Z {Say(heights.Free)}. A clamp that does is named in the job, with its height.";
        yield return $"Dry run: set Z0 {ShopText.AtLeast(heights.DryRun, job.Unit)} higher than it is, so that the deepest pass goes above the work, and see that the axis gets up to Z {Say(heights.Stop)} like that. "
            + "Run it through, watch clamps and cables, then set the true Z0.";
        foreach (string change in cut.Works.Length > 1 ? Changes(job, heights) : [])
        {
            yield return change;
        }

        if (cut.Clamping.Waits)
        {
            yield return $"{Parks("Between boards", job, cut, heights)} Then the program waits. Lay the next board, take your hands out{(ByHand(job) ? ", switch the spindle on and let it come up to speed" : "")}, and press start.";
        }

        yield return $"{Parks("At the end", job, cut, heights)} Reach in only then.";
    }

    internal static IEnumerable<(string Term, string Value)> Figures(Job job, CutPlan cut)
    {
        string Say(double mm) => ShopText.Size(mm, job.Unit);
        var heights = new RunHeights(job, cut);
        string over = heights.Highest is { } thing ? $"over {thing.Name}, which stands at Z {Say(thing.Top)}" : $"{Say(heights.Travel - cut.Clamping.Stock.Top)} above the stock";
        yield return ("Height of travel", $"Z {Say(heights.Travel)}, {over}");
        for (int i = 0; i < cut.Works.Length; i++)
        {
            string which = cut.Works.Length == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $", bit {i + 1}");
            yield return ($"First move{which}", $"straight up to that, then to {At(First(cut.Works[i].Path), job.Unit)}");
        }

        yield return ("Stands at the end", $"Z {Say(heights.Stop)}, {At(Last(cut), job.Unit)}");
    }

    /// <summary>Where the first move across goes to.</summary>
    /// <param name="path">A path.</param>
    internal static Point2 First(Toolpath path) => path.Moves.First(m => m.Purpose is not (Purpose.Retract or Purpose.Descend)).End.Flat;

    /// <summary>Where the bit stands when the program has ended, and between boards.</summary>
    /// <param name="cut">What the program does.</param>
    internal static Point2 Last(CutPlan cut) => cut.Path.Moves[^1].End.Flat;

    private static bool ByHand(Job job) => job.Dialect.IsSwitchedByHand(job.Machine);

    private static IEnumerable<string> Changes(Job job, RunHeights heights)
    {
        string up = $"the first move after it is again straight up to Z {ShopText.Size(heights.Travel, job.Unit)}";
        if (job.Dialect.ChangeOn(job.Machine) == BitChange.Command)
        {
            yield return $"The machine changes the bits: enter the length of each in its table first, and watch the first change; {up}.";
            yield break;
        }

        string off = ByHand(job) ? "Switch the spindle off and wait till it stands" : "The program stops the spindle and lets it run out";
        yield return $"At each change of bits the program waits with the bit up. {off}; unplug it before a hand touches bit or collet. Change the bit, touch Z0 off again (bits do not stick out alike), plug in"
            + $"{(ByHand(job) ? ", switch on" : "")}, and go on: {up}.";
    }

    private static string Parks(string when, Job job, CutPlan cut, RunHeights heights) =>
        $"{when} the bit goes up to Z {ShopText.Size(heights.Stop, job.Unit)} and across to {At(Last(cut), job.Unit)}. "
        + (ByHand(job)
            ? "Nothing switches the spindle off but you: do it there, and wait till it stands."
            : string.Create(CultureInfo.InvariantCulture, $"The spindle is switched off and given {job.Dialect.SpindleStopDwell:0.#} s to run out: see that it stands."));

    private static string At(Point2 p, LengthUnit unit) => $"X {ShopText.Size(p.X, unit)}, Y {ShopText.Size(p.Y, unit)}";
}

/// <summary>Heights of a run in the program's Z, mm.</summary>
/// <param name="job">The job.</param>
/// <param name="cut">What the program does.</param>
internal sealed class RunHeights(Job job, CutPlan cut)
{
    /// <summary>Height of travel.</summary>
    internal double Travel { get; } = cut.Clamping.Stock.Top + cut.Clamping.Rise(job);

    /// <summary>Height at stops and at the end.</summary>
    internal double Stop { get; } = cut.Works.Max(w => w.Path.Moves.Max(m => m.End.Z));

    /// <summary>What Z0 is raised by for the dry run.</summary>
    internal double DryRun { get; } = Parking.DryRun(cut.Clamping.Stock.Top + cut.Clamping.Rise(job), cut.Works.Min(w => w.Path.Moves.Min(m => m.End.Z)));

    /// <summary>The highest thing that stands above the stock; null where nothing is known to.</summary>
    internal KeepOut? Highest { get; } = cut.Clamping.KeepOuts.Where(k => k.Top > cut.Clamping.Stock.Top + 1e-9).OrderByDescending(k => k.Top).FirstOrDefault();

    /// <summary>What may stand there without coming near the bit: the gap that metal is kept at below the height of travel, and what the job itself names.</summary>
    internal double Free => Math.Max(Highest?.Top ?? cut.Clamping.Stock.Top, Travel - Clamping.MetalGap);
}
