using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>The one open line of a drawing that a job names.</summary>
/// <param name="Path">Open; each curve begins where the one before ends, to rounding; X to the right, Y up. In mm, or in units of the drawing where none is known.</param>
/// <param name="UnitIsKnown">Whether the drawing or the job says what it is drawn in.</param>
public sealed record LineOfDrawing(Outline Path, bool UnitIsKnown);
