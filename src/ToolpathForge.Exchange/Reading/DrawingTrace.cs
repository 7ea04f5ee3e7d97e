using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Reading;

/// <summary>One piece of material that a drawing bounds.</summary>
/// <param name="Region">The outer loop and the holes in it.</param>
/// <param name="Area">Area without the holes, mm².</param>
/// <param name="Length">Length of all its loops, mm.</param>
/// <param name="Box">The smallest box round it.</param>
/// <param name="Tightest">
/// The bend that the smallest round bit must follow, running outside the material; radius 0 for a sharp inside corner. Null when any bit follows. Of an ellipse or spline it is the
/// exact radius, not that of an arc that stands for it.
/// </param>
/// <param name="Slot">The narrowest gap between parts of its outlines; null when there is none up to <see cref="DrawingTrace.WidestSlot"/>.</param>
public sealed record TracedRegion(Region Region, double Area, double Length, Box2 Box, HollowBend? Tightest, NarrowPlace? Slot);

/// <summary>The outlines of a drawing. Lengths are in mm; in the drawing's own units when it states none and none was given.</summary>
/// <param name="Drawing">The drawing as it was read.</param>
/// <param name="Outlines">Closed and open contours, regions, and what was put right to get them.</param>
/// <param name="Regions">Each piece of material, in the order of <see cref="CleanOutlines.Regions"/>.</param>
/// <param name="Findings">All that reading and cleaning found, repairs of the file among them, each with the name of the file.</param>
public sealed record DrawingTrace(ReadDrawing Drawing, CleanOutlines Outlines, ImmutableArray<TracedRegion> Regions, ImmutableArray<Finding> Findings)
{
    /// <summary>Slots wider than this are none, mm: any bit that a router takes goes through.</summary>
    public const double WidestSlot = 50;

    /// <summary>Area of all material, mm².</summary>
    public double Area => Regions.Sum(r => r.Area);

    /// <summary>The smallest box round all contours, open ones among them.</summary>
    public Box2 Box => Outlines.Closed.Concat(Outlines.Open).Aggregate(Box2.Empty, (box, c) => box.Union(c.Contour.Box));

    /// <summary>How many things were put right: in the file, and in what it draws (ends moved by less than <see cref="ContourCleaner.SameEnd"/> aside).</summary>
    public int Repairs => Drawing.Repairs.Length + Outlines.Repairs.Count(r => r.Kind != RepairKind.EndsMoved || r.Size >= ContourCleaner.SameEnd);

    /// <summary>Makes outlines of a drawing.</summary>
    /// <param name="drawing">A drawing as read; one that cannot be used gives no outlines.</param>
    /// <param name="file">Its name as the person gave it, for findings.</param>
    /// <param name="layer">The one layer to look at; null for all.</param>
    /// <param name="gap">Ends no farther apart than this are joined, mm; null for <see cref="CleaningOptions.UsualGap"/>.</param>
    public static DrawingTrace Of(ReadDrawing drawing, string file, string? layer = null, double? gap = null)
    {
        IEnumerable<DrawnEntity> entities = layer is null ? drawing.Entities : drawing.Entities.Where(e => e.Layer == layer);
        var fits = new FittedArcs();
        CleanOutlines outlines = ContourCleaner.CleanFrom(DrawingPieces.Each(entities, DrawingPieces.Tolerance, fits), gap is { } g ? new CleaningOptions { Gap = g } : null);
        return new DrawingTrace(
            drawing,
            outlines,
            [.. outlines.Regions.Select(r => Measured(r, fits))],
            [.. drawing.Findings, .. drawing.Repairs, .. outlines.Findings.Select(f => f with { Place = f.Place with { File = file } })]);
    }

    private static TracedRegion Measured(Region region, FittedArcs fits)
    {
        HollowBend? tightest = null;
        foreach (Contour loop in region.Loops)
        {
            if (fits.Tightest(loop) is { } bend && (tightest is not { } known || bend.Radius < known.Radius))
            {
                tightest = bend;
            }
        }

        return new TracedRegion(region, region.Area, region.Loops.Sum(l => l.Length), region.Box, tightest, NarrowPlaces.Slot(region, WidestSlot));
    }
}
