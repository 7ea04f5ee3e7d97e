using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>Model and paper space: their blocks, their layouts, and the dictionary that names them. They refer to each other by handle, so the handles are taken first.</summary>
internal sealed class DxfSpaces
{
    private readonly DxfHandles _handles;
    private readonly string _root;
    private readonly string _groups;
    private readonly string _layouts;

    internal DxfSpaces(DxfHandles handles)
    {
        _handles = handles;
        ModelSpace = handles.Take();
        PaperSpace = handles.Take();
        ModelLayout = handles.Take();
        PaperLayout = handles.Take();
        _root = handles.Take();
        _groups = handles.Take();
        _layouts = handles.Take();
    }

    internal string ModelSpace { get; }

    internal string PaperSpace { get; }

    internal string ModelLayout { get; }

    internal string PaperLayout { get; }

    internal DxfTags Blocks()
    {
        var tags = new DxfTags();
        Block(tags, "*Model_Space", ModelSpace, false);
        Block(tags, "*Paper_Space", PaperSpace, true);
        return tags;
    }

    internal DxfTags Objects(Box2 box)
    {
        var tags = new DxfTags();
        Dictionary(tags, _root, "0", ("ACAD_GROUP", _groups), ("ACAD_LAYOUT", _layouts));
        Dictionary(tags, _groups, _root);
        Dictionary(tags, _layouts, _root, ("Model", ModelLayout), ("Layout1", PaperLayout));
        Layout(tags, ModelLayout, "Model", 0, ModelSpace, box);
        Layout(tags, PaperLayout, "Layout1", 1, PaperSpace, Box2.Empty);
        return tags;
    }

    private void Block(DxfTags tags, string name, string owner, bool paper)
    {
        tags.Add(0, "BLOCK").Add(5, _handles.Take()).Add(330, owner).Add(100, "AcDbEntity");
        if (paper)
        {
            tags.Add(67, 1);
        }

        tags.Add(8, "0").Add(100, "AcDbBlockBegin").Add(2, name).Add(70, 0).AddPoint(10, 0, 0).Add(3, name).Add(1, "");
        tags.Add(0, "ENDBLK").Add(5, _handles.Take()).Add(330, owner).Add(100, "AcDbEntity");
        if (paper)
        {
            tags.Add(67, 1);
        }

        tags.Add(8, "0").Add(100, "AcDbBlockEnd");
    }

    private static void Dictionary(DxfTags tags, string handle, string owner, params ReadOnlySpan<(string Name, string Handle)> entries)
    {
        tags.Add(0, "DICTIONARY").Add(5, handle).Add(330, owner).Add(100, "AcDbDictionary").Add(281, 1);
        foreach ((string name, string target) in entries)
        {
            tags.Add(3, name).Add(350, target);
        }
    }

    private void Layout(DxfTags tags, string handle, string name, int order, string space, Box2 box)
    {
        Box2 extent = box.IsEmpty ? default : box;
        tags.Add(0, "LAYOUT").Add(5, handle).Add(330, _layouts);

        // Plot settings: A4 upright, no margins, millimetres, 1:1; 1024 says that the settings belong to the model.
        tags.Add(100, "AcDbPlotSettings").Add(1, "").Add(2, "").Add(4, "A4").Add(6, "")
            .Add(40, 0.0).Add(41, 0.0).Add(42, 0.0).Add(43, 0.0).Add(44, 210.0).Add(45, 297.0)
            .Add(46, 0.0).Add(47, 0.0).Add(48, 0.0).Add(49, 0.0).Add(140, 0.0).Add(141, 0.0).Add(142, 1.0).Add(143, 1.0)
            .Add(70, order == 0 ? 1024 : 0).Add(72, 1).Add(73, 0).Add(74, 5).Add(7, "").Add(75, 16).Add(147, 1.0).Add(148, 0.0).Add(149, 0.0);
        tags.Add(100, "AcDbLayout").Add(1, name).Add(70, 1).Add(71, order)
            .Add(10, 0.0).Add(20, 0.0).Add(11, 210.0).Add(21, 297.0)
            .AddPoint(12, 0, 0).AddPoint(14, extent.MinX, extent.MinY).AddPoint(15, extent.MaxX, extent.MaxY)
            .Add(146, 0.0).AddPoint(13, 0, 0).AddPoint(16, 1, 0).AddPoint(17, 0, 1).Add(76, 0).Add(330, space);
    }
}
