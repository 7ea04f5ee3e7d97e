using ToolpathForge.Drawings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>
/// A file taking shape: what surrounds the entities. Every record carries a handle and its owner's handle; readers check both.
/// </summary>
internal sealed class DxfFile
{
    private readonly DxfTags _entities = new();
    private readonly DxfHandles _handles = new();
    private readonly List<(string Name, LineRole Role)> _layers = [];
    private readonly double _dashScale;
    private readonly DxfSpaces _spaces;

    /// <summary>An empty file.</summary>
    /// <param name="dashScale">mm of the drawing for a mm of dash.</param>
    internal DxfFile(double dashScale)
    {
        _dashScale = dashScale;
        _spaces = new DxfSpaces(_handles);
        Entities = new DxfEntities(_entities, _handles, _spaces.ModelSpace);
    }

    internal DxfEntities Entities { get; }

    internal void AddLayer(string name, LineRole role) => _layers.Add((name, role));

    /// <summary>The whole text.</summary>
    internal string Finish(Box2 box)
    {
        var tables = new DxfTables(_handles);
        DxfTags tableSection = tables.Write(_spaces, _layers);
        DxfTags blocks = _spaces.Blocks();
        DxfTags objects = _spaces.Objects(box);

        var file = new DxfTags();
        Header(file, box, _handles.Next);
        Section(file, "CLASSES", new DxfTags());
        Section(file, "TABLES", tableSection);
        Section(file, "BLOCKS", blocks);
        Section(file, "ENTITIES", _entities);
        Section(file, "OBJECTS", objects);
        file.Add(0, "EOF");
        return file.Text;
    }

    private void Header(DxfTags file, Box2 box, string seed)
    {
        Box2 extent = box.IsEmpty ? default : box;
        var header = new DxfTags();
        header.Add(9, "$ACADVER").Add(1, "AC1015");
        header.Add(9, "$DWGCODEPAGE").Add(3, "ANSI_1252");
        header.Add(9, "$INSBASE").AddPoint(10, 0, 0);
        header.Add(9, "$EXTMIN").AddPoint(10, extent.MinX, extent.MinY);
        header.Add(9, "$EXTMAX").AddPoint(10, extent.MaxX, extent.MaxY);
        header.Add(9, "$LTSCALE").Add(40, _dashScale);
        header.Add(9, "$HANDSEED").Add(5, seed);
        header.Add(9, "$INSUNITS").Add(70, DxfUnits.Millimetres);
        header.Add(9, "$MEASUREMENT").Add(70, 1);
        header.Add(9, "$LWDISPLAY").Add(290, 1);
        Section(file, "HEADER", header);
    }

    private static void Section(DxfTags file, string name, DxfTags content)
    {
        file.Add(0, "SECTION").Add(2, name);
        file.Append(content);
        file.Add(0, "ENDSEC");
    }
}

/// <summary>Codes of the header variable $INSUNITS that a reader or writer of ours deals with.</summary>
internal static class DxfUnits
{
    internal const int Millimetres = 4;
}
