using System.Globalization;
using System.Text;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>Writes the pairs that a DXF file is made of: a group code on one line, its value on the next.</summary>
internal sealed class DxfTags
{
    private readonly StringBuilder _text = new();

    internal string Text => _text.ToString();

    /// <summary>A real with at most twelve decimals: exact to 1e-12 mm, no exponent, no minus zero, always with a point so that no reader takes it for a count.</summary>
    internal static string Real(double value)
    {
        string digits = value.ToString("F12", CultureInfo.InvariantCulture).TrimEnd('0');
        if (digits.EndsWith('.'))
        {
            digits += "0";
        }

        return digits == "-0.0" ? "0.0" : digits;
    }

    internal DxfTags Add(int code, string value)
    {
        _text.Append(CultureInfo.InvariantCulture, $"{code,3}\n").Append(value).Append('\n');
        return this;
    }

    internal DxfTags Add(int code, int value) => Add(code, value.ToString(CultureInfo.InvariantCulture));

    internal DxfTags Add(int code, double value) => Add(code, Real(value));

    /// <summary>A point: x under the code given, y and z ten and twenty codes on.</summary>
    internal DxfTags AddPoint(int code, double x, double y, double z = 0) => Add(code, x).Add(code + 10, y).Add(code + 20, z);

    /// <summary>Appends what was written elsewhere.</summary>
    internal void Append(DxfTags other) => _text.Append(other._text);
}
