using System.Collections.Immutable;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>
/// Reads DXF, text or binary: LINE, ARC, CIRCLE, ELLIPSE, LWPOLYLINE, POLYLINE, SPLINE and INSERT of model space. It follows the DXF reference; what is neither is
/// counted and left alone.
/// </summary>
internal static class DxfReader
{
    internal static ReadDrawing Read(DxfSource source, ReadingBook book, Door door, DrawingUnit? given)
    {
        DxfContent content = DxfSections.Read(source, book);
        DrawingUnit? stated = DrawingUnit.OfInsertUnits(content.InsertUnits);
        if (given is not null && stated is not null && given.Millimetres != stated.Millimetres)
        {
            book.Tell(Finding.Of(ReadingFindings.UnitOverruled, book.At(0), Arg.Of("text", stated.Name), Arg.Of("key", given.Name)));
        }

        DrawingUnit? unit = given ?? stated;
        List<DrawnEntity> entities = book.Stopped ? [] : DxfExpansion.Entities(content, book, unit?.Millimetres ?? 1);
        ImmutableArray<DrawnLayer> layers = [.. content.Layers];
        string version = content.Version.Length > 0 ? content.Version : "without version";
        return book.Close(door, $"DXF {version}, {(source.IsBinary ? "binary" : "text")}", unit, layers, entities);
    }
}
