using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Cutting;

/// <summary>
/// Where the bit stands while hands are on the bed: at a bit change straight up where it was, between boards and at the end of a program up and out of the way.
/// </summary>
internal static class Parking
{
    /// <summary>Highest above the height of travel, mm (judgement): a hand passes under the bit; more would ask for travel that nobody has measured.</summary>
    private const double Most = 50;

    /// <summary>
    /// Height of a stop, in the program's Z, mm: the height of travel, and above it as much as the machine is known to reach, up to <see cref="Most"/>. It rests on three things. Z travels as far
    /// as its row says, and at the deepest cut it is still within that travel. Raised all the way, the collet stands no lower than the height under the gantry. And the bit sticks out as far
    /// as the least grip allows, which is the most that the sheet lets it. What the dry run is raised by is kept free above.
    /// </summary>
    /// <param name="job">Says the machine, the spoilboard and the clearance.</param>
    /// <param name="clamping">What lies on the bed.</param>
    /// <param name="bits">What the bits do.</param>
    internal static double Height(Job job, Clamping clamping, ImmutableArray<BitTask> bits)
    {
        double travel = clamping.Stock.Top + clamping.Rise(job);
        double deepest = clamping.Stock.Top - bits.Max(t => t.Settings.Steps[^1]);
        double stickOut = bits.Max(t => Grip.MostStickOut(t.Bit.OverallLength, t.Bit.Shank));
        double reach = Math.Min(deepest + job.Machine.TravelZ, clamping.Stock.Bottom + job.Machine.Opening - job.Spoilboard - stickOut);
        return Math.Clamp(Math.Floor(reach - DryRun(travel, deepest)), travel, travel + Most);
    }

    /// <summary>What Z zero is raised by for a run above the work, mm: the deepest pass then goes at the height of travel, clear of everything.</summary>
    /// <param name="travel">Height of travel, mm.</param>
    /// <param name="deepest">Height of the deepest cut, mm.</param>
    internal static double DryRun(double travel, double deepest) => travel - deepest;

    /// <summary>
    /// The place out of the way, seen from above. Boards: past their ends and behind the fence, off all of them and off where the next is laid. A panel: the far right corner of what the
    /// program needs anyway, so that nothing but the blank's corner lies under it.
    /// </summary>
    /// <param name="clamping">What lies on the bed.</param>
    /// <param name="needed">Where the bit goes anyway.</param>
    internal static Point2 Place(Clamping clamping, Box2 needed) => clamping.Make.Sheet is null
        ? new Point2(clamping.Travel.MaxX, clamping.Travel.MaxY)
        : new Point2(needed.MaxX, needed.MaxY);

    /// <summary>The path with its end brought up and out of the way: it is the last of its program.</summary>
    /// <param name="path">A path that ends at a stop's height.</param>
    /// <param name="clamping">What lies on the bed.</param>
    internal static Toolpath Parked(Toolpath path, Clamping clamping)
    {
        Point2 place = Place(clamping, path.Extent);
        return path with { Moves = path.Moves.Add(new Move(MoveKind.Rapid, new Point3(place, path.Moves[^1].End.Z), 0, 0, Purpose.Travel, -1)) };
    }
}
