using ToolpathForge.Clampings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>A placed piece with its outline fitted to lines and arcs, on the bed.</summary>
/// <param name="Placed">The piece where it lies.</param>
/// <param name="Fitted">Its whole outline within the fit's share of the tolerance.</param>
internal sealed record PlacedContour(Placed Placed, FittedContour Fitted)
{
    internal Contour Contour => Fitted.Contour;

    internal static PlacedContour Fit(Placed placed, double tolerance) => new(placed, ArcFit.Fit(placed.Exact, tolerance));
}
