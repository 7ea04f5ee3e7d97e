using System.Collections.Immutable;
using ToolpathForge.Measures;

namespace ToolpathForge.Pieces;

/// <summary>
/// What the International Residential Code says of cuts in joists and rafters, by section, for a board of one depth (its width as sold, standing on edge).
/// It speaks of notches and cantilevers, not of shaped ends by name: a caution, never a calculation. Local code and a licensed designer decide.
/// Source: IRC R502.6, R502.8.1, R502.8.2, R802.6, R802.7.1, R802.7.1.1 and R802.7.2 as building departments and inspectors quote them; that these numbers and
/// figures hold for the editions of 2012 to 2024 is from memory.
/// </summary>
/// <param name="Depth">Depth of the member, mm.</param>
public sealed record CodeLimits(double Depth)
{
    /// <summary>Least that must remain of a cantilevered portion of a rafter, mm: 3 1/2 in (R802.7.1.1; to 2009 it read 4 in nominal).</summary>
    public const double LeastOnCantilever = 3.5 * Length.MillimetresPerInch;

    /// <summary>Longest cantilever that may be cut into so, mm: 24 in (R802.7.1.1).</summary>
    public const double LongestCantilever = 24 * Length.MillimetresPerInch;

    /// <summary>Least length that bears on wood or metal, mm: 1 1/2 in (R502.6, R802.6).</summary>
    public const double LeastSeatOnWood = 1.5 * Length.MillimetresPerInch;

    /// <summary>Least length that bears on masonry or concrete, mm: 3 in (R502.6, R802.6).</summary>
    public const double LeastSeatOnMasonry = 3 * Length.MillimetresPerInch;

    /// <summary>The words that go with every figure of a code.</summary>
    public const string Decides = "local code and a licensed designer decide";

    // Dressed, 4 in nominal is 3 1/2 in (PS 20). A millimetre less is still such a member: metric sizes and dry boards (judgement).
    private const double Thick = (3.5 * Length.MillimetresPerInch) - 1;

    /// <summary>Deepest notch, mm: a sixth of the depth (R502.8.1, R802.7.1).</summary>
    public double Notch => Depth / 6;

    /// <summary>Longest notch along the member, mm: a third of the depth (R502.8.1, R802.7.1).</summary>
    public double NotchLength => Depth / 3;

    /// <summary>Deepest notch at an end, mm: a quarter of the depth (R502.8.1, R802.7.1).</summary>
    public double EndNotch => Depth / 4;

    /// <summary>Whether a member is 4 in nominal and more, so that its tension side is not notched except at the ends (R502.8.1, R802.7.1).</summary>
    /// <param name="thickness">Dressed thickness, mm.</param>
    public static bool IsThick(double thickness) => thickness >= Thick;

    /// <summary>What holds for every depth, in sentences; the last one says who decides.</summary>
    /// <param name="unit">The unit of the person.</param>
    public static ImmutableArray<string> InWords(LengthUnit unit)
    {
        string Say(double mm) => ShopText.Size(mm, unit);
        return
        [
            $"Limits: International Residential Code, R502.8.1 for joists and R802.7.1 for rafters: an end notched by a quarter of the depth at most; elsewhere a notch by a sixth, a third of the depth long, and none in the middle third of the span. "
                + $"R802.7.1.1, where a rafter overhangs: {Say(LeastOnCantilever)} or more remain all along, and it reaches out {Say(LongestCantilever)} at most.",
            $"Members of 4 in nominal and more (dressed {Say(LeastOnCantilever)}) are not notched on their tension side except at the ends: below between supports, above over a support with an overhang. Opinions differ on where an overhanging end begins, so ask.",
            "Trusses, I-joists, laminated veneer and glued timber are not cut at all, except where the maker's papers or a licensed designer allow that very cut (R502.8.2, R802.7.2).",
            $"A seat stays flat and whole: {Say(LeastSeatOnWood)} or more on wood or metal, {Say(LeastSeatOnMasonry)} on masonry (R502.6, R802.6).",
            "Sections and figures as in the editions of 2012 to 2024 (from memory; to 2009 the overhang asked for 4 in nominal). Ask your building department which edition holds where you build, and what it changes.",
            $"None of these speaks of shaped ends by name: {Decides}.",
        ];
    }
}
