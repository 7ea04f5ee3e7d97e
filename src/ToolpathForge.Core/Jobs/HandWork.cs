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

    /// <summary>How far the bushing stands out below the base; null where nobody has said.</summary>
    public double? BushingLength { get; init; }

    /// <summary>How far the collet stays above the base when the router is pushed down.</summary>
    public double ColletHeight { get; init; }

    /// <summary>Whether a bearing at the tip may hang out below its pattern.</summary>
    public bool MayHang { get; init; }
}
