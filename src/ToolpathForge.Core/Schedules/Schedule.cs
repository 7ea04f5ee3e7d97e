using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Schedules;

/// <summary>What to buy of one size of one timber.</summary>
/// <param name="Board">The size.</param>
/// <param name="Material">The timber.</param>
/// <param name="Plan">The lengths.</param>
/// <param name="Used">Length of all the pieces, mm.</param>
public sealed record BuyingLine(Lumber Board, Material Material, StockPlan Plan, double Used)
{
    /// <summary>Length bought in all, mm.</summary>
    public double Bought => Plan.Lengths.Sum(l => l.Bought);
}

/// <summary>Boards to saw to length at an angle before they come to the machine.</summary>
/// <param name="Make">What they are for.</param>
/// <param name="Count">How many.</param>
/// <param name="LongPoint">Length from long point to long point, or to the square other end, mm.</param>
/// <param name="Angle">How far the cut is from square, degrees.</param>
/// <param name="LongOnReference">Whether the long point is on the reference edge.</param>
public sealed record SawLine(BoardEndMake Make, int Count, double LongPoint, double Angle, bool LongOnReference);

/// <summary>Lists that follow from a job alone: what to buy and what to saw.</summary>
public static class Schedule
{
    /// <summary>The buying list by size and timber, in the order in which the job first names them; empty when the job does not say what is sold.</summary>
    /// <param name="job">The job.</param>
    public static ImmutableArray<BuyingLine> Buying(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return job.Buying.Lengths.IsEmpty
            ? []
            :
            [
                .. job.Makes.OfType<BoardEndMake>().GroupBy(m => (m.Board.Id, Timber: m.Material.Id)).Select(g => new BuyingLine(
                    g.First().Board,
                    g.First().Material,
                    StockCutting.Plan([.. g.Select(m => new PieceLength(m.BoardLength, m.Batch.Count))], job.Buying.Lengths, job.Buying.Kerf, job.Buying.Trim),
                    g.Sum(m => m.BoardLength * m.Batch.Count))),
            ];
    }

    /// <summary>The saw list, in the job's order: makes whose end cuts are sawn first.</summary>
    /// <param name="profiles">The makes with their profiles.</param>
    public static ImmutableArray<SawLine> SawFirst(IEnumerable<(ProfileMake Make, Profile Profile)> profiles) =>
    [
        .. profiles.Where(p => p.Make is BoardEndMake { Batch.EndsSawn: true }).Select(p =>
        {
            var make = (BoardEndMake)p.Make;
            (double angle, bool top) = EndAngle(p.Profile);
            return new SawLine(make, make.Batch.Count, make.Batch.FinishedLength, angle, top);
        }),
    ];

    /// <summary>How far the end cut of a profile is from square, degrees, and whether its long point is on the reference edge.</summary>
    private static (double Angle, bool LongOnReference) EndAngle(Profile profile)
    {
        int last = profile.Roles.LastIndexOf(EdgeRole.EndCut);
        if (last < 0)
        {
            return (0, true);
        }

        Geometry.Point2 way = profile.Exact.Curves[last].DirectionAt(1);
        return (Math.Abs(Math.Atan2(way.X, -way.Y)) * 180 / Math.PI, way.X <= 0);
    }
}
