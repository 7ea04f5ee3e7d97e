using ToolpathForge.Findings;

namespace ToolpathForge.Geometry;

/// <summary>The result of a set operation.</summary>
/// <param name="Region">The region; empty when it is not vouched for.</param>
/// <param name="Unproven">
/// Null when the result passed its check. Otherwise the finding <see cref="GeometryFindings.RegionUnproven"/> with a reproducer, and <see cref="Region"/> is empty:
/// a guess is never handed out.
/// </param>
public sealed record RegionResult(Region Region, Finding? Unproven);
