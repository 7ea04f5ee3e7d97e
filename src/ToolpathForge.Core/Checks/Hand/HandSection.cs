using ToolpathForge.Catalogue;

namespace ToolpathForge.Checks.Hand;

/// <summary>What guides the cutter of a hand router, and where it lies.</summary>
public enum HandGuide
{
    /// <summary>A bearing on the shank, along a pattern that lies on the board; the base lies on the pattern.</summary>
    PatternAbove,

    /// <summary>A bearing on the shank, along an edge that is cut already; the base lies on the board.</summary>
    CutEdge,

    /// <summary>A bearing below the cutter, along a pattern under the board; the base lies on the board.</summary>
    PatternBelow,

    /// <summary>A bushing in the base, along a pattern that lies on the board.</summary>
    Bushing,
}

/// <summary>
/// The section across the edge that one pass of a hand router follows, whatever depth is set. Its frame: X 0 is the edge that guides, the work at negative X;
/// Y 0 is the underside of the router's base, up positive. All lengths in mm.
/// </summary>
/// <param name="Guide">What guides.</param>
/// <param name="SetUp">Lengths along the bit and thicknesses.</param>
/// <param name="Bit">The bit.</param>
/// <param name="Edge">How deep the edge is that is cut already; 0 where a pattern guides.</param>
/// <param name="ColletHeight">How far the collet stays above the base when the router is pushed down.</param>
/// <param name="Bite">What the saw has left outside the finished edge.</param>
/// <param name="BushingLength">How far a bushing stands out below the base; 0 without one.</param>
public sealed record HandSection(
    HandGuide Guide, HandSetUp SetUp, Bit Bit, double Edge, double ColletHeight, double Bite, double BushingLength)
{
    /// <summary>Height of the board's upper face: the base lies on it, or on a pattern that does.</summary>
    public double BoardTop => Guide is HandGuide.PatternAbove or HandGuide.Bushing ? -SetUp.Pattern : 0;

    /// <summary>Height of the board's lower face.</summary>
    public double BoardBottom => BoardTop - SetUp.Board;

    /// <summary>Where the finished edge comes to lie: beside the edge that guides by the difference of guide and cutter.</summary>
    public double FinishedEdge => new GuideOffset(SetUp.Bearing.Diameter, Bit.Diameter).Offset;

    /// <summary>Where the bit turns.</summary>
    public double Axis => SetUp.Bearing.Diameter / 2;

    /// <summary>Lower and upper end of the bearing at a depth; null for a bushing.</summary>
    /// <param name="depth">Of the cutter's end below the base.</param>
    public (double Bottom, double Top)? BearingAt(double depth)
    {
        (double height, double gap) = (SetUp.Bearing.Height, SetUp.Bearing.Gap);
        double above = SetUp.Cutter - depth + gap;
        return Guide switch
        {
            HandGuide.Bushing => null,
            HandGuide.PatternBelow => (-depth - gap - height, -depth - gap),
            _ => (above, above + height),
        };
    }

    /// <summary>Highest that the collet may stay above the base at a depth, so that it still grips enough of the shank.</summary>
    /// <param name="depth">Of the cutter's end below the base.</param>
    public double HighestCollet(double depth) => SetUp.Reach - depth + ColletHeight;

    /// <summary>Highest that anything drawn below the collet's end stands at a depth.</summary>
    /// <param name="depth">Of the cutter's end below the base.</param>
    public double HighestPoint(double depth) => Math.Max(0, Math.Max(ColletHeight, double.IsFinite(SetUp.Reach) ? HighestCollet(depth) : ColletHeight));

    /// <summary>How far the bit comes out below the board at a depth, its bearing included, mm; 0 where it stays in the board.</summary>
    /// <param name="depth">Of the cutter's end below the base.</param>
    public double ComesOut(double depth) => Math.Max(0, BoardBottom - Math.Min(-depth, BearingAt(depth)?.Bottom ?? -depth));

    /// <summary>Lowest that anything stands at a depth.</summary>
    /// <param name="depth">Of the cutter's end below the base.</param>
    public double LowestPoint(double depth)
    {
        double work = Guide == HandGuide.PatternBelow ? BoardBottom - SetUp.Pattern : BoardBottom;
        return Math.Min(work, Math.Min(-depth, BearingAt(depth)?.Bottom ?? -depth));
    }
}
