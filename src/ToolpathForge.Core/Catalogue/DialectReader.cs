using System.Collections.Immutable;
using System.Text.RegularExpressions;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Tables;

namespace ToolpathForge.Catalogue;

/// <summary>
/// Reads a dialect and checks its fixed lines: they may fill in a few words, set states and pause, but never move the machine. What is checked
/// by word is the language of NISTIR 6556 (2000).
/// </summary>
internal static partial class DialectReader
{
    private static readonly ImmutableArray<string> Placeholders = ["{program}", "{bit}", "{tool}", "{speed}"];

    // The longest filling that the writer puts in; a line must hold with it.
    private const int LongestFilling = 60;

    internal static Dialect? Read(Fields row, TableContext context)
    {
        LengthUnit unit = UnitWord.Find(row.Text("unit")) ?? LengthUnit.Millimetre;
        int longest = row.Whole("longest-line");
        bool sound = CatalogueReader.InOrder(row, "decimals", "arc-decimals", QuantityKind.Number, context);
        foreach (string key in (string[])["header", "footer", "bit-change-lines", "pause-lines", "spindle-lines"])
        {
            foreach (TextValue line in row.Texts(key))
            {
                sound &= CheckLine(line, Placeholders, longest, context);
            }
        }

        if (row.Has("dwell-word"))
        {
            sound &= CheckLine(new TextValue(row.Text("dwell-word"), "", row.Where("dwell-word")), ["{seconds}"], longest, context);
        }

        if ((row.Amount("spindle-dwell") > 0 || StopDwell(row) > 0) && !(row.Has("dwell-word") && row.Text("dwell-word").Contains("{seconds}", StringComparison.Ordinal)))
        {
            sound = Missing(row, "dwell-word", "{seconds}", context);
        }

        sound &= CheckStates(row, unit, context);
        sound &= DialectStops.Check(row, context);
        if (!FileEnding().IsMatch(row.Text("file-ending")))
        {
            context.Add(Finding.Of(CatalogueFindings.DialectFileEnding, row.Where("file-ending"), Arg.Of("text", TextPiece.Short(row.Text("file-ending")))));
            sound = false;
        }

        return sound ? Build(row, unit) : null;
    }

    private static bool CheckLine(TextValue line, ImmutableArray<string> allowed, int longest, TableContext context)
    {
        var text = Arg.Of("text", TextPiece.Short(line.Text));
        if (line.Text.Length == 0 || line.Text.Any(c => c is < ' ' or > '~'))
        {
            context.Add(Finding.Of(CatalogueFindings.DialectCharacter, line.At, text));
            return false;
        }

        foreach (Match placeholder in Braces().Matches(line.Text))
        {
            if (!allowed.Contains(placeholder.Value, StringComparer.Ordinal))
            {
                context.Add(Finding.Of(
                    CatalogueFindings.DialectPlaceholder,
                    line.Inside(placeholder.Index),
                    text,
                    Arg.Of("placeholder", placeholder.Value),
                    Arg.Of("words", string.Join(", ", allowed))));
                return false;
            }
        }

        int filled = line.Text.Length + (Braces().Count(line.Text) * LongestFilling);
        if (filled > longest)
        {
            context.Add(Finding.Of(CatalogueFindings.DialectLineTooLong, line.At, Quantity.Number(filled), Quantity.Number(longest), text));
            return false;
        }

        foreach (string word in Words(line.Text))
        {
            if (Moves(word))
            {
                context.Add(Finding.Of(CatalogueFindings.DialectMoves, line.At, text, Arg.Of("word", word)));
                return false;
            }
        }

        return true;
    }

    // The states a program relies on are set by its own header, so that it never depends on the program before.
    private static bool CheckStates(Fields row, LengthUnit unit, TableContext context)
    {
        bool sound = true;
        (string wanted, string other) = unit == LengthUnit.Inch ? ("G20", "G21") : ("G21", "G20");
        HashSet<string> header = [.. row.Texts("header").SelectMany(l => Words(l.Text))];
        foreach (string word in (string[])[wanted, "G17", "G90", "G94"])
        {
            sound &= header.Contains(word) || Missing(row, "header", word, context);
        }

        string? offset = header.Order(StringComparer.Ordinal).FirstOrDefault(IsWorkOffset);
        sound &= offset is not null || Missing(row, "header", "G54 (or another work offset up to G59)", context);
        foreach (string key in (string[])["header", "footer", "bit-change-lines", "pause-lines", "spindle-lines"])
        {
            foreach (TextValue line in row.Texts(key))
            {
                if (Words(line.Text).FirstOrDefault(w => w == other || w is "G18" or "G19" or "G91" or "G93" or "G41" or "G42" or "G43" || (IsWorkOffset(w) && offset is not null && w != offset)) is { } word)
                {
                    context.Add(Finding.Of(
                        CatalogueFindings.DialectContradicts, line.At, Arg.Of("text", TextPiece.Short(line.Text)), Arg.Of("word", word)));
                    sound = false;
                }
            }
        }

        bool ends = row.Texts("footer") is [.., { } last] && Words(last.Text).Any(w => w is "M2" or "M30");
        return (ends || Missing(row, "footer", "M2 or M30 on its last line", context)) && sound;
    }

