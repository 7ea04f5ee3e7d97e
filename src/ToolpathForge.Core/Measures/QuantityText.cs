using System.Globalization;
using ToolpathForge.Findings;

namespace ToolpathForge.Measures;

/// <summary>Writes a length in the person's unit, so that it can be read back by <see cref="MeasureText"/> and set on a rule.</summary>
public static class LengthText
{
    /// <summary>The finest parts of an inch written by default.</summary>
    public const int UsualDenominator = 64;

    // Half of the last decimal that is written: what is smaller than this is not told.
    private const double Untold = 0.0005;

    /// <summary>
    /// The length with its unit. Millimetres to a thousandth: <c>190.5 mm</c>. Inches as the nearest fraction, with what is left over told in
    /// millimetres: <c>7 1/2 in</c>, <c>7 1/2 in + 0.12 mm</c>; below one part as decimals: <c>0.00394 in</c>.
    /// </summary>
    /// <param name="millimetres">The length, mm.</param>
    /// <param name="unit">The person's unit.</param>
    /// <param name="denominator">Finest parts of an inch, 1 to 128.</param>
    public static string Write(double millimetres, LengthUnit unit, int denominator = UsualDenominator)
    {
        if (!(Math.Abs(millimetres) <= MeasureText.LargestLength))
        {
            return "a length beyond measure";
        }

        if (unit == LengthUnit.Millimetre)
        {
            return $"{NumberText.Write(millimetres)} mm";
        }

        if (Math.Abs(millimetres) * denominator < Length.MillimetresPerInch)
        {
            return $"{NumberText.Write(millimetres / Length.MillimetresPerInch)} in";
        }

        InchFraction mark = InchFraction.Nearest(millimetres, denominator);
        double rest = Math.Abs(mark.Remainder);
        return rest < Untold
            ? $"{mark} in"
            : $"{mark} in {(mark.Remainder < 0 ? '-' : '+')} {NumberText.Write(rest)} mm";
    }
}

/// <summary>Writes plain numbers, the same in every culture and never as minus nothing.</summary>
internal static class NumberText
{
    /// <summary>To a thousandth, without trailing zeros; a smaller number to three significant digits.</summary>
    internal static string Write(double value)
    {
        double size = Math.Abs(value);
        if (size is > 0 and < 0.1)
        {
            int decimals = Math.Min(12, 2 - (int)Math.Floor(Math.Log10(size)));
            return Fixed(value, decimals);
        }

        return Fixed(value, 3);
    }

    /// <summary>To a number of decimals, without trailing zeros.</summary>
    internal static string Fixed(double value, int decimals)
    {
        string text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        text = text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
        return text == "-0" ? "0" : text;
    }
}

/// <summary>Writes a quantity with its unit, lengths and feeds in the person's.</summary>
public static class QuantityText
{
    private const double SquareInch = Length.MillimetresPerInch * Length.MillimetresPerInch;

    /// <summary>The quantity with its unit.</summary>
    /// <param name="quantity">What to write.</param>
    /// <param name="unit">The person's unit.</param>
    public static string Write(Quantity quantity, LengthUnit unit)
    {
        bool inch = unit == LengthUnit.Inch;
        double value = quantity.Value;
        if (!double.IsFinite(value))
        {
            return "beyond measure";
        }

        return quantity.Kind switch
        {
            QuantityKind.Length => LengthOf(value, unit),
            QuantityKind.Angle => $"{NumberText.Write(value)}°",
            QuantityKind.Feed => inch ? $"{NumberText.Fixed(value / Length.MillimetresPerInch, 1)} in/min" : $"{NumberText.Fixed(value, 0)} mm/min",
            QuantityKind.Speed => $"{NumberText.Fixed(value, 0)} rpm",
            QuantityKind.Area => inch ? $"{NumberText.Write(value / SquareInch)} in²" : $"{NumberText.Write(value)} mm²",
            QuantityKind.Mass => $"{NumberText.Write(value)} kg",
            QuantityKind.Force => $"{NumberText.Fixed(value, 1)} N",
            QuantityKind.Moment => $"{NumberText.Fixed(value, 0)} N·m",
            QuantityKind.Velocity => inch ? $"{NumberText.Fixed(value * 60 / 0.3048, 0)} ft/min" : $"{NumberText.Fixed(value, 1)} m/s",
            _ => NumberText.Write(value),
        };
    }

    // In a sentence a stray length reads best as decimals: only what a rule shows is written as a fraction.
    private static string LengthOf(double millimetres, LengthUnit unit) =>
        unit == LengthUnit.Inch && Math.Abs(millimetres) <= MeasureText.LargestLength
            && Math.Abs(InchFraction.Nearest(millimetres, LengthText.UsualDenominator).Remainder) > 0.002
            ? $"{NumberText.Fixed(millimetres / Length.MillimetresPerInch, 4)} in"
            : LengthText.Write(millimetres, unit);
}
