using ToolpathForge.Catalogue;

namespace ToolpathForge.Jobs;

/// <summary>What is done to a make by hand: a router follows the pattern, or finishes along the edge that the machine has cut part way. Lengths in mm.</summary>
/// <param name="Bit">The hand router's bit.</param>
/// <param name="Board">Thickness of the board that is cut by hand.</param>
/// <param name="At">Where its keys stand.</param>
public sealed record HandWork(Bit Bit, double Board, Places At)
{
    /// <summary>How deep the machine cuts a board's end from the upper face; the rest is left for the hand. Null for a pattern.</summary>
    public double? Machined { get; init; }

    /// <summary>What the saw leaves outside the finished line; null for what is usual.</summary>
    public double? Bite { get; init; }

    /// <summary>Outside diameter of a guide bushing; null for the bit's own bearing.</summary>
    public double? Bushing { get; init; }

    /// <summary>Outside diameter of what guides: the bushing, else the bit's bearing; the cutter's own where it has none, which has been told.</summary>
    public double Guide => Bushing ?? Bit.Bearing?.Diameter ?? Bit.Diameter;

    /// <summary>
    /// How far inside the finished edge a pattern's working edge lies, so that the cutter meets the finished edge: (guide - cutter)/2 from two circles about one
    /// axis; 0 for a guide of the cutter's own diameter. A smaller guide, which would let the cutter into the pattern, is refused elsewhere and makes 0 here.
    /// </summary>
    public double PatternInset => Machined is null ? Math.Max(0, (Guide - Bit.Diameter) / 2) : 0;

    /// <summary>How far the bushing stands out below the base; null where nobody has said.</summary>
    public double? BushingLength { get; init; }

    /// <summary>How far the collet stays above the base when the router is pushed down.</summary>
    public double ColletHeight { get; init; }

    /// <summary>Whether a bearing at the tip may hang out below its pattern.</summary>
    public bool MayHang { get; init; }
}
