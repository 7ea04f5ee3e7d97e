using System.Globalization;

namespace ToolpathForge.Measures;

/// <summary>The nearest mark of an inch rule to a length, and what the mark does not say.</summary>
/// <param name="Numerator">How many parts, in lowest terms, signed: 15 for 7 1/2 in.</param>
/// <param name="Denominator">Parts of an inch, in lowest terms: 2 for 7 1/2 in.</param>
/// <param name="Remainder">The length less the mark, mm; at most half a part of the rule either way.</param>
public readonly record struct InchFraction(long Numerator, int Denominator, double Remainder)
{
    /// <summary>The mark itself, mm.</summary>
    public double Millimetres => Numerator * Length.MillimetresPerInch / Denominator;

    /// <summary>The nearest mark of a rule.</summary>
    /// <param name="millimetres">The length, mm, at most a kilometre in size.</param>
    /// <param name="denominator">Parts an inch of the rule, 1 to 128.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is not a number or absurd, or there is no such rule.</exception>
    public static InchFraction Nearest(double millimetres, int denominator)
    {
        if (!(Math.Abs(millimetres) <= MeasureText.LargestLength))
        {
            throw new ArgumentOutOfRangeException(nameof(millimetres), millimetres, "A length up to a kilometer is needed.");
        }

        ArgumentOutOfRangeException.ThrowIfLessThan(denominator, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(denominator, 128);
        long parts = (long)Math.Round(millimetres * denominator / Length.MillimetresPerInch, MidpointRounding.AwayFromZero);
        double remainder = millimetres - (parts * Length.MillimetresPerInch / denominator);
        int under = denominator;
        while (under % 2 == 0 && parts % 2 == 0)
        {
            under /= 2;
            parts /= 2;
        }

        for (int odd = 3; odd <= under; odd += 2)
        {
            while (under % odd == 0 && parts % odd == 0)
            {
                under /= odd;
                parts /= odd;
            }
        }

        return new InchFraction(parts, under, remainder);
    }

    /// <summary>The mark as a carpenter writes it, without a unit: <c>7 1/2</c>, <c>3/16</c>, <c>-1 1/4</c>, <c>0</c>.</summary>
    public override string ToString()
    {
        long size = Math.Abs(Numerator);
        long whole = size / Denominator;
        long over = size % Denominator;
        string sign = Numerator < 0 ? "-" : "";
        return (whole, over) switch
        {
            (_, 0) => string.Create(CultureInfo.InvariantCulture, $"{sign}{whole}"),
            (0, _) => string.Create(CultureInfo.InvariantCulture, $"{sign}{over}/{Denominator}"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{sign}{whole} {over}/{Denominator}"),
        };
    }
}
