using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>What an edge of a piece is for.</summary>
public enum EdgeRole
{
    /// <summary>The shaped part of the profile: it shows, and a bearing runs on it.</summary>
    Curve,

    /// <summary>The straight cut at the board's end: it shows too.</summary>
    EndCut,

    /// <summary>The straight edge that everything is measured from.</summary>
    Reference,

    /// <summary>An edge that nothing runs on and nobody sees: it may carry tabs.</summary>
    Free,

    /// <summary>An edge that the board already has; it is not cut.</summary>
    Existing,
}

/// <summary>
/// A shape scaled to one board, in the piece frame: X along the board from its tip inwards, Y from the reference edge (0) to the profile edge (width).
/// The outline is open, starts on the profile edge, ends on the reference edge, and has the board on its left.
/// </summary>
/// <param name="Exact">The outline as exact curves.</param>
/// <param name="Roles">One role a curve: <see cref="EdgeRole.Curve"/> or <see cref="EdgeRole.EndCut"/>.</param>
/// <param name="Width">Design width, mm.</param>
/// <param name="Run">How far the curve reaches along the board, to the nose before any easing of it, mm, after rounding.</param>
/// <param name="Depth">How far it reaches up the board, mm, after rounding.</param>
/// <param name="EndAngle">Lean of the end cut from square, degrees; positive when the reference edge is the longer.</param>
/// <param name="Form">What the curve is called: scoop, belly, ogee, step.</param>
public sealed record Profile(
    Outline Exact, ImmutableArray<EdgeRole> Roles, double Width, double Run, double Depth, double EndAngle, string Form)
{
    /// <summary>Where the curve leaves the profile edge.</summary>
    public Point2 Start => Exact.Curves[0].Start;

    /// <summary>Where the end cut meets the reference edge.</summary>
    public Point2 End => Exact.Curves[^1].End;

    /// <summary>Where the curve meets the end cut.</summary>
    public Point2 Nose => Exact.Curves[^1].Start;
}
