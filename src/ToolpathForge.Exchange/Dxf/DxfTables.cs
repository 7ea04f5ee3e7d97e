using ToolpathForge.Drawings;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>The tables: line types, layers, and those that must be there though nothing of ours uses them.</summary>
internal sealed class DxfTables(DxfHandles handles)
{
    /// <summary>Line weights that the format knows, hundredths of a millimetre.</summary>
    private static readonly int[] s_weights = [0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211];

    private readonly DxfTags _tags = new();

    internal DxfTags Write(DxfSpaces spaces, List<(string Name, LineRole Role)> layers)
    {
        Table("VPORT", 0, _ => { });
        LineRole[] dashed = [.. layers.Select(l => l.Role).Distinct().Where(r => DrawingStyle.PenOf(r).Dashes.Length > 0).Order()];
        Table("LTYPE", 3 + dashed.Length, owner =>
        {
            LineType(owner, "ByBlock", "", []);
            LineType(owner, "ByLayer", "", []);
            LineType(owner, "Continuous", "full line", []);
            foreach (LineRole role in dashed)
            {
                LineType(owner, DrawingStyle.NameOf(role), "as drawn on paper", [.. DrawingStyle.PenOf(role).Dashes]);
            }
        });
        Table("LAYER", 1 + layers.Count, owner =>
        {
            Layer(owner, "0", 7, "Continuous", -3);
            foreach ((string name, LineRole role) in layers)
            {
                Pen pen = DrawingStyle.PenOf(role);
                Layer(owner, name, ColourOf(role), pen.Dashes.Length > 0 ? DrawingStyle.NameOf(role) : "Continuous", WeightOf(pen.Width));
            }
        });
        Table("STYLE", 1, owner => Record("STYLE", owner, "AcDbTextStyleTableRecord", "Standard", 0)
            .Add(40, 0.0).Add(41, 1.0).Add(50, 0.0).Add(71, 0).Add(42, 2.5).Add(3, "txt").Add(4, ""));
        Table("VIEW", 0, _ => { });
        Table("UCS", 0, _ => { });
        Table("APPID", 1, owner => Record("APPID", owner, "AcDbRegAppTableRecord", "ACAD", 0));
        DimensionStyles();
        Table("BLOCK_RECORD", 2, owner =>
        {
            BlockRecord(owner, spaces.ModelSpace, "*Model_Space", spaces.ModelLayout);
            BlockRecord(owner, spaces.PaperSpace, "*Paper_Space", spaces.PaperLayout);
        });
        return _tags;
    }

    /// <summary>The nearest of the format's 255 numbered colours: 7 is black on paper and white on a dark screen, 8 and 9 are greys.</summary>
    internal static int ColourOf(LineRole role) => role switch
    {
        LineRole.CutPath or LineRole.RampPath or LineRole.Tab => 5,
        LineRole.RapidPath or LineRole.Construction or LineRole.Axis => 8,
        LineRole.Bed => 9,
        LineRole.Grain => 32,
        _ => 7,
    };

    internal static int WeightOf(double millimetres) => s_weights.MinBy(w => Math.Abs(w - (millimetres * 100)));

    private void Table(string name, int count, Action<string> records)
    {
        string handle = handles.Take();
        _tags.Add(0, "TABLE").Add(2, name).Add(5, handle).Add(330, "0").Add(100, "AcDbSymbolTable").Add(70, count);
        records(handle);
        _tags.Add(0, "ENDTAB");
    }

    private DxfTags Record(string kind, string owner, string subclass, string name, int flags) =>
        _tags.Add(0, kind).Add(5, handles.Take()).Add(330, owner).Add(100, "AcDbSymbolTableRecord").Add(100, subclass).Add(2, name).Add(70, flags);

    private void LineType(string owner, string name, string description, double[] dashes)
    {
        Record("LTYPE", owner, "AcDbLinetypeTableRecord", name, 0).Add(3, description).Add(72, 65).Add(73, dashes.Length).Add(40, dashes.Sum());

        // Gaps are negative.
        for (int i = 0; i < dashes.Length; i++)
        {
            _tags.Add(49, i % 2 == 0 ? dashes[i] : -dashes[i]).Add(74, 0);
        }
    }

    private void Layer(string owner, string name, int colour, string lineType, int weight) =>
        Record("LAYER", owner, "AcDbLayerTableRecord", name, 0).Add(62, colour).Add(6, lineType).Add(370, weight);

    private void DimensionStyles()
    {
        string handle = handles.Take();
        _tags.Add(0, "TABLE").Add(2, "DIMSTYLE").Add(5, handle).Add(330, "0").Add(100, "AcDbSymbolTable").Add(70, 1).Add(100, "AcDbDimStyleTable");

        // A dimension style's handle has a group code of its own.
        _tags.Add(0, "DIMSTYLE").Add(105, handles.Take()).Add(330, handle).Add(100, "AcDbSymbolTableRecord")
            .Add(100, "AcDbDimStyleTableRecord").Add(2, "Standard").Add(70, 0).Add(0, "ENDTAB");
    }

    private void BlockRecord(string owner, string handle, string name, string layout) =>
        _tags.Add(0, "BLOCK_RECORD").Add(5, handle).Add(330, owner).Add(100, "AcDbSymbolTableRecord").Add(100, "AcDbBlockTableRecord")
            .Add(2, name).Add(340, layout);
}
