using System.Globalization;
using System.Text;

namespace ToolpathForge.Exchange.Pdf;

/// <summary>The objects of a file taking shape, and the table of where each begins (ISO 32000-1, 7.5).</summary>
internal sealed class PdfFile
{
    private readonly StringBuilder _text = new();
    private readonly SortedDictionary<int, int> _begins = [];

    internal PdfFile() => _text.Append("%PDF-1.6\n");

    /// <summary>A string object: in brackets where it is plain ASCII, otherwise UTF-16 with its mark, in hexadecimal (ISO 32000-1, 7.9.2.2).</summary>
    internal static string Text(string value)
    {
        if (value.All(c => c is >= ' ' and <= '~'))
        {
            return "(" + value.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("(", "\\(", StringComparison.Ordinal).Replace(")", "\\)", StringComparison.Ordinal) + ")";
        }

        return "<FEFF" + Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(value)) + ">";
    }

    /// <summary>An object that is no stream.</summary>
    internal void Add(int number, string value)
    {
        Begin(number);
        _text.Append(value).Append("\nendobj\n");
    }

    /// <summary>A stream. Its content is ASCII, so that characters are bytes.</summary>
    internal void AddStream(int number, string entries, string content)
    {
        Begin(number);
        _text.Append("<< ").Append(entries).Append(entries.Length > 0 ? " " : "").Append(CultureInfo.InvariantCulture, $"/Length {content.Length} >>\nstream\n")
            .Append(content).Append("\nendstream\nendobj\n");
    }

    /// <summary>The whole file.</summary>
    internal byte[] Finish(int catalog, int info)
    {
        int table = _text.Length;
        _text.Append(CultureInfo.InvariantCulture, $"xref\n0 {_begins.Count + 1}\n0000000000 65535 f \n");
        foreach (int begin in _begins.Values)
        {
            _text.Append(CultureInfo.InvariantCulture, $"{begin:0000000000} 00000 n \n");
        }

        _text.Append(CultureInfo.InvariantCulture, $"trailer\n<< /Size {_begins.Count + 1} /Root {catalog} 0 R /Info {info} 0 R >>\nstartxref\n{table}\n%%EOF\n");
        return Encoding.ASCII.GetBytes(_text.ToString());
    }

    private void Begin(int number)
    {
        _begins.Add(number, _text.Length);
        _text.Append(CultureInfo.InvariantCulture, $"{number} 0 obj\n");
    }
}
