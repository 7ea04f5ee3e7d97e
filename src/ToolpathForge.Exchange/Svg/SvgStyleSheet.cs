namespace ToolpathForge.Exchange.Svg;

/// <summary>
/// What the style elements of a file say about whether something is seen or clipped. Rules for an element's name, class or id, or a name with one of these, are applied
/// (CSS 2.2, 5 and 6.4); any other rule that bears on what is cut is counted. How a line looks doesn't matter.
/// </summary>
internal sealed class SvgStyleSheet
{
    private static readonly HashSet<string> s_applied = new(StringComparer.Ordinal) { "display", "visibility", "clip-path", "mask" };

    /// <summary>What moves or shapes an element (SVG 2, "Geometry properties", and transforms); in a style sheet its lengths follow rules of their own.</summary>
    private static readonly HashSet<string> s_shaping = new(StringComparer.Ordinal)
    {
        "d", "x", "y", "cx", "cy", "r", "rx", "ry", "width", "height", "transform", "transform-origin", "translate", "rotate", "scale",
    };

    /// <summary>By selector and property: what counts of all that was said. One lookup an element, however many rules there are.</summary>
    private readonly Dictionary<(string Selector, string Property), Said> _said = [];
    private int _order;

    /// <summary>A value and how much it counts among those of one selector and of others.</summary>
    private readonly record struct Said(string Value, bool Important, int Specific, int Order)
    {
        internal bool CountsBefore(Said other) => (Important, Specific, Order).CompareTo((other.Important, other.Specific, other.Order)) > 0;
    }

    /// <summary>Rules that bear on what is cut and aren't applied.</summary>
    internal int NotApplied { get; private set; }

    /// <summary>Takes in the text of a style element; a later one counts before an earlier one.</summary>
    internal void Add(string text)
    {
        text = WithoutComments(text);
        int at = 0;
        while (at < text.Length)
        {
            int open = End(text, at, '{', ';');
            string head = text[at..open].Trim();
            if (open < text.Length && text[open] == ';')
            {
                // Only a rule that begins with @ ends without a block; an import asks for another file, which is never opened.
                NotApplied += head.StartsWith("@import", StringComparison.OrdinalIgnoreCase) ? 1 : 0;
                at = open + 1;
                continue;
            }

            int close = Close(text, open);
            string body = open < text.Length ? text[(open + 1)..close] : "";
            if (head.StartsWith('@'))
            {
                NotApplied += head.StartsWith("@font", StringComparison.OrdinalIgnoreCase) || !Bears(body) ? 0 : 1;
            }
            else
            {
                Rule(head, body);
            }

            at = close + 1;
        }
    }

    /// <summary>Whether nothing is said of any element.</summary>
    internal bool IsEmpty => _said.Count == 0;

    /// <summary>Counts a sheet that isn't taken in: one for other media, if it bears on what is cut.</summary>
    internal void Leave(string text) => NotApplied += Bears(WithoutComments(text)) ? 1 : 0;

    /// <summary>Counts a sheet that can't be looked into: one in another language or in another file.</summary>
    internal void Leave() => NotApplied++;

    /// <summary>What the sheets say of an element; null when they say nothing.</summary>
    /// <param name="node">The element.</param>
    /// <param name="property">One of those that are applied.</param>
    /// <param name="importantOnly">Whether only what counts before the style attribute is asked for.</param>
    internal string? Value(SvgNode node, string property, bool importantOnly)
    {
        Said? best = null;
        void Look(string selector)
        {
            if (_said.TryGetValue((selector, property), out Said said) && (said.Important || !importantOnly) && (best is not { } other || said.CountsBefore(other)))
            {
                best = said;
            }
        }

        Look("*");
        Look(node.Name);
        foreach (string word in (node["class"] ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            Look("." + word);
            Look(node.Name + "." + word);
        }

        if (node.Id is { } id)
        {
            Look("#" + id);
            Look(node.Name + "#" + id);
        }

        return best?.Value;
    }

    private void Rule(string head, string body)
    {
        var declared = SvgStyle.Declared(body);
        bool shapes = declared.Exists(d => s_shaping.Contains(d.Name));
        var said = declared.FindAll(d => s_applied.Contains(d.Name));
        if (!shapes && said.Count == 0)
        {
            return;
        }

        bool all = !shapes;
        foreach (string one in head.Split(','))
        {
            string selector = one.Trim();
            if (Specific(selector) is not { } specific)
            {
                all = false;
                continue;
            }

            selector = selector.Length > 1 && selector[0] == '*' ? selector[1..] : selector;
            foreach ((string name, string value, bool important) in said)
            {
                var now = new Said(value, important, specific, _order++);
                if (!_said.TryGetValue((selector, name), out Said before) || now.CountsBefore(before))
                {
                    _said[(selector, name)] = now;
                }
            }
        }

        NotApplied += all ? 0 : 1;
    }

    /// <summary>How much a simple selector counts; null for any other.</summary>
    private static int? Specific(string selector)
    {
        int mark = selector.IndexOfAny(['.', '#']);
        string name = mark < 0 ? selector : selector[..mark];
        string rest = mark < 0 ? "" : selector[(mark + 1)..];
        if (selector.Length == 0 || (name is not ("" or "*") && !IsName(name)) || (mark >= 0 && !IsName(rest)))
        {
            return null;
        }

        return (mark < 0 ? 0 : selector[mark] == '#' ? 100 : 10) + (name is "" or "*" ? 0 : 1);
    }

    private static bool IsName(string word) => word.Length > 0 && !char.IsAsciiDigit(word[0]) && word.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or > '\u007f');

    /// <summary>Whether a block that isn't looked into names something that could bear on what is cut.</summary>
    private static bool Bears(string body) => SvgStyle.Declared(body.Replace('{', ';').Replace('}', ';')).Exists(d => s_applied.Contains(d.Name) || s_shaping.Contains(d.Name));

    /// <summary>Where the block that opens here closes; the end of the text when it doesn't.</summary>
    private static int Close(string text, int open)
    {
        int depth = 0;
        for (int at = open; at < text.Length; at = End(text, at + 1, '{', '}'))
        {
            depth += text[at] == '{' ? 1 : -1;
            if (depth == 0)
            {
                return at;
            }
        }

        return text.Length;
    }

    /// <summary>The next of two characters that stands outside quotes; the end of the text when there is none.</summary>
    private static int End(string text, int from, char one, char other)
    {
        char quote = '\0';
        for (int at = from; at < text.Length; at++)
        {
            char c = text[at];
            if (quote != '\0')
            {
                // A string ends with its line at the latest.
                quote = c == quote || c is '\n' or '\r' ? '\0' : quote;
            }
            else if (c is '"' or '\'')
            {
                quote = c;
            }
            else if (c == one || c == other)
            {
                return at;
            }
        }

        return text.Length;
    }

    private static string WithoutComments(string text)
    {
        if (!text.Contains("/*", StringComparison.Ordinal))
        {
            return text;
        }

        var kept = new System.Text.StringBuilder(text.Length);
        int at = 0;
        while (at < text.Length)
        {
            int open = text.IndexOf("/*", at, StringComparison.Ordinal);
            int close = open < 0 ? -1 : text.IndexOf("*/", open + 2, StringComparison.Ordinal);
            kept.Append(text, at, (open < 0 ? text.Length : open) - at).Append(' ');
            at = open < 0 || close < 0 ? text.Length : close + 2;
        }

        return kept.ToString();
    }
}
