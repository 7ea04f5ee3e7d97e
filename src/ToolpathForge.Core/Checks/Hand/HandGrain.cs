using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Shapes;

namespace ToolpathForge.Checks.Hand;

/// <summary>
/// The grain class of a profile's own curve under a hand router, which always runs with the work on the left of its travel: the tooth goes along the edge as it does under the machine
/// (see <see cref="Cutting.Grain"/>), so the classes are the same, and only what may be done about them differs.
/// </summary>
public static class HandGrain
{
    // A stretch shorter than this tears no more than a splinter, mm (judgement).
    private const double LeastStretch = 3;

    private const double Fit = 0.05;

    /// <summary>
    /// The class that decides: against the grain if any stretch longer than a splinter is; else with it if any is; else that of the longer part. End cut and curve count alike.
    /// </summary>
    /// <param name="profile">The profile, piece frame.</param>
    /// <param name="slope">Slope of the fibres on the upper face, degrees, as a job states it.</param>
    /// <param name="leftHand">Whether the tip lies at the left of whoever feeds.</param>
    public static GrainClass Of(Profile profile, double slope, bool leftHand)
    {
        ArgumentNullException.ThrowIfNull(profile);
        Contour contour = ArcFit.Quick(profile.Exact.Placed(new Placement(Math.PI, default, false)), Fit).Contour;
        double fibre = slope * Math.PI / 180;
        if (leftHand)
        {
            contour = contour.Placed(new Placement(0, default, true)).Reversed();
            fibre = -fibre;
        }

        GrainStretch[] all = [.. Cutting.Grain.Along(contour, fibre)];
        double Length(GrainClass kind) => all.Where(s => s.Class == kind).Sum(s => s.To - s.From);
        return Length(GrainClass.Against) > LeastStretch ? GrainClass.Against
            : Length(GrainClass.With) > LeastStretch ? GrainClass.With
            : Length(GrainClass.EndGrain) > Length(GrainClass.Along) ? GrainClass.EndGrain
            : GrainClass.Along;
    }
}
