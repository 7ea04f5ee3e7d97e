using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>Lines and arcs in place of an <see cref="Outline"/>, with what is known about the difference.</summary>
/// <param name="Contour">The lines and arcs. They begin and end where the exact curves do, and leave and arrive in the same directions.</param>
/// <param name="CurveOf">For each segment of the contour, the index of the exact curve in the outline that it stands for.</param>
/// <param name="Bound">Proven largest distance, mm: no point of the outline is farther from the contour than this, and none of the contour from the outline.</param>
public sealed record FittedContour(Contour Contour, ImmutableArray<int> CurveOf, double Bound);
