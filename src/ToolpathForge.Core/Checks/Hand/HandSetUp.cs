using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;

namespace ToolpathForge.Checks.Hand;

/// <summary>What is kept free of everything that must not be touched, mm.</summary>
/// <param name="Contact">How much of the bearing's height must run on what guides it. Not the whole bearing need do so: it may stand partly above a
/// pattern, inside the opening of the router's base.</param>
/// <param name="Margin">How far the cutting edges reach past the board's face on the side of the shank, and a bearing stays inside its pattern.</param>
/// <param name="Overcut">How far the cutter goes past the board on the other side.</param>
public sealed record HandMargins(double Contact, double Margin, double Overcut)
{
    // Common practice: 3 mm of a bearing guide it safely.
    private const double UsualContact = 3;

    /// <summary>What is usual for a bearing: 3 mm of contact, or all of a lower bearing; 1 mm each of margin and overcut (common practice).</summary>
    /// <param name="bearingHeight">mm.</param>
    public static HandMargins Usual(double bearingHeight) => new(Math.Min(bearingHeight, UsualContact), 1, 1);
}

/// <summary>
/// A hand router, its bit, and what it rests on. The depth of a set-up is that of the cutter's end below the router's base, mm.
/// </summary>
/// <param name="Cutter">Length of the cutting edges, mm.</param>
/// <param name="Bearing">The bearing.</param>
/// <param name="Pattern">Thickness of the pattern, mm.</param>
/// <param name="Board">Thickness of the board, mm.</param>
/// <param name="Reach">How deep the cutter's end gets below the base with the shank fully gripped, mm; infinite where nobody knows.</param>
/// <param name="Margins">What is kept free.</param>
public sealed record HandSetUp(double Cutter, Bearing Bearing, double Pattern, double Board, double Reach, HandMargins Margins)
{
    /// <summary>
    /// How deep a bit's cutter gets below the base while the collet grips enough of the shank, mm: what may stick out, less the way from the collet to the
    /// base, less a bearing that sits below the cutter.
    /// </summary>
    /// <param name="bit">The bit.</param>
    /// <param name="colletHeight">How far the collet's end stays above the base when the router is pushed down as far as it goes, mm; negative for one
    /// that comes out below.</param>
    public static double ReachOf(Bit bit, double colletHeight)
    {
        double below = bit is { Kind: BitKind.TipBearing, Bearing: { } bearing } ? bearing.Height + bearing.Gap : 0;
        return Grip.MostStickOut(bit.OverallLength, bit.Shank) - colletHeight - below;
    }
}
