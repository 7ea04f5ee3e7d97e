using System.Globalization;
using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;

namespace ToolpathForge.RunSheets;

/// <summary>What to do before the program starts, and with which figures.</summary>
internal static class SetUp
{
    internal static IEnumerable<string> Steps(Job job, CutPlan cut)
    {
        string Say(double mm) => ShopText.Size(mm, job.Unit);
        Clamping clamping = cut.Clamping;
        Box2 stock = clamping.Stock.Box;
        Bit bit = cut.Path.Bit;
        if (clamping.Make is PatternMake pattern)
        {
            yield return $"Saw a blank of {pattern.Panel.Name} at least {ShopText.AtLeast(stock.Width, job.Unit)} by {ShopText.AtLeast(stock.Height, job.Unit)}, and check with a caliper that it is {Say(pattern.Thickness)} thick.";
            yield return $"Lay it flat on the spoilboard, face up, long side along X. Screw or clamp it within {Say(10)} of its rim, clear of the lines in the picture.";
            yield return "Work zero: X0 Y0 is the near left corner of the blank.";
        }
        else if (clamping.Make is BoardEndMake end)
        {
            yield return $"Lay the board face up, its profile edge towards you, its end at your right, {Say(end.OnBed)} of it on the bed. "
                + $"The reference edge lies against the fence; the raw end stands {Say(end.EndAllowance)} past the finished tip.";
            yield return $"Clamp it clear of the lines in the picture, and hold up the {Say(Math.Max(0, end.BoardLength - end.OnBed))} that hang out. Screw down the waste outside the bit's way.";
            yield return $"The fence must be sacrificial and free of metal for {Say(end.FenceRoom)} behind its face near the end. Swing the end stop away before you start.";
            yield return "Work zero: X0 is the finished tip, Y0 the face of the fence. The board lies at minus X and minus Y.";
        }

        yield return job.Zero == ZeroHeight.Bed
            ? "Z0 is the top of the spoilboard, touched off beside the stock."
            : "Z0 is the upper face of the stock.";
        double least = cut.Settings.Steps[^1] + CutSettings.Nut;
        yield return $"Bit: {bit.Name}. Let it stick out {ShopText.AtLeast(least, job.Unit)} or more, with at least {ShopText.AtLeast(Grip(bit), job.Unit)} of shank in the collet.";
        yield return job.Dialect.SpindleLines.IsEmpty || job.Machine.SwitchedByHand
            ? $"Set the spindle to {Speed(cut)} by hand and start it before the program."
            : $"The program starts the spindle at {Speed(cut)}.";
    }

    internal static IEnumerable<(string Term, string Value)> Figures(Job job, CutPlan cut)
    {
        string Say(double mm) => ShopText.Size(mm, job.Unit);
        CutSettings s = cut.Settings;
        yield return ("Stock", $"{cut.Clamping.Make.Material.Name}, {Say(cut.Clamping.Make.Thickness)}");
        yield return ("Lies", "as laid: face up, profile edge towards you");
        yield return ("Speed", Speed(cut));
        yield return ("Feed", SheetWords.Feed(s.Feed, job.Unit));
        yield return ("Ramp, plunge", $"{SheetWords.Feed(s.RampFeed, job.Unit)}, {SheetWords.Feed(s.Plunge, job.Unit)}");
        yield return ("Chip a tooth", SheetWords.Fine(s.ChipLoad, job.Unit));
        yield return ("Depth", $"{Steps(s.Steps)} of {Say(s.Steps[0])}, {Say(s.Overcut)} into the spoilboard");
        yield return ("Side push", $"moves bit and frame {SheetWords.Fine(s.GivesWay, job.Unit)} in a finishing pass");
        if (cut.Tabs.Length > 0)
        {
            yield return ("Tabs", string.Create(
                CultureInfo.InvariantCulture, $"{cut.Tabs.Length / cut.Clamping.Pieces.Length} a piece, {Say(s.TabLength)} long, {Say(s.TabHeight)} high"));
        }

        Box2 room = cut.Path.Extent;
        yield return ("Room needed", $"X {ShopText.Room(room.MinX, room.MaxX, job.Unit)}, Y {ShopText.Room(room.MinY, room.MaxY, job.Unit)} from zero");
    }

    internal static IReadOnlyList<string> Pass(Job job, CutPlan cut, Run run) =>
    [
        run.Name,
        ShopText.Size(run.Depth, job.Unit) + (run.Name.StartsWith("Rough", StringComparison.Ordinal) ? $" in {Steps(cut.Settings.Steps)}" : $" {Finish(cut.Settings)}"),
        SheetWords.Feed(run.Feed, job.Unit),
        run.Climb ? "climb" : "conventional",
        run.Reason,
    ];

    // Common practice: two shank diameters or 19 mm, whichever is more.
    private static double Grip(Bit bit) => Math.Max(2 * bit.Shank, 19);

    private static string Steps(System.Collections.Immutable.ImmutableArray<double> steps) =>
        steps.Length == 1 ? "one pass" : string.Create(CultureInfo.InvariantCulture, $"{steps.Length} passes");

    private static string Finish(CutSettings s) =>
        (s.FinishSteps.Length == 1 ? "at once" : "in " + Steps(s.FinishSteps)) + (s.CleanUp ? ", then once more at full depth" : "");

    private static string Speed(CutPlan cut) => string.Create(CultureInfo.InvariantCulture, $"{cut.Path.Speed:0} rpm");
}
