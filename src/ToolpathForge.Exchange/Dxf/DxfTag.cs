namespace ToolpathForge.Exchange.Dxf;

/// <summary>A pair of a DXF file: its group code and where its value lies.</summary>
/// <param name="Code">The group code.</param>
/// <param name="Line">The line of its value, from 1; 0 in a binary file.</param>
/// <param name="Start">Where the value's characters begin.</param>
/// <param name="Length">How many they are; -1 when the value is <paramref name="Number"/> instead.</param>
/// <param name="Number">The value where a binary file gives it as a number.</param>
internal readonly record struct DxfTag(int Code, int Line, int Start, int Length, double Number);

/// <summary>How the value of a group code is kept in a binary file (DXF reference, "Group code value types").</summary>
internal enum DxfValue
{
    Text,
    Double,
    Int16,
    Int32,
    Int64,
    Byte,
    Chunk,
}

/// <summary>The kinds of value by group code.</summary>
internal static class DxfValues
{
    internal static DxfValue Of(int code) => code switch
    {
        (>= 10 and <= 59) or (>= 110 and <= 149) or (>= 210 and <= 239) or (>= 460 and <= 469) or (>= 1010 and <= 1059) => DxfValue.Double,
        (>= 60 and <= 79) or (>= 170 and <= 179) or (>= 270 and <= 289) or (>= 370 and <= 389) or (>= 400 and <= 409) or (>= 1060 and <= 1070) => DxfValue.Int16,
        (>= 90 and <= 99) or (>= 420 and <= 429) or (>= 440 and <= 459) or 1071 => DxfValue.Int32,
        >= 160 and <= 169 => DxfValue.Int64,
        >= 290 and <= 299 => DxfValue.Byte,
        (>= 310 and <= 319) or 1004 => DxfValue.Chunk,
        _ => DxfValue.Text,
    };
}
