using System.Globalization;
using System.Text;

namespace ToolpathForge.Exchange.Pdf;

/// <summary>Numbers as PDF writes them: a full stop, no exponent, no minus zero, four decimals of a point (35 nm).</summary>
internal static class PdfNumber
{
    /// <summary>Points in a millimetre: 72 an inch (ISO 32000-1, 8.3.2.3).</summary>
    internal const double PointsPerMillimetre = 72 / 25.4;

    private const int Steps = 10000;

    internal static StringBuilder AppendNumber(this StringBuilder text, double value)
    {
        long count = (long)Math.Round(value * Steps, MidpointRounding.AwayFromZero);
        if (count < 0)
        {
            text.Append('-');
            count = -count;
        }

        text.Append(CultureInfo.InvariantCulture, $"{count / Steps}");
        if (count % Steps is > 0 and var rest)
        {
            text.Append('.').Append(rest.ToString("0000", CultureInfo.InvariantCulture).TrimEnd('0'));
        }

        return text.Append(' ');
    }

    internal static string Format(double value) => new StringBuilder().AppendNumber(value).ToString().TrimEnd();
}
