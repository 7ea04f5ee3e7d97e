using System.Globalization;

namespace ToolpathForge.Measures;

/// <summary>Sizes as a rule or a tape shows them: the nearest mark, whatever lies between is the eye's.</summary>
public static class RuleText
{
    /// <summary>Parts of an inch on a fine rule.</summary>
    public const int InchParts = 64;

    /// <summary>What the marks of a rule stand apart, mm: a 64th of an inch, or half a millimetre.</summary>
    /// <param name="unit">The unit of the rule.</param>
    public static double Step(LengthUnit unit) => unit == LengthUnit.Inch ? Length.MillimetresPerInch / InchParts : 0.5;

    /// <summary>The mark nearest to a size, mm.</summary>
    /// <param name="millimetres">The size, mm.</param>
    /// <param name="unit">The unit of the rule.</param>
    public static double Nearest(double millimetres, LengthUnit unit) => Math.Round(millimetres / Step(unit), MidpointRounding.AwayFromZero) * Step(unit);

    /// <summary>The mark nearest to a size, in words with its unit.</summary>
    /// <param name="millimetres">The size, mm, at most a kilometre.</param>
    /// <param name="unit">The unit of the rule.</param>
    public static string Size(double millimetres, LengthUnit unit) => Bare(millimetres, unit) + (unit == LengthUnit.Inch ? " in" : " mm");

    /// <summary>The mark nearest to a size, without a unit: for rows of figures that share one.</summary>
    /// <param name="millimetres">The size, mm, at most a kilometre.</param>
    /// <param name="unit">The unit of the rule.</param>
    public static string Bare(double millimetres, LengthUnit unit) => unit == LengthUnit.Inch
        ? InchFraction.Nearest(millimetres, InchParts).ToString()
        : (Nearest(millimetres, unit) + 0.0).ToString("0.#", CultureInfo.InvariantCulture);
}
