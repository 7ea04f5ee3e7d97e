using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Exchange.Svg;
using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Reading;

/// <summary>
/// Reads drawings: DXF as text from R12 on or binary, and SVG. Whatever the bytes are, the answer is a drawing with findings, never an exception; no other file is opened,
/// whatever the drawing refers to.
/// </summary>
public static class DrawingReader
{
    /// <summary>Reads a sound drawing; one that needs any repair is refused, with all that is wrong with it told.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="file">Its name as the person gave it, for findings.</param>
    /// <param name="unit">The unit to read it in; null for the one it states.</param>
    /// <param name="limits">How much is read; null for <see cref="DrawingLimits.Default"/>.</param>
    /// <param name="cancel">Asked while reading.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static ReadDrawing ReadStrict(
        ReadOnlyMemory<byte> bytes, string file, DrawingUnit? unit = null, DrawingLimits? limits = null, CancellationToken cancel = default) =>
        Read(bytes, file, Door.Strict, unit, limits, cancel);

    /// <summary>The finding for a drawing that states no unit, for whoever has an answer of its own to that.</summary>
    public static FindingKind UnitMissing => ReadingFindings.UnitMissing;

    /// <summary>Reads a drawing and puts right what can be; every repair is told.</summary>
    /// <inheritdoc cref="ReadStrict"/>
    public static ReadDrawing ReadRepairing(
        ReadOnlyMemory<byte> bytes, string file, DrawingUnit? unit = null, DrawingLimits? limits = null, CancellationToken cancel = default) =>
        Read(bytes, file, Door.Repairing, unit, limits, cancel);

    /// <summary>Says what a drawing holds.</summary>
    /// <inheritdoc cref="ReadStrict"/>
    public static DrawingSummary Summarize(
        ReadOnlyMemory<byte> bytes, string file, DrawingUnit? unit = null, DrawingLimits? limits = null, CancellationToken cancel = default) =>
        DrawingSummary.Of(Read(bytes, file, Door.Repairing, unit, limits, cancel));

    private static ReadDrawing Read(ReadOnlyMemory<byte> bytes, string file, Door door, DrawingUnit? unit, DrawingLimits? limits, CancellationToken cancel)
    {
        var book = new ReadingBook(file, limits ?? DrawingLimits.Default, cancel);
        if (bytes.Length > book.Limits.Bytes)
        {
            book.Tell(Finding.Of(ReadingFindings.OverSize, book.At(0), Arg.Of("megabytes", Quantity.Number(Math.Round(book.Limits.Bytes / 1048576.0, 3)))));
            return book.Close(door, "", unit, [], []);
        }

        if (DxfSource.Open(bytes) is { } source)
        {
            return DxfReader.Read(source, book, door, unit);
        }

        if (SvgReader.Read(bytes, book, door, unit) is { } svg)
        {
            return svg;
        }

        book.Tell(Finding.Of(ReadingFindings.NotRecognised, book.At(0)));
        return book.Close(door, "", unit, [], []);
    }
}
