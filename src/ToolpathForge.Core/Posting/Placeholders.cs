using System.Collections.Immutable;
using System.Globalization;

namespace ToolpathForge.Posting;

/// <summary>The fixed placeholders of a dialect's lines. There is nothing to evaluate: a name in braces becomes a value, and no other name is allowed.</summary>
public static class Placeholders
{
    /// <summary>Names that header, footer, bit-change, pause and spindle lines may use.</summary>
    public static ImmutableArray<string> Names { get; } = ["program", "bit", "tool", "speed"];

    /// <summary>The line with its placeholders filled.</summary>
    internal static string Fill(string line, string program, string bit, int tool, double speed) => line
        .Replace("{program}", program, StringComparison.Ordinal)
        .Replace("{bit}", bit, StringComparison.Ordinal)
        .Replace("{tool}", tool.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
        .Replace("{speed}", Math.Round(speed).ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);

    /// <summary>The dwell line filled.</summary>
    internal static string FillSeconds(string line, double seconds) =>
        line.Replace("{seconds}", seconds.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);
}
