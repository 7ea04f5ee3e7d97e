using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Tables;

namespace ToolpathForge.Catalogue;

/// <summary>
/// Checks the lines of a dialect at which a person comes near the bit: pauses, bit changes, the end. Words as in NISTIR 6556 (2000): M0 waits whatever the controller's switches say,
/// M1 only if a switch is on, so it does not count; M5 stops the spindle.
/// </summary>
internal static class DialectStops
{
    /// <summary>A line at which hands come near lacks a word.</summary>
    internal static readonly FindingKind Missing = new(
        "dialect-stop-missing",
        Severity.Stop,
        "The {key} of dialect {id} must hold {word}.",
        "Add it: hands come near the bit there. The README of dialects shows the lines.")
    { Unusable = true };

    /// <summary>A line at which hands come near starts the spindle, ends the program, or stops only if a switch is on.</summary>
    internal static readonly FindingKind Undone = new(
        "dialect-stop-undone",
        Severity.Stop,
        "The line '{text}' holds {word}, which has no place there.",
        "Remove it: the program starts the spindle itself; M1 stops only where a switch is on, and M2 or M30 would end the run.")
    { Unusable = true };

    internal static bool Check(Fields row, TableContext context)
    {
        bool runs = row.Texts("spindle-lines").Length > 0;
        bool sound = Stops(row, "pause-lines", "M0", runs, context);
        sound &= row.Text("bit-change") switch
        {
            "command" => Stops(row, "bit-change-lines", "M6", runs, context),
            "pause" => Stops(row, "bit-change-lines", "M0", runs, context),
            _ => true,
        };
        if (runs)
        {
            string[][] footer = WordsOf(row, "footer");
            sound &= footer.SkipLast(1).Any(words => words.Contains("M5", StringComparer.Ordinal)) || Lacks(row, "footer", "M5 on a line before the last", context);
            sound &= WordsOf(row, "spindle-lines").Any(words => words.Contains("M3", StringComparer.Ordinal)) || Lacks(row, "spindle-lines", "M3", context);
        }

        return sound & NothingStartsOrEnds(row, context);
    }

    // The stop, and the spindle's own stop on a line before it, so that it has time to stand.
    private static bool Stops(Fields row, string key, string stop, bool runs, TableContext context)
    {
        string[][] lines = WordsOf(row, key);
        int at = Array.FindIndex(lines, words => words.Contains(stop, StringComparer.Ordinal));
        return at < 0
            ? Lacks(row, key, stop, context)
            : !runs || lines.Take(at).Any(words => words.Contains("M5", StringComparer.Ordinal)) || Lacks(row, key, $"M5 on a line before {stop}", context);
    }

    // The spindle starts in spindle-lines only, where the program knows of it; no stop ends the program, and a stop that a switch may skip is none.
    private static bool NothingStartsOrEnds(Fields row, TableContext context)
    {
        bool sound = true;
        foreach (string key in (string[])["header", "footer", "bit-change-lines", "pause-lines"])
        {
            foreach (TextValue line in row.Texts(key))
            {
                if (DialectReader.Words(line.Text).FirstOrDefault(w => w is "M3" or "M4" or "M1" || (key != "footer" && w is "M2" or "M30")) is { } word)
                {
                    context.Add(Finding.Of(Undone, line.At, Arg.Of("text", TextPiece.Short(line.Text)), Arg.Of("word", word)));
                    sound = false;
                }
            }
        }

        return sound;
    }

    private static string[][] WordsOf(Fields row, string key) => [.. row.Texts(key).Select(line => DialectReader.Words(line.Text).ToArray())];

    private static bool Lacks(Fields row, string key, string word, TableContext context)
    {
        context.Add(Finding.Of(Missing, row.Where(key), Arg.Of("id", row.Text("id")), Arg.Of("key", key), Arg.Of("word", word)));
        return false;
    }
}
