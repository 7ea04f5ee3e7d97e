using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Checks;

/// <summary>Whether bit and collet nut stay clear of the clamps that the job names.</summary>
internal static class ClampsInWay
{
    /// <summary>The bit would come too near to metal while it is lower than its top.</summary>
    internal static readonly FindingKind InTheWay = new(
        "clamp-in-way",
        Severity.Stop,
        "The bit comes within {found} of a clamp; {allowed} must stay.",
        "Move the clamp; the picture of the bed shows where the bit goes.");

    /// <summary>The collet nut would come down on a clamp that stands higher than the stock.</summary>
    internal static readonly FindingKind UnderNut = new(
        "clamp-under-nut",
        Severity.Stop,
        "A clamp stands so high that the bit must stick out {found} for the nut to pass over it; {allowed} are to be had with a full grip.",
        "Use a lower clamp, or a longer bit.");

    internal static IEnumerable<Finding> Find(CheckInput input, CutPlan cut)
    {
        ClampBox[] clamps = [.. cut.Clamping.Clamps];
        double highest = clamps.Length == 0 ? 0 : clamps.Max(c => c.Height);
        double over = Math.Max(0, highest - input.Make.Thickness);
        foreach (BitWork work in over > 0 ? cut.Works : [])
        {
            double needed = work.Settings.Steps[^1] + CutSettings.Nut + over;
            double most = Grip.MostStickOut(work.Path.Bit.OverallLength, work.Path.Bit.Shank);
            if (needed > most + 1e-9)
            {
                yield return Finding.Of(UnderNut, clamps.MaxBy(c => c.Height)!.At.OfMake(input.Make.Id), Quantity.Length(needed), Quantity.Length(most));
            }
        }

        foreach (ClampBox clamp in clamps)
        {
            double top = cut.Clamping.Stock.Bottom + clamp.Height;
            double near = cut.Works.Min(w => Nearest(w, clamp.Box, top) - w.Path.Bit.Radius);
            if (near < Clamping.MetalGap - 1e-6)
            {
                yield return Finding.Of(InTheWay, clamp.At.OfMake(input.Make.Id), Quantity.Length(Math.Max(0, near)), Quantity.Length(Clamping.MetalGap));
            }
        }
    }

    private static double Nearest(BitWork work, Box2 box, double top)
    {
        var outline = Contour.Rectangle(box);
        double least = double.PositiveInfinity;
        foreach (Segment way in work.Path.WaysBelow(top))
        {
            if (box.Contains(way.Start) || box.Contains(way.End))
            {
                return 0;
            }

            for (int i = 0; i < outline.SegmentCount && way.Box.Grown(Math.Min(least, 1e6)).Meets(box); i++)
            {
                least = Math.Min(least, SegmentDistance.Between(way, outline[i]).Distance);
            }
        }

        return least;
    }
}
