using System.Globalization;

namespace ToolpathForge.Measures;

/// <summary>Sizes as a shop reads them: off a rule, a caliper, or cut with room to spare. Where every digit counts, use <see cref="LengthText"/>.</summary>
public static class ShopText
{
    /// <summary>A fraction of an inch where a 64th meets it within what a caliper resolves (0.02 mm), else thousandths; tenths of a millimetre.</summary>
    /// <param name="millimetres">The size, mm.</param>
    /// <param name="unit">The unit to write it in.</param>
    public static string Size(double millimetres, LengthUnit unit)
    {
        const double Caliper = 0.02;
        if (unit == LengthUnit.Millimetre)
        {
            // A hair below nothing is nothing, not minus nothing.
            return string.Create(CultureInfo.InvariantCulture, $"{Math.Round(millimetres, 1, MidpointRounding.AwayFromZero) + 0.0:0.#} mm");
        }

        InchFraction fraction = InchFraction.Nearest(millimetres, LengthText.UsualDenominator);
        return Math.Abs(fraction.Remainder) <= Caliper
            ? LengthText.Write(fraction.Millimetres, unit)
            : string.Create(CultureInfo.InvariantCulture, $"{Math.Round(new Length(millimetres).Inches, 3, MidpointRounding.AwayFromZero) + 0.0:0.000} in");
    }

    /// <summary>The step that a size with room to spare is rounded to, mm: an eighth of an inch, or a millimetre.</summary>
    /// <param name="unit">The unit of the shop.</param>
    public static double Step(LengthUnit unit) => unit == LengthUnit.Inch ? Length.MillimetresPerInch / 8 : 1;

    /// <summary>The next step at or above a size, mm.</summary>
    /// <param name="millimetres">The size, mm.</param>
    /// <param name="unit">The unit of the shop.</param>
    public static double Up(double millimetres, LengthUnit unit) => Math.Ceiling((millimetres / Step(unit)) - 1e-6) * Step(unit);

    /// <summary>A size that must not come out smaller, rounded up.</summary>
    /// <param name="millimetres">The size, mm.</param>
    /// <param name="unit">The unit to write it in.</param>
    public static string AtLeast(double millimetres, LengthUnit unit) => LengthText.Write(Up(millimetres, unit), unit);

    /// <summary>The next step at or below a size, mm.</summary>
    /// <param name="millimetres">The size, mm.</param>
    /// <param name="unit">The unit of the shop.</param>
    public static double Down(double millimetres, LengthUnit unit) => Math.Floor((millimetres / Step(unit)) + 1e-6) * Step(unit);

    /// <summary>From where to where, rounded outwards.</summary>
    /// <param name="from">The lower bound, mm.</param>
    /// <param name="to">The upper bound, mm.</param>
    /// <param name="unit">The unit to write it in.</param>
    public static string Room(double from, double to, LengthUnit unit) =>
        $"{LengthText.Write(Down(from, unit), unit)} to {AtLeast(to, unit)}";
}
