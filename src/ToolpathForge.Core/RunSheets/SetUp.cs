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
        if (cut.Part > 1)
        {
            yield return $"Leave everything clamped as it lay for {NameOf(cut, cut.Part - 1)}: nothing is sawn, turned or moved, and X0 and Y0 stay. Unplug the spindle, change the bit, and touch Z0 off again.";
        }
        else if (clamping.Make.Sheet is { } sheet)
        {
            yield return $"Saw a blank of {sheet.Panel.Name} at least {ShopText.AtLeast(stock.Width, job.Unit)} by {ShopText.AtLeast(stock.Height, job.Unit)}, and check with a caliper that it is {Say(clamping.Make.Thickness)} thick.";
            yield return $"Lay it flat on the spoilboard, face up, long side along X. Screw or clamp it within {Rim(job.Unit)} of its rim, clear of the lines in the picture; the whole head of a screw lies within that, "
                + "and is sunk flush: the bit passes over.";
            yield return "Work zero: X0 Y0 is the near left corner of the blank.";
        }
        else if (clamping.Make is BoardEndMake end)
        {
            foreach (string step in BoardSteps.Of(job, cut, end))
            {
                yield return step;
            }
        }

        if (cut.Part < cut.Parts)
        {
            yield return $"{NameOf(cut, cut.Part + 1)} follows on the same clamping with another bit: take nothing off until {NameOf(cut, cut.Parts)} has ended"
                + $"{(clamping.Starts > 1 ? ", and run them all before the next is laid" : "")}.";
        }

        yield return job.Zero == ZeroHeight.Bed
            ? "Z0 is the top of the spoilboard, touched off beside the stock."
            : "Z0 is the upper face of the stock.";
        for (int i = 0; i < cut.Works.Length; i++)
        {
            yield return OfBit(job, clamping.Make, cut.Works[i], i, clamping.Rise(job) - job.Clearance);
        }

        foreach (string step in RunSteps.Of(job, cut))
        {
            yield return step;
        }

        foreach (string held in HeldWords.Steps(cut))
        {
            yield return held;
        }

        if (!cut.Works[^1].Outline)
        {
            yield break;
        }

        if (clamping.Make is ProfileMake { Hand.Machined: { } machined })
        {
            yield return $"This program cuts {Say(machined)} deep only. The rest is sawn and finished by hand: see \"By hand\" below.";
        }
        else if (cut.Settings.Skin > 0)
        {
            yield return $"A skin of {Say(cut.Settings.Skin)} stays under the whole cut. Turn the sheet, cut the skin with a knife, and trim it flush with a block plane.";
        }
    }

    /// <summary>How much of a blank's rim is free for screws, in words: the free rim of a layout less the gap that metal is kept at, down to a mark of a rule.</summary>
    private static string Rim(LengthUnit unit) => ShopText.Size(ShopText.Down(PanelLayout.Rim + CutSettings.TrackSpare - Clamping.MetalGap, unit), unit);

    private static string NameOf(CutPlan cut, int part) => string.Create(CultureInfo.InvariantCulture, $"{cut.Clamping.Name}-{part}");

    private static string OfBit(Job job, Make make, BitWork work, int index, double over)
    {
        Bit bit = work.Path.Bit;
        var limits = StickOut.For(bit, work.Settings.Steps[^1] + over, make.Thickness + job.Spoilboard, job.Machine.Opening, job.Clearance);
        string speed = string.Create(CultureInfo.InvariantCulture, $"{work.Path.Speed:0} rpm");
        string first = index == 0 ? "Bit" : string.Create(CultureInfo.InvariantCulture, $"Bit {index + 1}, at the change");
        string spindle = job.Dialect.SpindleLines.IsEmpty || job.Machine.SwitchedByHand
            ? $"Set the spindle to {speed} by hand{Dial(job.Machine, work.Path.Speed)} and start it before the program."
            : $"The program starts the spindle at {speed}.";
        return $"{first}: {bit.Name}. Let it stick out {ShopText.AtLeast(limits.Least, job.Unit)} to {ShopText.Size(ShopText.Down(limits.Most, job.Unit), job.Unit)}{(limits.AllowsDryRun ? "" : " (this leaves no room to raise it for a run above the work)")}: no flutes in the collet, at least {ShopText.AtLeast(Grip.Least(bit.Shank), job.Unit)} of shank in it, and its end {ShopText.AtLeast(StickOut.OffBottom, job.Unit)} off the collet's bottom. {spindle}{(work.Outline || !work.Openings.IsEmpty ? Fraying.Of(bit) : "")}";
    }

    private static string Dial(Machine machine, double speed) => machine.DialFor(speed) is { } mark
        ? string.Create(CultureInfo.InvariantCulture, $", about {mark:0.##} on a dial marked 1 to {machine.DialMarks} (the table in the router's manual wins),")
        : "";

    internal static IEnumerable<(string Term, string Value)> Figures(Job job, CutPlan cut)
    {
        string Say(double mm) => ShopText.Size(mm, job.Unit);
        yield return ("Stock", $"{cut.Clamping.Make.Material.Name}, {Say(cut.Clamping.Make.Thickness)}");
        yield return ("Lies", Lies(cut.Clamping));
        for (int i = 0; i < cut.Works.Length; i++)
        {
            CutSettings w = cut.Works[i].Settings;
            string which = cut.Works.Length == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $", bit {i + 1}");
            yield return ($"Speed{which}", string.Create(CultureInfo.InvariantCulture, $"{w.Speed:0} rpm"));
            yield return ($"Feed{which}", SheetWords.Feed(w.Feed, job.Unit) + (w.SlotFeed < w.Feed ? $", {SheetWords.Feed(w.SlotFeed, job.Unit)} in slots" : ""));
            yield return ($"Ramp, plunge{which}", $"{SheetWords.Feed(w.RampFeed, job.Unit)}, {SheetWords.Feed(w.Plunge, job.Unit)}");
            yield return ($"Chip load{which}", SheetWords.Fine(w.ChipLoad, job.Unit));
        }

        CutSettings s = cut.Settings;
        yield return ("Depth", $"{Steps(s.Steps)} of {Say(s.Steps[0])}{(s.Overcut > 0 ? $", {Say(s.Overcut)} into the spoilboard" : "")}");
        if (cut.Works[^1].Outline)
        {
            yield return ("Deflection, estimated", $"bit and frame {SheetWords.Estimated(s.GivesWay, job.Unit)} in a finishing pass, by forces and stiffness from memory");
        }

        if (cut.Tabs.Length > 0)
        {
            string pieces = Each(cut.Tabs.Where(t => t.Tab.Opening is null).GroupBy(t => (t.Piece, t.Tab.Opening)).Select(g => g.Count()), "piece");
            string openings = Each(cut.Tabs.Where(t => t.Tab.Opening is not null).GroupBy(t => (t.Piece, t.Tab.Opening)).Select(g => g.Count()), "opening");
            yield return ("Tabs", $"{pieces}{(openings.Length > 0 ? $", {openings}" : "")}, {Say(s.TabLength)} long at the top{(Array.Exists([.. cut.Tabs], t => t.Tab.Reach > t.Tab.Flat) ? $", {Say(s.TabLength + (2 * s.TabSide(s.TabHeight)))} at the lower face with their slopes" : "")}, {Say(s.TabHeight)} high");
        }

        if (job.Axes != AxisErrors.None)
        {
            yield return ("Made up for", string.Create(
                CultureInfo.InvariantCulture, $"X goes {job.Axes.ScaleX:0.00000}, Y {job.Axes.ScaleY:0.00000} of what it is told; Y leans {job.Axes.Skew * 180 / Math.PI:0.000}° to the right"));
        }

        if (cut.Clamping.Make.Sheet is not null)
        {
            yield return ("Becomes pieces", OffcutWords.UsedShare(cut.Clamping) + " of the blank");
            string[] offcuts = [.. OffcutWords.Of(cut).Select(o => OffcutWords.Size(o, job.Unit))];
            if (offcuts.Length > 0)
            {
                yield return ("Offcuts", string.Join("; ", offcuts));
            }
        }

        foreach ((string Term, string Value) figure in RunSteps.Figures(job, cut))
        {
            yield return figure;
        }

        Box2 room = cut.Works.Aggregate(Box2.Empty, (all, work) => all.Union(work.Path.Extent));
        yield return ("Room needed", $"X {ShopText.Room(room.MinX, room.MaxX, job.Unit)}, Y {ShopText.Room(room.MinY, room.MaxY, job.Unit)} from zero");
    }

    private static string Each(IEnumerable<int> counts, string what)
    {
        int[] each = [.. counts];
        return each.Length == 0 ? ""
            : each.Min() == each.Max() ? string.Create(CultureInfo.InvariantCulture, $"{each[0]} {(what == "opening" ? "an" : "a")} {what}")
            : string.Create(CultureInfo.InvariantCulture, $"{each.Min()} to {each.Max()} {(what == "opening" ? "an" : "a")} {what}");
    }

    private static string Lies(Clamping clamping) => clamping switch
    {
        { Make.Sheet: not null } when clamping.Pieces.Any(p => p.Placement.Turn != Math.PI) => "face up, turned as the picture shows",
        { Make: OutlineMake } => "face up, as drawn",
        { Make: BoardEndMake end } => $"{Fraying.Up(end)}, profile edge towards you{(end.Batch.BothEnds ? "; second ends end over end" : "")}",
        _ => "as laid: face up, profile edge towards you",
    };

    internal static IReadOnlyList<string> Pass(Job job, BitWork work, Run run) =>
    [
        run.Name,
        ShopText.Size(run.Depth, job.Unit) + HowDeep(work.Settings, run.Kind),
        SheetWords.Feed(run.Feed, job.Unit),
        run.Kind == RunKind.Engraving ? "along strokes" : run.Climb ? "climb" : "conventional",
        run.Reason,
    ];

    private static string Steps(System.Collections.Immutable.ImmutableArray<double> steps) =>
        steps.Length == 1 ? "one pass" : string.Create(CultureInfo.InvariantCulture, $"{steps.Length} passes");

    private static string HowDeep(CutSettings s, RunKind kind) => kind switch
    {
        RunKind.Engraving => "",
        RunKind.Finishing => " " + Finish(s),
        _ => $" in {Steps(s.Steps)}",
    };

    private static string Finish(CutSettings s) =>
        (s.FinishSteps.Length == 1 ? "at once" : "in " + Steps(s.FinishSteps)) + (s.CleanUp ? ", then once more at full depth" : "");
}
