using System.Text;

namespace ToolpathForge.Exchange.Svg;

/// <summary>What stands in a file before its first element, looked at before anything reads the file as XML.</summary>
/// <param name="Bytes">The file as text of one byte or more a character, its DOCTYPE blanked out.</param>
/// <param name="Encoding">How its characters are written.</param>
/// <param name="HasDoctype">Whether there is a DOCTYPE.</param>
/// <param name="HasSubset">Whether it declares anything itself: then nothing of the file is read.</param>
internal sealed record SvgProlog(ReadOnlyMemory<byte> Bytes, Encoding Encoding, bool HasDoctype, bool HasSubset)
{
    /// <summary>Looks at a file; null when it is no XML.</summary>
    internal static SvgProlog? Of(ReadOnlyMemory<byte> bytes)
    {
        Encoding encoding = Encoding.UTF8;
        bool wide = true;
        if (bytes.Span.StartsWith((ReadOnlySpan<byte>)[0xff, 0xfe]))
        {
            bytes = Encoding.UTF8.GetBytes(Encoding.Unicode.GetString(bytes.Span[2..]));
        }
        else if (bytes.Span.StartsWith((ReadOnlySpan<byte>)[0xfe, 0xff]))
        {
            bytes = Encoding.UTF8.GetBytes(Encoding.BigEndianUnicode.GetString(bytes.Span[2..]));
        }
        else
        {
            wide = false;
        }

        ReadOnlySpan<byte> text = bytes.Span;
        int at = text.StartsWith((ReadOnlySpan<byte>)[0xef, 0xbb, 0xbf]) ? 3 : 0;
        int begin = at;
        while (true)
        {
            at = Blanks(text, at);
            ReadOnlySpan<byte> rest = text[at..];
            if (rest.StartsWith("<?"u8))
            {
                int end = rest.IndexOf("?>"u8);
                if (end < 0)
                {
                    return null;
                }

                if (at == begin && !wide && IsOneByte(rest[..end]))
                {
                    encoding = Encoding.Latin1;
                }

                at += end + 2;
            }
            else if (rest.StartsWith("<!--"u8))
            {
                int end = rest.IndexOf("-->"u8);
                if (end < 0)
                {
                    return null;
                }

                at += end + 3;
            }
            else if (rest.StartsWith("<!DOCTYPE"u8))
            {
                (int length, bool subset) = Doctype(rest);
                return new SvgProlog(subset ? bytes : Blanked(bytes, at, length), encoding, true, subset);
            }
            else
            {
                return rest.Length > 0 && rest[0] == '<' ? new SvgProlog(bytes, encoding, false, false) : null;
            }
        }
    }

    /// <summary>Latin letters in one byte each. Names and text may then differ in a few signs, numbers cannot.</summary>
    private static bool IsOneByte(ReadOnlySpan<byte> declaration)
    {
        string text = Encoding.Latin1.GetString(declaration).ToUpperInvariant();
        return text.Contains("ISO-8859", StringComparison.Ordinal) || text.Contains("WINDOWS-125", StringComparison.Ordinal) || text.Contains("LATIN", StringComparison.Ordinal);
    }

    /// <summary>How long a DOCTYPE is, and whether something stands in its square brackets.</summary>
    private static (int Length, bool HasSubset) Doctype(ReadOnlySpan<byte> text)
    {
        byte quote = 0;
        for (int i = 0; i < text.Length; i++)
        {
            byte c = text[i];
            if (quote != 0)
            {
                quote = c == quote ? (byte)0 : quote;
            }
            else if (c is (byte)'"' or (byte)'\'')
            {
                quote = c;
            }
            else if (c == '[')
            {
                int inner = Blanks(text, i + 1);
                if (inner >= text.Length || text[inner] != ']')
                {
                    return (0, true);
                }

                i = inner;
            }
            else if (c == '>')
            {
                return (i + 1, false);
            }
        }

        return (text.Length, false);
    }

    /// <summary>Blanks in place of the DOCTYPE; lines keep their numbers.</summary>
    private static byte[] Blanked(ReadOnlyMemory<byte> bytes, int from, int length)
    {
        byte[] copy = bytes.ToArray();
        foreach (ref byte c in copy.AsSpan(from, length))
        {
            c = c is (byte)'\n' or (byte)'\r' ? c : (byte)' ';
        }

        return copy;
    }

    private static int Blanks(ReadOnlySpan<byte> text, int at)
    {
        while (at < text.Length && text[at] is (byte)' ' or (byte)'\t' or (byte)'\n' or (byte)'\r')
        {
            at++;
        }

        return at;
    }
}
