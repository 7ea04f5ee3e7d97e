using System.Text;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>The pairs of a DXF file, one after the other, from text or binary; nothing is copied.</summary>
internal abstract class DxfSource(ReadOnlyMemory<byte> data)
{
    protected ReadOnlyMemory<byte> Data => data;

    protected int At { get; set; }

    /// <summary>Whether the values are binary.</summary>
    internal abstract bool IsBinary { get; }

    /// <summary>Where a group code should stand and does not, with what stands there; line 0 when it has not come to that, -1 in a binary file.</summary>
    internal (int Line, string Text) Broken { get; private protected set; }

    /// <summary>Whether it ended within a pair.</summary>
    internal bool EndedWithin { get; private protected set; }

    /// <summary>The pairs of a file; null when it is no DXF.</summary>
    internal static DxfSource? Open(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Span.StartsWith(DxfBinary.Sentinel))
        {
            return new DxfBinary(bytes);
        }

        // Some systems save text two bytes a character.
        if (bytes.Span.StartsWith((ReadOnlySpan<byte>)[0xff, 0xfe]))
        {
            bytes = Encoding.UTF8.GetBytes(Encoding.Unicode.GetString(bytes.Span[2..]));
        }
        else if (bytes.Span.StartsWith((ReadOnlySpan<byte>)[0xfe, 0xff]))
        {
            bytes = Encoding.UTF8.GetBytes(Encoding.BigEndianUnicode.GetString(bytes.Span[2..]));
        }

        var text = new DxfText(bytes);
        bool known = text.Next(out DxfTag first) && first.Code == 0 && (text.Characters(first).SequenceEqual("SECTION"u8) || text.Characters(first).SequenceEqual("EOF"u8));
        return known ? new DxfText(bytes) : null;
    }

    /// <summary>Reads the next pair; false at the end, or where the file cannot be followed any more.</summary>
    internal abstract bool Next(out DxfTag tag);

    /// <summary>The characters of a value, without blanks around them; empty for a number of a binary file.</summary>
    internal ReadOnlySpan<byte> Characters(DxfTag tag) => tag.Length < 0 ? [] : data.Span.Slice(tag.Start, tag.Length).Trim(" \t"u8);

    /// <summary>Reads a number; false for what is none or is not finite.</summary>
    internal bool Number(DxfTag tag, out double value)
    {
        if (tag.Length < 0)
        {
            value = tag.Number;
            return double.IsFinite(value);
        }

        return DxfReal.TryParse(data.Span.Slice(tag.Start, tag.Length), out value);
    }
}
