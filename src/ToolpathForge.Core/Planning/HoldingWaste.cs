using System.Collections.Immutable;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Planning;

/// <summary>
/// Decides which openings of an outline are cut round with their waste held, where the job asks for it: those whose waste is large enough, that tabs (or a skin) hold, and that the
/// bit of the outline gets all the way round. All others go to chips with the bit for holes.
/// </summary>
internal static class HoldingWaste
{
    /// <summary>The make with those openings marked.</summary>
    /// <param name="job">Says machine and tolerance.</param>
    /// <param name="make">The make.</param>
    internal static OutlineMake Of(Job job, OutlineMake make) => make.HoldsWaste
        ? make with { Openings = [.. make.Openings.Select(o => CanHold(job, make, o) ? o with { Held = true, Bit = make.Bit } : o)] }
        : make;

    private static bool CanHold(Job job, OutlineMake make, Opening opening)
    {
        CutSettings s = HeldOpening.Settings(make, opening, job.Machine, make.LeftBelow);
        return HeldOpening.HasWaste(make, opening, s) && HeldOpening.IsHeld(make, opening, s) && Reaches(job, make, opening);
    }

    // With the bit for holes that is for the checks to tell; the bit of the outline is not what the job named for it.
    private static bool Reaches(Job job, OutlineMake make, Opening opening)
    {
        if (opening.Bit == make.Bit)
        {
            return true;
        }

        var budget = new ErrorBudget(job.Tolerance);
        Contour edge = ArcFit.Quick(OpeningOutline.Exact(opening, Placement.Identity), HoleCut.Fit).Contour;
        return Reach.Of(edge, make.Bit.Radius, Side.Right, budget.Total - budget.Fit - budget.Rounding).IsEmpty;
    }
}
