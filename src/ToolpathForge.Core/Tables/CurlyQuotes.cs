namespace ToolpathForge.Tables;

/// <summary>
/// The quotes that a word processor puts in place of straight ones, where they stand for those of TOML: outside texts and remarks. What stands inside a text stays as it is, so that an inch
/// mark within straight quotes is still one. No character moves: places in the file stay true.
/// </summary>
internal static class CurlyQuotes
{
    /// <summary>The text with such quotes made straight; the same text where it has none.</summary>
    internal static string MadeStraight(string text)
    {
        if (text.AsSpan().IndexOfAny('\u201C', '\u201D', '\u201E') < 0)
        {
            return text;
        }

        char[] straight = text.ToCharArray();
        for (int i = 0; i < straight.Length; i++)
        {
            switch (straight[i])
            {
                case '#':
                    i = EndOfLine(straight, i);
                    break;
                case '"' or '\'':
                    i = EndOfText(straight, i, straight[i]);
                    break;
                case '\u201C' or '\u201D' or '\u201E':
                    straight[i] = '"';
                    i = EndOfCurlyText(straight, i);
                    break;
                default:
                    break;
            }
        }

        return new string(straight);
    }

    private static int EndOfLine(char[] text, int at)
    {
        int end = Array.IndexOf(text, '\n', at);
        return end < 0 ? text.Length : end;
    }

    // Texts over several lines are in no file of ours: three quotes begin and end an empty text before another.
    private static int EndOfText(char[] text, int at, char quote)
    {
        int end = at + 1;
        while (end < text.Length && text[end] != quote && text[end] != '\n')
        {
            end += quote == '"' && text[end] == '\\' ? 2 : 1;
        }

        return end;
    }

    private static int EndOfCurlyText(char[] text, int at)
    {
        int end = at + 1;
        while (end < text.Length && text[end] is not ('"' or '\u201C' or '\u201D' or '\n'))
        {
            end++;
        }

        if (end < text.Length && text[end] != '\n')
        {
            text[end] = '"';
        }

        return end;
    }
}
