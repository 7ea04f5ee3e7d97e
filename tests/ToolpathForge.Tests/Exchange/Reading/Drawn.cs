using System.Text;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Small drawings written by hand, and the ways to read them.</summary>
internal static class Drawn
{
    internal static ReadDrawing Strict(byte[] bytes, string name = "drawing.dxf") =>
        DrawingReader.ReadStrict(bytes, name, cancel: TestContext.Current.CancellationToken);

    internal static ReadDrawing Repairing(byte[] bytes, DrawingUnit? unit = null, DrawingLimits? limits = null) =>
        DrawingReader.ReadRepairing(bytes, "drawing.dxf", unit, limits, TestContext.Current.CancellationToken);

    internal static ReadDrawing Strict(string text) => Strict(Encoding.UTF8.GetBytes(text));

    internal static ReadDrawing Repairing(string text) => Repairing(Encoding.UTF8.GetBytes(text));

    /// <summary>Group codes and values with blanks between, as the lines of a file; a value may hold a blank as '~'.</summary>
    internal static string Lines(string pairs) => string.Join('\n', pairs.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)).Replace('~', ' ') + "\n";

    /// <summary>A whole file around its entities.</summary>
    internal static string File(string entities, string blocks = "", string layers = "", string header = "9 $ACADVER 1 AC1015 9 $INSUNITS 70 4")
    {
        string table = layers.Length > 0 ? $"0 SECTION 2 TABLES 0 TABLE 2 LAYER {layers} 0 ENDTAB 0 ENDSEC" : "";
        string block = blocks.Length > 0 ? $"0 SECTION 2 BLOCKS {blocks} 0 ENDSEC" : "";
        return Lines($"0 SECTION 2 HEADER {header} 0 ENDSEC {table} {block} 0 SECTION 2 ENTITIES {entities} 0 ENDSEC 0 EOF");
    }

    internal static string Codes(IEnumerable<Finding> findings) => string.Join(' ', findings.Select(f => f.Kind.Code));
}
