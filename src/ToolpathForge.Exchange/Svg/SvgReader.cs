using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Svg;

/// <summary>
/// Reads SVG: path, rect, circle, ellipse, line, polyline and polygon, in groups, nested views and uses of the same file. It follows SVG 1.1, and SVG 2 where that is wider.
/// Whether a line is stroked or filled does not matter.
/// </summary>
internal static class SvgReader
{
    /// <summary>Reads a drawing; null when the file is no SVG, and nothing is noted then.</summary>
    internal static ReadDrawing? Read(ReadOnlyMemory<byte> bytes, ReadingBook book, Door door, DrawingUnit? given)
    {
        if (SvgProlog.Of(bytes) is not { } prolog)
        {
            return null;
        }

        if (prolog.HasSubset)
        {
            book.Tell(Finding.Of(SvgFindings.Entities, book.At(0)));
            return book.Close(door, "", given, [], []);
        }

        if (prolog.HasDoctype)
        {
            book.Ignore("DOCTYPE", IgnoreReason.NoCurve);
        }

        var document = SvgDocument.Read(prolog, book);
        if (document.Root is not { } root)
        {
            if (!book.Stopped)
            {
                book.Tell(Finding.Of(ReadingFindings.NotRecognised, book.At(0)));
            }

            return book.Close(door, "", given, [], []);
        }

        var frame = SvgFrame.Of(root, book, given);
        List<DrawnEntity> entities = book.Stopped ? [] : SvgExpansion.Entities(document, frame, book);
        if (book.OwnUnit is var (line, text) && !frame.IsInPixels)
        {
            book.Tell(Finding.Of(SvgFindings.OwnUnit, book.At(line), Arg.Of("text", text)));
        }

        return book.Close(door, "SVG", frame.Unit, [], entities);
    }
}
