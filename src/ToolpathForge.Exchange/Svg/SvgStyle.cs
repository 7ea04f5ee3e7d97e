namespace ToolpathForge.Exchange.Svg;

/// <summary>Declarations of a style attribute, and what hides an element.</summary>
internal static class SvgStyle
{
    /// <summary>Declarations of "name: value; name: value", in order; what is no declaration is passed over, as CSS has it.</summary>
    internal static List<(string Name, string Value, bool Important)> Declared(string text)
    {
        var found = new List<(string Name, string Value, bool Important)>();
        foreach (string part in text.Split(';'))
        {
            int colon = part.IndexOf(':', StringComparison.Ordinal);
            if (colon > 0)
            {
                string value = part[(colon + 1)..].Trim();
                int mark = value.IndexOf('!', StringComparison.Ordinal);
                bool important = mark >= 0 && value.AsSpan(mark + 1).Trim().Equals("important", StringComparison.OrdinalIgnoreCase);
                found.Add((part[..colon].Trim().ToLowerInvariant(), mark >= 0 ? value[..mark].TrimEnd() : value, important));
            }
        }

        return found;
    }

    /// <summary>The declarations of a style attribute; the later of two counts.</summary>
    internal static Dictionary<string, string> Declarations(string text)
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach ((string name, string value, _) in Declared(text))
        {
            found[name] = value;
        }

        return found;
    }

    /// <summary>Whether neither an element nor anything in it is drawn.</summary>
    internal static bool IsNotDisplayed(SvgNode node) => Is(node.Styled("display"), "none");

    /// <summary>Whether an element is to be seen: as it says itself, or else as what is around it.</summary>
    internal static bool IsVisible(SvgNode node, bool around)
    {
        string? says = node.Styled("visibility");
        return Is(says, "visible") || (around && !Is(says, "hidden") && !Is(says, "collapse"));
    }

    private static bool Is(string? value, string word) => value is not null && value.AsSpan().Trim().Equals(word, StringComparison.OrdinalIgnoreCase);
}
