using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Clampings;

/// <summary>
/// Lays the end of a board over the spoilboard: face up, reference edge at the fence, profile edge towards you, end at your right. Work zero is
/// where the fence meets the finished tip, so the board lies at negative X and Y.
/// </summary>
internal static class BoardLayout
{
    /// <summary>One end a clamping.</summary>
    internal static Clamping Lay(Job job, BoardEndMake make, Piece end, double track)
    {
        var at = new Placement(Math.PI, default, false);
        double rawTip = make.EndAllowance;
        (double bottom, double top) = Clamping.Heights(job, make.Thickness);
        var stock = new Box2(-make.OnBed, -make.DesignWidth, rawTip, 0);

        // The travel begins where the bit must reach past the fence line and past the raw tip.
        double right = rawTip + track;
        double far = track;
        return new Clamping(
            make.Id,
            make,
            [new Placed(end, 1, at, end.Exact.Placed(at))],
            new StockOnBed(stock, bottom, top),
            Lie.AsLaid,
            new Box2(right - job.Machine.TravelX, far - job.Machine.TravelY, right, far),
            make.Count);
    }
}
