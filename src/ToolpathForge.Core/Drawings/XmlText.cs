using System.Text;

namespace ToolpathForge.Drawings;

/// <summary>Any text as content or attribute of XML 1.0.</summary>
internal static class XmlText
{
    private const char Replacement = '\uFFFD';

    /// <summary>
    /// Escapes what XML would read as markup. Characters that XML 1.0 cannot hold at all, even escaped (most control characters, lone surrogates,
    /// U+FFFE, U+FFFF), become the replacement character. White space other than the blank is written as a reference, since attributes would lose it.
    /// </summary>
    internal static string Escape(string text)
    {
        var result = new StringBuilder(text.Length + 8);
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            switch (c)
            {
                case '&':
                    result.Append("&amp;");
                    break;
                case '<':
                    result.Append("&lt;");
                    break;
                case '>':
                    result.Append("&gt;");
                    break;
                case '"':
                    result.Append("&quot;");
                    break;
                case '\t' or '\n' or '\r':
                    result.Append("&#").Append((int)c).Append(';');
                    break;
                case < ' ' or '\uFFFE' or '\uFFFF':
                    result.Append(Replacement);
                    break;
                default:
                    if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                    {
                        result.Append(c).Append(text[++i]);
                    }
                    else
                    {
                        result.Append(char.IsSurrogate(c) ? Replacement : c);
                    }

                    break;
            }
        }

        return result.ToString();
    }
}
