using System.Collections.Immutable;
using ToolpathForge.Catalogue;

namespace ToolpathForge.Posting;

/// <summary>The modes that a dialect's header states, ready to be stated again.</summary>
internal static class HeaderModes
{
    /// <summary>
    /// The header's lines with nothing but the words of plane, unit, cutter radius, work offset, path, canned cycle, distance and feed mode; lines without any are left out. G49 is left out:
    /// a bit changer may have put the length of the new bit in force.
    /// </summary>
    /// <param name="header">The header.</param>
    internal static ImmutableArray<string> Of(ImmutableArray<string> header) =>
        [.. header.Select(line => string.Join(' ', Words(line).Where(IsMode))).Where(line => line.Length > 0)];

    /// <summary>The words of a line, comments apart.</summary>
    /// <param name="line">A line of a dialect.</param>
    internal static IEnumerable<string> Words(string line) => DialectReader.Words(line);

    private static bool IsMode(string word) => word is "G17" or "G20" or "G21" or "G70" or "G71" or "G40" or "G54" or "G55" or "G56" or "G57" or "G58" or "G59" or "G61" or "G61.1" or "G64"
        or "G80" or "G90" or "G94";
}
