using System.Buffers;
using System.Text;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>The pairs of a text file. Lines end in LF, CR LF, CR, or the CR CR LF that a line end translated twice makes.</summary>
internal sealed class DxfText : DxfSource
{
    private static readonly SearchValues<byte> s_blank = SearchValues.Create(" \t\r\n\0\u001a"u8);
    private int _line;

    internal DxfText(ReadOnlyMemory<byte> data)
        : base(data)
    {
        ReadOnlySpan<byte> bytes = data.Span;
        At = bytes.StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;

        // Blank lines before the first group code do no harm.
        while (true)
        {
            (int from, int line) = (At, _line);
            if (!Line(out int start, out int length) || !bytes.Slice(start, length).Trim(" \t"u8).IsEmpty)
            {
                (At, _line) = (from, line);
                break;
            }
        }
    }

    internal override bool IsBinary => false;

    internal override bool Next(out DxfTag tag)
    {
        while (true)
        {
            if (!Line(out int start, out int length))
            {
                tag = default;
                return false;
            }

            if (!Code(Data.Span.Slice(start, length), out int code))
            {
                NoCode(start, length);
                tag = default;
                return false;
            }

            if (!Line(out start, out length))
            {
                EndedWithin = true;
                tag = default;
                return false;
            }

            if (code != 999)
            {
                tag = new DxfTag(code, _line, start, length, 0);
                return true;
            }
        }
    }

    /// <summary>What follows the end of a file may be blank, or the sign by which old systems ended text.</summary>
    private void NoCode(int start, int length)
    {
        if (Data.Span[start..].IndexOfAnyExcept(s_blank) < 0)
        {
            return;
        }

        var shown = new StringBuilder();
        foreach (byte b in Data.Span.Slice(start, Math.Min(length, 24)))
        {
            shown.Append(b is >= 32 and < 127 ? (char)b : '?');
        }

        Broken = (_line, shown.ToString().Trim());
    }

    private bool Line(out int start, out int length)
    {
        start = At;
        length = 0;
        ReadOnlySpan<byte> rest = Data.Span[At..];
        if (rest.IsEmpty)
        {
            return false;
        }

        _line++;
        int end = rest.IndexOfAny((byte)'\n', (byte)'\r');
        if (end < 0)
        {
            length = rest.Length;
            At += length;
            return true;
        }

        length = end;
        int skip = 1;
        if (rest[end] == (byte)'\r')
        {
            ReadOnlySpan<byte> after = rest[(end + 1)..];
            skip = after is [(byte)'\n', ..] ? 2 : after is [(byte)'\r', (byte)'\n', ..] ? 3 : 1;
        }

        At += end + skip;
        return true;
    }

    private static bool Code(ReadOnlySpan<byte> text, out int code)
    {
        text = text.Trim(" \t"u8);
        code = 0;
        bool negative = text is [(byte)'-', ..];
        if (negative)
        {
            text = text[1..];
        }

        if (text.Length is 0 or > 5)
        {
            return false;
        }

        foreach (byte b in text)
        {
            if (b is < (byte)'0' or > (byte)'9')
            {
                return false;
            }

            code = (code * 10) + (b - '0');
        }

        code = negative ? -code : code;
        return true;
    }
}
