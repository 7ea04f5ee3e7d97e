using System.Globalization;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>Hands out the numbers by which the records of a file refer to each other: hexadecimal, counted from 1, never twice.</summary>
internal sealed class DxfHandles
{
    private int _next = 1;

    /// <summary>The first that is still free, for the header.</summary>
    internal string Next => Hex(_next);

    internal string Take() => Hex(_next++);

    private static string Hex(int handle) => handle.ToString("X", CultureInfo.InvariantCulture);
}
