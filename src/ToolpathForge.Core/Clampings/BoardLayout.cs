using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Clampings;

/// <summary>
/// Lays the ends of boards over the spoilboard: face up, reference edge away from you, profile edge towards you, end at your right. Work zero is
/// where the fence meets the finished tip, so the boards lie at negative X and Y; the first lies against the fence, the others nearer to you,
/// each with its own stop.
/// </summary>
internal static class BoardLayout
{
    /// <summary>
    /// How far past the ends the bit parks where the travel allows it, mm (judgement): half the body of a router, about 40 mm, and a hand beside it.
    /// </summary>
    private const double ParkRoom = 80;

    /// <summary>
    /// The clamping of one make. The first ends of all boards come first, then the second ends: the stops are moved once. Boards that are left
    /// over are spread evenly, so that no run is left with a lone board when two would do.
    /// </summary>
    /// <param name="job">Says where Z is zero, and on what machine.</param>
    /// <param name="make">What is made.</param>
    /// <param name="end">The piece.</param>
    /// <param name="track">Room that the bit's track takes beside a piece, mm.</param>
    internal static Clamping Lay(Job job, BoardEndMake make, Piece end, double track)
    {
        BoardBatch batch = make.Batch;
        (double bottom, double top) = Clamping.Heights(job, make.Thickness);
        double gap = batch.Gap ?? Math.Max(LeastGap(make), make.FenceRoom);
        double width = Math.Max(batch.Widest, make.DesignWidth);
        int runs = (batch.Count + batch.Abreast - 1) / batch.Abreast;
        int abreast = (batch.Count + runs - 1) / runs;
        ImmutableArray<Placed> placed = [.. Enumerable.Range(0, abreast).Select(i => Place(make, end, i, -i * (width + gap), width))];
        Box2 stock = placed.Aggregate(Box2.Empty, (all, p) => all.Union(p.Block));

        // The travel begins where the bit must reach past the fence line and past the raw tip, and has room there to park while hands are at the ends.
        double right = make.EndAllowance + track;
        right += Math.Clamp(job.Machine.TravelX - make.OnBed - right, 0, ParkRoom);
        double far = track;
        return new Clamping(
            make.Id,
            placed,
            new StockOnBed(stock, bottom, top),
            Lie.AsLaid,
            new Box2(right - job.Machine.TravelX, far - job.Machine.TravelY, right, far),
            runs * (batch.BothEnds ? 2 : 1))
        {
            KeepOuts = [Fence(make, stock, top, job.Tolerance), .. Obstacles.Clamps([make], bottom)],
            Turns = [.. Turns(batch, abreast, runs)],
            Gap = abreast > 1 ? gap : 0,
            Waits = batch.Paused && runs * (batch.BothEnds ? 2 : 1) > 1,
        };
    }

    /// <summary>Least room between boards side by side: the bit beside either, and 2 mm at each side of it (common practice), mm.</summary>
    internal static double LeastGap(BoardEndMake make) => 2 * (make.Bit.Radius + 2);

    private static Placed Place(BoardEndMake make, Piece end, int index, double edge, double width)
    {
        var at = new Placement(Math.PI, new Point2(0, edge), false);
        return new Placed(end, index + 1, at, end.Exact.Placed(at), new Box2(-make.OnBed, edge - width, make.EndAllowance, edge));
    }

    // The fence may be cut as far as the job allows, and no further than rounding past it. It is taken to be no higher than the boards.
    private static KeepOut Fence(BoardEndMake make, Box2 stock, double top, double slack)
    {
        const double Thick = 100;
        const double PastTip = 300;
        return new KeepOut("fence", new Box2(stock.MinX, make.FenceRoom + slack, stock.MaxX + PastTip, make.FenceRoom + Thick), top);
    }

    private static IEnumerable<BoardTurn> Turns(BoardBatch batch, int abreast, int runs)
    {
        (int Number, MeasuredBoards Board)[] boards = [.. batch.Numbered];
        for (int end = 1; end <= (batch.BothEnds ? 2 : 1); end++)
        {
            for (int i = 0; i < boards.Length; i++)
            {
                int run = i / abreast;
                yield return new BoardTurn(((end - 1) * runs) + run + 1, (i % abreast) + 1, boards[i].Number, end, boards[i].Board);
            }
        }
    }
}
