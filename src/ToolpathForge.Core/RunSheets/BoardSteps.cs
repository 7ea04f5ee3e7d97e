using System.Globalization;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;

namespace ToolpathForge.RunSheets;

/// <summary>How boards are brought to the bed, one step a sentence or two.</summary>
internal static class BoardSteps
{
    /// <summary>A stop set with a tape, mm: what the second end may be off (common practice, 1/32 in).</summary>
    private const double StopTolerance = 25.4 / 32;

    internal static IEnumerable<string> Of(Job job, CutPlan cut, BoardEndMake end)
    {
        string Say(double mm) => ShopText.Size(mm, job.Unit);
        Clamping clamping = cut.Clamping;
        BoardBatch batch = end.Batch;
        int abreast = clamping.Pieces.Length;
        if (batch.RawLength > end.BoardLength + 0.5)
        {
            yield return $"Saw the board{(batch.Count > 1 ? "s" : "")} to {Say(end.BoardLength)} first.";
        }

        if (batch.EndsSawn)
        {
            yield return "Saw the end cuts to the list on the first page, to the line and never short of it; the bit goes over them and takes what the saw has left.";
        }

        if (batch.Waste == Waste.Sawn)
        {
            yield return $"Mark the profile and saw the waste off {Say(batch.SawMargin)} outside the line (the dashed line in the picture); the bit takes the rest.";
        }

        yield return (abreast == 1
                ? $"Lay the board flat, {Fraying.Up(end)}, its profile edge towards you, its end at your right, {Say(end.OnBed)} of it on the bed. The reference edge lies against the fence; "
                : $"Lay {abreast.ToString(CultureInfo.InvariantCulture)} boards flat, {Fraying.Up(end)}, profile edges towards you, ends at your right, {Say(end.OnBed)} of each on the bed. "
                    + $"The reference edge of the first lies against the fence; strips keep the next {Say(clamping.Gap)} away from it, and stop short of the end by a hand's width. Each has a stop of its own; ")
            + (batch.EndsSawn ? "the sawn tip is the finished one." : $"the raw end stands {Say(end.EndAllowance)} past the finished tip.");
        if (abreast > 1 && batch.Boards.Any(b => b.Width != batch.Widest))
        {
            yield return $"The places are {Say(clamping.Pieces[0].Block.Height + clamping.Gap)} apart from reference edge to reference edge, whatever a board measures: pack narrow ones out.";
        }

        string hang = Say(Math.Max(0, end.BoardLength - end.OnBed));
        yield return $"Clamp {(abreast == 1 ? "it" : "them")} clear of the lines in the picture, and hold up the {hang} that hang out{(end.Stand ? " with the stand at bed height" : "")}."
            + Held(batch, clamping, Say(ShopText.Down(WasteScrews.Longest(end.Thickness, job.Spoilboard), job.Unit)), Say);
        yield return $"The fence must be sacrificial and free of metal for {Say(end.FenceRoom)} behind its face near the end. Swing the flip stop{(abreast == 1 ? "" : "s")} away before you start.";
        if (batch.BothEnds)
        {
            yield return "Second ends, when all first ones are done: turn each board end over end, so that the other end comes to your right and the other face up; the reference edge goes back to the fence."
                + Fraying.SecondEnds(end) + " "
                + $"Set a stop against the finished tip, {Say(batch.FinishedLength)} to the left of X0. A stop set with a tape holds {Say(StopTolerance)}; the finished length is as good as that.";
        }

        yield return "Work zero: X0 is the finished tip, Y0 the face of the fence. The board lies at minus X and minus Y.";
    }

    private static string Held(BoardBatch batch, Clamping clamping, string longest, Func<double, string> say)
    {
        string At(Point2 p) => $"{say(-p.X)} in from the tip and {say(-p.Y)} from the fence";
        return batch.Waste switch
        {
            Waste.Screwed when clamping.Screws.Length > 0 =>
                $" Screw the waste to the spoilboard, heads flush, where the picture shows them: {string.Join("; ", clamping.Screws.Select(At))}. Drill {say(WasteScrews.Pilot)} first, or the end splits; screws of {say(WasteScrews.Diameter)}, no longer than {longest} or they meet the bed.",
            Waste.Clamped => " The clamp on the waste stays until the spindle stands still.",
            Waste.Chips => " Nothing comes loose: the waste is cut to chips.",
            Waste.Sawn => "",
            _ => " What comes off is a scrap, and flies: stand clear of it, with your eyes guarded.",
        };
    }
}
