namespace ToolpathForge.Exchange.Svg;

/// <summary>One element of a file with what matters of it.</summary>
/// <param name="name">Its name without a prefix.</param>
/// <param name="line">The line that it begins on, from 1.</param>
/// <param name="order">Which of the file's elements it is, from 1.</param>
internal sealed class SvgNode(string name, int line, int order)
{
    /// <summary>Longest text of the file that a finding repeats.</summary>
    private const int LongestTold = 60;

    private List<(string Name, string Value)>? _attributes;
    private List<SvgNode>? _children;
    private Dictionary<string, string>? _style;
    private Dictionary<string, string?>? _styled;

    internal string Name => name;

    internal int Line => line;

    internal int Order => order;

    internal IReadOnlyList<SvgNode> Children => _children is null ? [] : _children;

    /// <summary>Its id; null without one.</summary>
    internal string? Id => this["id"];

    /// <summary>What a group is called: its id, or else its class.</summary>
    internal string? Layer => Id ?? this["class"]?.Trim();

    /// <summary>What a finding calls it.</summary>
    internal string Shown => Id is { Length: > 0 } id ? $"{name} '{Told(id)}'" : name;

    /// <summary>The shape read from it, kept because it may be used often.</summary>
    internal List<SvgRun>? Runs { get; set; }

    /// <summary>The value of an attribute; null when it has none.</summary>
    internal string? this[string attribute]
    {
        get
        {
            foreach ((string of, string value) in _attributes ?? [])
            {
                if (of == attribute)
                {
                    return value;
                }
            }

            return null;
        }
    }

    /// <summary>A property that may stand in the style attribute, which counts first, or as an attribute of its own.</summary>
    internal string? Property(string property)
    {
        _style ??= SvgStyle.Declarations(this["style"] ?? "");
        return _style.GetValueOrDefault(property) ?? this[property];
    }

    /// <summary>The sheets of the file.</summary>
    internal SvgStyleSheet? Sheet { get; init; }

    /// <summary>A property that a style sheet may give as well: what it says counts before an attribute and after the style attribute, or before both when it is important.</summary>
    internal string? Styled(string property)
    {
        if (Sheet is not { IsEmpty: false } sheet)
        {
            return Property(property);
        }

        // Looked up once, because an element may be used often and have very many classes.
        _styled ??= new Dictionary<string, string?>(StringComparer.Ordinal);
        if (!_styled.TryGetValue(property, out string? value))
        {
            string? said = sheet.Value(this, property, false);
            value = sheet.Value(this, property, true) ?? (said is null || HasDeclared(property) ? Property(property) : said);
            _styled.Add(property, value);
        }

        return value;
    }

    private bool HasDeclared(string property)
    {
        _style ??= SvgStyle.Declarations(this["style"] ?? "");
        return _style.ContainsKey(property);
    }

    internal void Add(SvgNode child) => (_children ??= []).Add(child);

    /// <summary>Sets an attribute unless it has it.</summary>
    internal void Set(string attribute, string value)
    {
        if (this[attribute] is null)
        {
            (_attributes ??= []).Add((attribute, value));
        }
    }

    /// <summary>Text of the file, fit to be repeated: cut short, without control characters.</summary>
    internal static string Told(string text) =>
        new([.. (text.Length > LongestTold ? text[..LongestTold] + "…" : text).Select(c => char.IsControl(c) || char.IsSurrogate(c) ? ' ' : c)]);
}
