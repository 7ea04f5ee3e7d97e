using ToolpathForge.Exchange.Reading;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>What a file holds, before blocks are put in place.</summary>
internal sealed class DxfContent
{
    /// <summary>The header's $ACADVER; empty when it has none.</summary>
    internal string Version { get; set; } = "";

    /// <summary>The header's $DWGCODEPAGE; empty when it has none.</summary>
    internal string CodePage { get; set; } = "";

    /// <summary>The header's $INSUNITS; 0 when it has none.</summary>
    internal int InsertUnits { get; set; }

    internal List<DrawnLayer> Layers { get; } = [];

    internal Dictionary<string, DxfBlock> Blocks { get; } = new(StringComparer.OrdinalIgnoreCase);

    internal List<DxfShape> Entities { get; } = [];
}
