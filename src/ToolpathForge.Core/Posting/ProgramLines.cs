using System.Globalization;
using System.Text;
using ToolpathForge.Catalogue;

namespace ToolpathForge.Posting;

/// <summary>Lines of a program: numbering, comments, line length and line ends.</summary>
internal sealed class ProgramLines(Dialect dialect)
{
    /// <summary>A line number has five digits at most (NISTIR 6556, 3.3.1); numbers mean nothing, so that long programs begin again.</summary>
    private const int LargestNumber = 99999;

    private readonly StringBuilder _text = new();
    private int _number;

    /// <summary>A line of words, numbered where the dialect numbers lines.</summary>
    internal void Line(string words)
    {
        if (dialect.LineNumberStep > 0 && words != "%")
        {
            _number = _number + dialect.LineNumberStep > LargestNumber ? dialect.LineNumberStep : _number + dialect.LineNumberStep;
            words = string.Create(CultureInfo.InvariantCulture, $"N{_number} {words}");
        }

        _text.Append(words).Append(dialect.LineEnding);
    }

    /// <summary>A comment on a line of its own; nothing in dialects without comments. Longer than the dialect's lines: it goes on in the next.</summary>
    internal void Comment(string words)
    {
        if (dialect.Comments == CommentForm.None)
        {
            return;
        }

        foreach (string part in Parts(Plain(words), dialect.LongestLine - 4))
        {
            Raw(part);
        }
    }

    /// <summary>
    /// A message to whoever stands at the machine, on a line of its own: in brackets it is marked as one, so that controllers show it (NISTIR 6556, 3.3.4); nothing in dialects
    /// without comments.
    /// </summary>
    internal void Message(string words)
    {
        string mark = dialect.Comments == CommentForm.Brackets ? "MSG, " : "";
        string plain = Plain(words);
        int room = dialect.LongestLine - 4 - mark.Length;
        foreach (string part in Parts(plain, room))
        {
            Comment(mark + part);
        }
    }

    public override string ToString() => _text.ToString();

    private static IEnumerable<string> Parts(string plain, int room)
    {
        while (plain.Length > room)
        {
            int cut = plain.LastIndexOf(' ', room);
            cut = cut > 0 ? cut : room;
            yield return plain[..cut];
            plain = plain[cut..].TrimStart();
        }

        yield return plain;
    }

    private void Raw(string words) =>
        _text.Append(dialect.Comments == CommentForm.Brackets ? $"({words})" : $"; {words}").Append(dialect.LineEnding);

    // Comments do not nest, and controllers differ on anything outside ASCII. A round bracket becomes a square one.
    private static string Plain(string words)
    {
        var plain = new StringBuilder(words.Length);
        foreach (char c in words)
        {
            plain.Append(c switch
            {
                '(' => "[",
                ')' => "]",
                ';' => ",",
                '°' => " deg",
                '×' => "x",
                '⌀' => "dia ",
                '–' or '—' => "-",
                '′' or '’' => "'",
                '″' => "\"",
                < ' ' or > '~' => "?",
                _ => c.ToString(),
            });
        }

        return plain.ToString();
    }
}
