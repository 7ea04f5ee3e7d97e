using ToolpathForge.Catalogue;

namespace ToolpathForge.Checks.Hand;

/// <summary>
/// What a guide of another size than the cutter does to the work: a bearing, or a bushing in the router's base. The cutter's edge runs e = (guide - cutter)/2
/// away from the pattern, so a pattern for an outside edge is made smaller by e and an opening larger by e. (Worked from two circles about one axis.)
/// </summary>
/// <param name="Guide">Outside diameter of bearing or bushing, mm.</param>
/// <param name="Cutter">Cutting diameter, mm.</param>
public sealed record GuideOffset(double Guide, double Cutter)
{
    /// <summary>How far the work stands proud of the pattern, mm; negative where the cutter would run into the pattern.</summary>
    public double Offset => (Guide - Cutter) / 2;

    /// <summary>Smallest hollow radius of the pattern that the guide runs into, mm.</summary>
    public double LeastInside => Guide / 2;

    /// <summary>The work's radius in a hollow of the pattern, mm.</summary>
    /// <param name="pattern">The pattern's radius, mm, at least <see cref="LeastInside"/>.</param>
    public double WorkInside(double pattern) => pattern - Offset;

    /// <summary>The work's radius round a bulge of the pattern, mm.</summary>
    /// <param name="pattern">The pattern's radius, mm; 0 for a sharp corner.</param>
    public double WorkOutside(double pattern) => pattern + Offset;

    /// <summary>
    /// Depths for a bushing: nothing rides on the edge, so the cutter need only come through the board, begin above it and stay within reach:
    /// t + s + o ≤ p ≤ L + t - m.
    /// </summary>
    /// <param name="setUp">The set-up; its bearing plays no part.</param>
    public static DepthWindow Bushing(HandSetUp setUp) => new(
    [
        new("the cutter must come through the board", Sense.AtLeast, [new("pattern", setUp.Pattern), new("board", setUp.Board), new("overcut", setUp.Margins.Overcut)]),
        new("the cutter must begin inside the pattern's thickness", Sense.AtMost, [new("cutter", setUp.Cutter), new("pattern", setUp.Pattern), new("margin", -setUp.Margins.Margin)]),
        .. TopBearing.Reach(setUp),
    ]);

    /// <summary>The offset of a bit's own bearing; null for a bit without one.</summary>
    /// <param name="bit">The bit.</param>
    public static GuideOffset? Of(Bit bit) => bit.Bearing is { } bearing ? new GuideOffset(bearing.Diameter, bit.Diameter) : null;
}