    // Judgement: routers without a brake run on for 5 to 10 s. Whoever knows better says so.
    private const double UsualStopDwell = 10;

    private static double StopDwell(Fields row) => row.AmountOrNull("spindle-stop-dwell") ?? (row.Texts("spindle-lines").Length > 0 ? UsualStopDwell : 0);

    private static bool Missing(Fields row, string key, string word, TableContext context)
    {
        context.Add(Finding.Of(
            CatalogueFindings.DialectWordMissing, row.Where(key), Arg.Of("id", row.Text("id")), Arg.Of("key", key), Arg.Of("word", word)));
        return false;
    }

    // Words of a line outside comments, upper case, leading zeros of the number left out: G01 and g1 are the same word.
    internal static IEnumerable<string> Words(string line)
    {
        string code = Comment().Replace(line, " ").ToUpperInvariant();
        return Word().Matches(code).Select(m => m.Groups["letter"].Value + Number(m.Groups["number"].Value));
    }

    private static string Number(string digits)
    {
        string text = digits.TrimStart('0');
        return text.Length == 0 || text[0] == '.' ? "0" + text : text;
    }

    private static bool IsWorkOffset(string word) => word is "G54" or "G55" or "G56" or "G57" or "G58" or "G59" or "G59.1" or "G59.2" or "G59.3";

    private static bool Moves(string word) => word[0] is 'X' or 'Y' or 'Z' or 'A' or 'B' or 'C' or 'I' or 'J' or 'K' or 'R'
        || word is "G0" or "G1" or "G2" or "G3" or "G38.2" or "G28" or "G30" or "G10" or "G92"
        || (word.Length == 3 && word.StartsWith("G8", StringComparison.Ordinal) && word != "G80");

    private static Dialect Build(Fields row, LengthUnit unit) => new(
        row.Text("id"),
        row.Text("name"),
        unit,
        row.Whole("decimals"),
        row.Whole("arc-decimals"),
        row.Whole("feed-decimals"),
        row.Text("arcs") switch
        {
            "centre" => ArcForm.Centre,
            "radius" => ArcForm.Radius,
            _ => ArcForm.Lines,
        },
        row.Text("comments") switch
        {
            "brackets" => CommentForm.Brackets,
            "semicolon" => CommentForm.Semicolon,
            _ => CommentForm.None,
        },
        row.Whole("line-number-step"),
        row.Flag("modal"),
        Lines(row, "header"),
        Lines(row, "footer"),
        row.Text("bit-change") switch
        {
            "command" => BitChange.Command,
            "pause" => BitChange.Pause,
            _ => BitChange.SeparatePrograms,
        },
        Lines(row, "bit-change-lines"),
        Lines(row, "pause-lines"),
        Lines(row, "spindle-lines"),
        row.Amount("spindle-dwell"),
        row.Has("dwell-word") ? row.Text("dwell-word") : "",
        row.Whole("longest-line"),
        row.Text("line-ending") == "crlf" ? "\r\n" : "\n",
        row.Text("file-ending"),
        CatalogueReader.SourceOf(row))
    {
        SpindleStopDwell = StopDwell(row),
    };

    private static ImmutableArray<string> Lines(Fields row, string key) => [.. row.Texts(key).Select(t => t.Text)];

    [GeneratedRegex(@"\{[^}]*\}?", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Braces();

    [GeneratedRegex(@"\([^)]*\)?|;.*", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Comment();

    [GeneratedRegex(@"(?<letter>[A-Z])\s*(?<number>[+-]?[0-9]*\.?[0-9]+|\{)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Word();

    [GeneratedRegex(@"^\.[A-Za-z0-9]{1,8}\z", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex FileEnding();
}
