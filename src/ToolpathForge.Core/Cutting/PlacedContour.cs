using ToolpathForge.Clampings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>A placed piece with its outline fitted to lines and arcs, on the bed.</summary>
/// <param name="Placed">The piece where it lies.</param>
/// <param name="Fitted">Its whole outline within the fit's share of the tolerance.</param>
internal sealed record PlacedContour(Placed Placed, FittedContour Fitted)
{
    internal Contour Contour => Fitted.Contour;

    /// <summary>Whether it is the edge of an opening, which is cut from within: it runs clockwise, the material on its left like that of an outline.</summary>
    internal bool IsOpening => !Contour.IsCounterClockwise;

    internal static PlacedContour Fit(Placed placed, double tolerance) => new(placed, ArcFit.Fit(placed.Exact, tolerance));
}
