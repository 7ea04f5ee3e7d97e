using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Cutting;

/// <summary>A stretch of the finished edge cut in one go, in one direction.</summary>
/// <param name="From">Distance along the profile, piece on its left, where it begins, mm.</param>
/// <param name="To">Where it ends, mm; more than <paramref name="From"/> whichever way it is cut.</param>
/// <param name="Climb">True when it is cut against the profile's own direction, the piece on the right of the travel.</param>
/// <param name="Reason">Why, one sentence.</param>
public sealed record FinishRun(double From, double To, bool Climb, string Reason);

/// <summary>How the finished edge of a piece is split into runs.</summary>
/// <param name="CornersFirst">Ends of the profile that are cut first, from the edge inwards, before roughing at each depth and before the finish.</param>
/// <param name="Runs">The rest, in order along the profile, meeting end to end.</param>
public sealed record FinishPlan(ImmutableArray<FinishRun> CornersFirst, ImmutableArray<FinishRun> Runs)
{
    /// <summary>
    /// Direction of roughing. The whole length goes one way, half a millimetre from the finished edge and at the full depth of a step, and splits run deeper than that: so if any stretch has
    /// to be climbed, roughing climbs all of it. Where the grain is with the tooth that does no harm, since the feed never changes which way the tooth runs along the edge.
    /// </summary>
    public bool RoughClimbs => Runs.Any(r => r.Climb);
}

/// <summary>Chooses the runs of a finish by the grain.</summary>
internal static class FinishRuns
{
    /// <summary>
    /// A corner is cut first when the tooth, leaving it, would break out the long-grain face beyond: risk = max(0, v1·n2)·|g·t2| for the edge
    /// that arrives (direction v1) and the face that follows (outward normal n2, direction t2), g the fibres. 1 for a square corner. Where it begins is a judgment.
    /// </summary>
    internal const double CornerRisk = 0.5;

    /// <summary>Length cut first at such a corner: the bit's diameter, at least this, mm (common practice).</summary>
    internal const double LeastCorner = 10;

    private const string WithGrain = "With the grain: the fibers rise out ahead of the tooth, so a conventional cut starts thin at the finished edge and splits run into the waste.";
    private const string AgainstGrain = "Against the grain: a light climb cut ends with nothing at the finished edge, where a conventional one would lift the fibers.";
    private const string Either = "Along or across the grain: either way serves, so it goes on as its neighbor does.";
    private const string CornerReason = "The tooth would break out the long face as it leaves this corner, so the corner is cut first, from that face inwards.";

    /// <summary>Splits a profile.</summary>
    /// <param name="profile">Open, piece on its left.</param>
    /// <param name="fibres">
    /// Directions of the fibres in the profile's frame that the split must serve, radians: none for a panel, two where both ends of a board with
    /// sloping grain come from one program. Where one of them is against the grain the edge is cut for that one.
    /// </param>
    /// <param name="after">Direction of the piece's edge that follows the profile's end.</param>
    /// <param name="choice">What the job asks for.</param>
    /// <param name="diameter">Of the bit, mm.</param>
    internal static FinishPlan For(Contour profile, ImmutableArray<double> fibres, Point2 after, DirectionChoice choice, double diameter)
    {
        double length = profile.Length;
        if (choice != DirectionChoice.ByGrain || fibres.IsEmpty)
        {
            return new FinishPlan([], [OneWay(length, choice)]);
        }

        ImmutableArray<FinishRun> runs = Merge(Stretches(profile, fibres), length);
        Point2 arriving = profile[profile.SegmentCount - 1].EndDirection;
        if (fibres.Max(f => Risk(arriving, after, f)) < CornerRisk || runs[^1].Climb)
        {
            return new FinishPlan([], runs);
        }

        double corner = Math.Min(Math.Max(diameter, LeastCorner), length / 2);
        FinishRun first = new(length - corner, length, true, CornerReason);
        ImmutableArray<FinishRun> rest = [.. runs.Where(r => r.From < first.From - 1e-9).Select(r => r with { To = Math.Min(r.To, first.From) })];
        return new FinishPlan([first], rest);
    }

    /// <summary>How likely the tooth is to break out the face beyond a corner, 0 to 1; see <see cref="CornerRisk"/>.</summary>
    /// <param name="arriving">Unit direction of the edge that ends at the corner, the piece on its left.</param>
    /// <param name="after">Unit direction of the edge that begins there.</param>
    /// <param name="fibre">Direction of the fibers, radians.</param>
    internal static double Risk(Point2 arriving, Point2 after, double fibre) => Math.Max(0, arriving.Dot(after.Right)) * Math.Abs(Point2.Direction(fibre).Dot(after));

    /// <summary>
    /// The whole edge in one direction: as the job asks, or, for a panel, climbing, which left the better edge in fibreboard
    /// (Maderas. Ciencia y tecnología 12(3), 2010).
    /// </summary>
    /// <param name="length">Of the edge, mm.</param>
    /// <param name="choice">What the job asks for.</param>
    internal static FinishRun OneWay(double length, DirectionChoice choice) => choice switch
    {
        DirectionChoice.Climb => new(0, length, true, "The job asks for a climb finish."),
        DirectionChoice.Conventional => new(0, length, false, "The job asks for a conventional finish."),
        _ => new(0, length, true, "A panel has no grain to follow; a climb finish leaves the cleaner edge."),
    };

    // The classes for one direction of the fibres; for several, the least kind of them between any two limits: against, then with, then neither.
    private static ImmutableArray<(double From, GrainClass Class)> Stretches(Contour profile, ImmutableArray<double> fibres)
    {
        ImmutableArray<GrainStretch>[] all = [.. fibres.Select(f => Grain.Along(profile, f))];
        return
        [
            .. all.SelectMany(s => s.Select(g => g.From)).Distinct().Order().Select(from =>
            {
                GrainClass[] here = [.. all.Select(s => s.Last(g => g.From <= from).Class)];
                return (from, here.Contains(GrainClass.Against) ? GrainClass.Against : here.Contains(GrainClass.With) ? GrainClass.With : here[0]);
            }),
        ];
    }

    // Neighbouring stretches that go the same way are one run; those that may go either way join the one before, or the first that follows.
    private static ImmutableArray<FinishRun> Merge(ImmutableArray<(double From, GrainClass Class)> stretches, double length)
    {
        var runs = new List<FinishRun>();
        double from = 0;
        bool? climb = null;
        foreach ((double starts, GrainClass kind) in stretches)
        {
            bool? wants = kind switch
            {
                GrainClass.With => false,
                GrainClass.Against => true,
                _ => null,
            };
            if (wants is null || wants == climb)
            {
                continue;
            }

            if (climb is { } before)
            {
                runs.Add(new FinishRun(from, starts, before, before ? AgainstGrain : WithGrain));
                from = starts;
            }

            climb = wants;
        }

        string reason = climb is null ? Either : climb.Value ? AgainstGrain : WithGrain;
        runs.Add(new FinishRun(from, length, climb ?? false, reason));
        return [.. runs];
    }
}
