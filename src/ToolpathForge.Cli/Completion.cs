using System.CommandLine;
using System.Globalization;
using ToolpathForge.Service;

namespace ToolpathForge.Cli;

/// <summary>
/// Answers a shell that completes a line: <c>toolpathforge "[suggest:POSITION]" LINE</c>, the form of the command-line library, prints a word a line.
/// Files are left to the shell.
/// </summary>
internal static class Completion
{
    private const string Opening = "[suggest:";

    /// <summary>The position asked about; null for any other command line.</summary>
    internal static int? Position(string[] args) =>
        args is [var first, _] && first.StartsWith(Opening, StringComparison.Ordinal) && first.EndsWith(']')
            && int.TryParse(first.AsSpan(Opening.Length, first.Length - Opening.Length - 1), NumberStyles.None, CultureInfo.InvariantCulture, out int position)
            ? position
            : null;

    /// <summary>Words that may stand at a place of a line.</summary>
    /// <param name="root">The tree of commands.</param>
    /// <param name="line">The line as typed, with the command's own name first.</param>
    /// <param name="position">The place, in characters from the line's start.</param>
    internal static IEnumerable<string> For(RootCommand root, string line, int position)
    {
        string typed = line[..Math.Clamp(position, 0, line.Length)];
        string[] words = typed.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        bool begun = typed.Length > 0 && typed[^1] != ' ';
        string[] before = [.. words.Skip(1).Take(words.Length - 1 - (begun ? 1 : 0))];
        string start = begun ? words[^1] : "";
        IEnumerable<string> may = before switch
        {
            _ when words.Length == 0 || (begun && words.Length == 1) => [],
            [.., "--unit"] => ["in", "mm"],
            ["list"] => ListCatalogue.Kinds,
            ["help"] => root.Subcommands.Select(c => c.Name),
            [] => [.. root.Subcommands.Select(c => c.Name), .. Options(root)],
            [var verb, ..] => root.Subcommands.FirstOrDefault(c => c.Name == verb) is { } command ? [.. Options(command), "--help"] : [],
        };
        return may.Where(w => w.StartsWith(start, StringComparison.Ordinal)).Except(before, StringComparer.Ordinal).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);
    }

    private static IEnumerable<string> Options(Command command) => command.Options.Select(o => o.Name);
}
