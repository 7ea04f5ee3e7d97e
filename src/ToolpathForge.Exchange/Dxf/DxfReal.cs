using System.Globalization;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>Reads the reals of a DXF file. Almost all of them are short, and a short one needs one exact division.</summary>
internal static class DxfReal
{
    /// <summary>Powers of ten that a double holds exactly.</summary>
    private static readonly double[] s_powers =
        [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22];

    /// <summary>
    /// Reads a number, blanks before and after allowed. Digits that make a whole number below 2⁵³, over a power of ten up to 10²², give the nearest double by one
    /// division of two exact numbers (Clinger, "How to read floating point numbers accurately", 1990); anything else goes the general way.
    /// </summary>
    /// <param name="text">The characters.</param>
    /// <param name="value">The number; never infinite or not a number.</param>
    internal static bool TryParse(ReadOnlySpan<byte> text, out double value)
    {
        text = text.Trim(" \t"u8);
        int at = 0;
        bool negative = false;
        if (text.Length > 0 && text[0] is (byte)'-' or (byte)'+')
        {
            negative = text[0] == (byte)'-';
            at = 1;
        }

        long digits = 0;
        int read = 0, decimals = -1;
        for (; at < text.Length; at++)
        {
            int digit = text[at] - '0';
            if (digit is >= 0 and <= 9)
            {
                digits = (digits * 10) + digit;
                read++;
                decimals += decimals >= 0 ? 1 : 0;
                if (digits >= 1L << 53)
                {
                    return General(text, out value);
                }
            }
            else if (text[at] == (byte)'.' && decimals < 0)
            {
                decimals = 0;
            }
            else
            {
                return General(text, out value);
            }
        }

        if (read == 0 || decimals >= s_powers.Length)
        {
            return General(text, out value);
        }

        value = decimals > 0 ? digits / s_powers[decimals] : digits;
        value = negative ? -value : value;
        return true;
    }

    private static bool General(ReadOnlySpan<byte> text, out double value) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out value)
        && double.IsFinite(value);
}
