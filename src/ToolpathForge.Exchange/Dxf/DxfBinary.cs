using System.Buffers.Binary;
using System.Globalization;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>
/// The pairs of a binary file (DXF reference, "Binary DXF files"). Up to R12 a group code is one byte, or 255 and two bytes; from R13 on it is two bytes.
/// Which it is shows in the first pair: 0 and the word SECTION.
/// </summary>
internal sealed class DxfBinary : DxfSource
{
    private readonly bool _oneByte;

    internal DxfBinary(ReadOnlyMemory<byte> data)
        : base(data)
    {
        At = Sentinel.Length;
        ReadOnlySpan<byte> rest = data.Span[At..];
        _oneByte = rest.Length > 1 && rest[0] == 0 && rest[1] != 0;
    }

    /// <summary>By what a binary file is known.</summary>
    internal static ReadOnlySpan<byte> Sentinel => "AutoCAD Binary DXF\r\n\u001a\0"u8;

    internal override bool IsBinary => true;

    internal override bool Next(out DxfTag tag)
    {
        tag = default;
        ReadOnlySpan<byte> rest = Data.Span[At..];
        if (rest.IsEmpty)
        {
            return false;
        }

        int wide = !_oneByte ? 2 : rest[0] == 255 ? 3 : 1;
        if (rest.Length < wide)
        {
            EndedWithin = true;
            return false;
        }

        int code = wide == 1 ? rest[0] : BinaryPrimitives.ReadInt16LittleEndian(rest[(wide - 2)..]);
        if (code is < -5 or > 1071)
        {
            Broken = (-1, code.ToString(CultureInfo.InvariantCulture));
            return false;
        }

        int start = At + wide;
        if (Value(code, rest[wide..], start, out tag, out int length))
        {
            At = start + length;
            return true;
        }

        EndedWithin = true;
        return false;
    }

    /// <summary>Reads a value; false when the file ends within it.</summary>
    private static bool Value(int code, ReadOnlySpan<byte> rest, int start, out DxfTag tag, out int length)
    {
        DxfValue kind = DxfValues.Of(code);
        int end = kind == DxfValue.Text ? rest.IndexOf((byte)0) : 0;
        length = kind switch
        {
            DxfValue.Double or DxfValue.Int64 => 8,
            DxfValue.Int32 => 4,
            DxfValue.Int16 => 2,
            DxfValue.Byte => 1,
            DxfValue.Chunk => rest.IsEmpty ? 1 : 1 + rest[0],
            _ => end < 0 ? int.MaxValue : end + 1,
        };
        if (rest.Length < length)
        {
            tag = default;
            return false;
        }

        tag = kind switch
        {
            DxfValue.Double => new DxfTag(code, 0, 0, -1, BinaryPrimitives.ReadDoubleLittleEndian(rest)),
            DxfValue.Int64 => new DxfTag(code, 0, 0, -1, BinaryPrimitives.ReadInt64LittleEndian(rest)),
            DxfValue.Int32 => new DxfTag(code, 0, 0, -1, BinaryPrimitives.ReadInt32LittleEndian(rest)),
            DxfValue.Int16 => new DxfTag(code, 0, 0, -1, BinaryPrimitives.ReadInt16LittleEndian(rest)),
            DxfValue.Byte => new DxfTag(code, 0, 0, -1, rest[0]),
            DxfValue.Chunk => new DxfTag(code, 0, start + 1, length - 1, 0),
            _ => new DxfTag(code, 0, start, end, 0),
        };
        return true;
    }
}
