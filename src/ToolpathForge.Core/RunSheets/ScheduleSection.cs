using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Cutting;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Schedules;

namespace ToolpathForge.RunSheets;

/// <summary>Lists over the whole job: how many ends, what to buy, what to saw first, how far each bit cuts.</summary>
internal static class ScheduleSection
{
    internal static void Write(Html page, Plan plan)
    {
        Job job = plan.Job;
        BoardEndMake[] makes = [.. job.Makes.OfType<BoardEndMake>()];
        if (makes.Sum(m => m.Batch.Ends) > 1)
        {
            page.Element("h3", "Tally of the boards").Table(
                ["Board end", "Size", "Boards", "Ends", "Finished length", "Done"],
                makes.Select(m => (IReadOnlyList<string>)
                [
                    m.Id, m.Board.Id, Number(m.Batch.Count), Number(m.Batch.Ends), ShopText.Size(m.Batch.FinishedLength, job.Unit), "",
                ]).Append(["all", "", Number(makes.Sum(m => m.Batch.Count)), Number(makes.Sum(m => m.Batch.Ends)), "", ""]));
        }

        Buying(page, job);
        ImmutableArray<SawLine> saw = Schedule.SawFirst(plan.Pieces.OfType<ProfilePiece>().Select(p => (p.Make, p.Profile)));
        if (!saw.IsEmpty)
        {
            page.Element("h3", "On the mitre saw, before the machine").Table(
                ["For", "Boards", "Length", "Angle from square", "Long point", "Ends"],
                saw.Select(s => (IReadOnlyList<string>)
                [
                    s.Make.Id,
                    Number(s.Count),
                    ShopText.Size(s.LongPoint, job.Unit),
                    s.Angle.ToString("0.#", CultureInfo.InvariantCulture) + "°",
                    s.Angle < 0.05 ? "square" : s.LongOnReference ? "on the reference edge" : "on the profile edge",
                    s.Make.Batch.BothEnds ? (s.Angle < 0.05 ? "both" : "both, mirrored") : "one, the other square",
                ]));
        }

        Bits(page, plan);
    }

    private static void Buying(Html page, Job job)
    {
        ImmutableArray<BuyingLine> buying = Schedule.Buying(job);
        if (buying.IsEmpty)
        {
            return;
        }

        string Say(double mm) => ShopText.Size(mm, job.Unit);
        page.Element("h3", "What to buy").Table(
            ["Size", "Timber", "Buy", "Length", "Saw from each"],
            buying.SelectMany(line => line.Plan.Lengths
                .GroupBy(l => (l.Bought, Cuts: string.Join(" + ", l.Pieces.GroupBy(p => p).Select(p => $"{Number(p.Count())} x {Say(p.Key)}"))))
                .Select(g => (IReadOnlyList<string>)[line.Board.Id, line.Material.Name, Number(g.Count()), Sold(g.Key.Bought, job.Unit), g.Key.Cuts])
                .Concat(line.Plan.Oversize.Select(o => (IReadOnlyList<string>)
                    [line.Board.Id, line.Material.Name, Number(o.Count), Say(o.Length), "longer than the yard sells: ask for it"]))));
        page.Element("p", $"Counted with {Say(job.Buying.Kerf)} for each saw cut and {Say(job.Buying.Trim)} off either end. "
            + string.Join(" ", buying.Where(l => l.Bought > 0).Select(l =>
                $"{l.Board.Id}: {Far(l.Bought, job.Unit)} bought, {((1 - ((l.Used - l.Plan.Oversize.Sum(o => o.Length * o.Count)) / l.Bought)) * 100).ToString("0", CultureInfo.InvariantCulture)} % waste{(l.Plan.IsLeast ? "" : " (perhaps not the least)")}."))
            + " Buy one or two more: ends split, and the fence wants a trial piece.");
    }

    private static void Bits(Html page, Plan plan)
    {
        var bits = plan.Programs
            .SelectMany(p => p.Cut.Works.Select(w => (Bit: w.Path.Bit.Name, Length: w.Path.CutLength * p.Cut.Clamping.Times)))
            .GroupBy(w => w.Bit, StringComparer.Ordinal)
            .Select(g => (Bit: g.Key, Length: g.Sum(w => w.Length)))
            .ToArray();
        page.Element("h3", "How far each bit cuts").Table(
            ["Bit", "Over the whole job"],
            bits.Select(b => (IReadOnlyList<string>)[b.Bit, Far(b.Length, plan.Job.Unit)]));
    }

    // The yard speaks of whole feet.
    private static string Sold(double millimetres, LengthUnit unit) =>
        unit == LengthUnit.Inch && Math.Abs((millimetres / 304.8) - Math.Round(millimetres / 304.8)) < 1e-6 ? Far(millimetres, unit) : ShopText.Size(millimetres, unit);

    private static string Far(double millimetres, LengthUnit unit) => unit == LengthUnit.Inch
        ? string.Create(CultureInfo.InvariantCulture, $"{millimetres / 304.8:0} ft")
        : string.Create(CultureInfo.InvariantCulture, $"{millimetres / 1000:0.#} m");

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}
