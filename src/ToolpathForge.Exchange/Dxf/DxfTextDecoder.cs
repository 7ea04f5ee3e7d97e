using System.Globalization;
using System.Text;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>Names as a file writes them: in its code page up to AC1018, in UTF-8 from AC1021 on, and with \U+XXXX for what the code page lacks.</summary>
internal sealed class DxfTextDecoder
{
    private Encoding _encoding = Encoding.Latin1;

    /// <summary>Chooses the encoding.</summary>
    /// <param name="version">The header's $ACADVER; empty when there is none.</param>
    /// <param name="codePage">The header's $DWGCODEPAGE; empty when there is none.</param>
    internal void Choose(string version, string codePage)
    {
        if (string.CompareOrdinal(version, "AC1021") >= 0)
        {
            _encoding = Encoding.UTF8;
            return;
        }

        string digits = codePage.StartsWith("ANSI_", StringComparison.OrdinalIgnoreCase) ? codePage[5..] : codePage.StartsWith("DOS", StringComparison.OrdinalIgnoreCase) ? codePage[3..] : "";
        if (int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out int page))
        {
            try
            {
                _encoding = CodePagesEncodingProvider.Instance.GetEncoding(page) ?? Encoding.Latin1;
            }
            catch (Exception e) when (e is ArgumentException or NotSupportedException)
            {
                _encoding = Encoding.Latin1;
            }
        }
    }

    /// <summary>The characters of a name.</summary>
    internal string Decode(ReadOnlySpan<byte> bytes)
    {
        string text = _encoding.GetString(bytes);
        if (!text.Contains("\\U+", StringComparison.OrdinalIgnoreCase))
        {
            return text;
        }

        var result = new StringBuilder();
        for (int i = 0; i < text.Length; i++)
        {
            bool escape = i + 7 <= text.Length && text[i] == '\\' && (text[i + 1] is 'U' or 'u') && text[i + 2] == '+';
            if (escape && ushort.TryParse(text.AsSpan(i + 3, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out ushort unit))
            {
                result.Append((char)unit);
                i += 6;
            }
            else
            {
                result.Append(text[i]);
            }
        }

        return result.ToString();
    }
}
