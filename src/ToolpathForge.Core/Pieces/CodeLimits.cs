using System.Collections.Immutable;
using ToolpathForge.Measures;

namespace ToolpathForge.Pieces;

/// <summary>
/// What the International Residential Code says of cuts in joists and rafters, by section, for a board of one depth (its width as sold, standing on edge).
/// It speaks of notches and cantilevers, not of shaped ends by name: a caution, never a calculation. Local code and a licensed designer decide.
/// Source: IRC R502.8.1, R802.7.1 and R802.7.1.1, as published.
/// </summary>
/// <param name="Depth">Depth of the member, mm.</param>
public sealed record CodeLimits(double Depth)
{
    /// <summary>Least that must remain of a cantilevered portion of a rafter, mm: 3 1/2 in (R802.7.1.1).</summary>
    public const double LeastOnCantilever = 3.5 * Length.MillimetresPerInch;

    /// <summary>Longest cantilever that may be cut into so, mm: 24 in (R802.7.1.1).</summary>
    public const double LongestCantilever = 24 * Length.MillimetresPerInch;

    /// <summary>The words that go with every figure of a code.</summary>
    public const string Decides = "local code and a licensed designer decide";

    /// <summary>Deepest notch, mm: a sixth of the depth (R502.8.1, R802.7.1).</summary>
    public double Notch => Depth / 6;

    /// <summary>Longest notch along the member, mm: a third of the depth (R502.8.1, R802.7.1).</summary>
    public double NotchLength => Depth / 3;

    /// <summary>Deepest notch at an end, mm: a quarter of the depth (R502.8.1, R802.7.1).</summary>
    public double EndNotch => Depth / 4;

    /// <summary>The limits in sentences.</summary>
    /// <param name="unit">The unit of the person.</param>
    public ImmutableArray<string> InWords(LengthUnit unit)
    {
        string Say(double mm) => ShopText.Size(mm, unit);
        return
        [
            $"IRC R502.8.1 (joists) and R802.7.1 (rafters), for a depth of {Say(Depth)}: no notch deeper than {Say(Notch)} nor longer than {Say(NotchLength)}, none in the middle third of the span; at an end none deeper than {Say(EndNotch)}.",
            $"IRC R802.7.1.1, on a cantilevered part of a rafter: {Say(LeastOnCantilever)} or more remain, and it reaches out {Say(LongestCantilever)} at most.",
            $"None of these speaks of shaped ends by name: {Decides}.",
        ];
    }
}
