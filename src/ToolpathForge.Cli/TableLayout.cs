using System.Collections.Immutable;
using ToolpathForge.Service;

namespace ToolpathForge.Cli;

/// <summary>
/// Lays a table out for a terminal of 80 columns. Columns stand two spaces apart and are as wide as their widest text; where that is too wide, the widest
/// are narrowed and their text runs on below, broken at spaces. A table whose single words are too wide stays too wide: cutting a word would make it
/// unusable for copying.
/// </summary>
internal static class TableLayout
{
    /// <summary>The width that terminals have always had.</summary>
    internal const int Screen = 80;

    private const int Between = 2;

    internal static void Write(Section section, TextWriter to)
    {
        ImmutableArray<string> heading = [.. section.Columns.Select(c => c.Heading)];
        int[] widths = Widths(section, heading);
        foreach (ImmutableArray<string> row in section.Rows.Prepend(heading))
        {
            ImmutableArray<string>[] cells = [.. row.Select((text, i) => Broken(text, widths[i]))];
            int lines = cells.Max(c => c.Length);
            for (int line = 0; line < lines; line++)
            {
                IEnumerable<string> parts = cells.Select((cell, i) => Padded(line < cell.Length ? cell[line] : "", widths[i], section.Columns[i].IsNumber));
                to.WriteLine(string.Join("  ", parts).TrimEnd());
            }
        }
    }

    /// <summary>A text in lines of at most a width, broken at spaces; a longer word has a line of its own.</summary>
    internal static ImmutableArray<string> Broken(string text, int width)
    {
        if (text.Length <= width)
        {
            return [text];
        }

        var lines = ImmutableArray.CreateBuilder<string>();
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                lines.Add(line);
                line = "";
            }

            line = line.Length == 0 ? word : line + " " + word;
        }

        lines.Add(line);
        return lines.ToImmutable();
    }

    private static string Padded(string text, int width, bool right) => right ? text.PadLeft(width) : text.PadRight(width);

    private static int[] Widths(Section section, ImmutableArray<string> heading)
    {
        int count = section.Columns.Length;
        var widths = new int[count];
        var least = new int[count];
        for (int i = 0; i < count; i++)
        {
            string[] texts = [.. section.Rows.Select(r => r[i])];
            int narrow = LongestWord(heading[i]);

            // A number and its unit stay together.
            least[i] = texts.Select(t => section.Columns[i].IsNumber ? t.Length : LongestWord(t)).Append(narrow).Max();
            widths[i] = texts.Select(t => t.Length).Append(heading[i].Length).Max();
        }

        int over = widths.Sum() + (Between * (count - 1)) - Screen;
        while (over > 0)
        {
            int at = -1;
            for (int i = 0; i < count; i++)
            {
                at = widths[i] > least[i] && (at < 0 || widths[i] > widths[at]) ? i : at;
            }

            if (at < 0)
            {
                break;
            }

            widths[at]--;
            over--;
        }

        return widths;
    }

    private static int LongestWord(string text) => text.Split(' ').Max(w => w.Length);
}
