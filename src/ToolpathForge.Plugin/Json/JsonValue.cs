using System.Globalization;

namespace ToolpathForge.Plugin.Json;

/// <summary>What a value of JSON is.</summary>
internal enum JsonKind
{
    /// <summary>Nothing.</summary>
    Null,

    /// <summary>True or false.</summary>
    Truth,

    /// <summary>A number.</summary>
    Number,

    /// <summary>Text.</summary>
    Text,

    /// <summary>Values in order.</summary>
    List,

    /// <summary>Values by name.</summary>
    Map,
}

/// <summary>A value of JSON (RFC 8259). Numbers are doubles: the contract has none that need more.</summary>
internal sealed class JsonValue
{
    private static readonly JsonValue[] None = [];
    private static readonly KeyValuePair<string, JsonValue>[] NoMembers = [];

    private JsonValue(JsonKind kind) => Kind = kind;

    /// <summary>Nothing.</summary>
    internal static JsonValue Null { get; } = new(JsonKind.Null);

    /// <summary>What it is.</summary>
    internal JsonKind Kind { get; }

    /// <summary>The truth; false for every other kind.</summary>
    internal bool Truth { get; private set; }

    /// <summary>The number, finite; 0 for every other kind.</summary>
    internal double Number { get; private set; }

    /// <summary>The text; empty for every other kind.</summary>
    internal string Text { get; private set; } = "";

    /// <summary>The values of a list; empty for every other kind.</summary>
    internal IReadOnlyList<JsonValue> Items { get; private set; } = None;

    /// <summary>The members of a map, in their order; empty for every other kind.</summary>
    internal IReadOnlyList<KeyValuePair<string, JsonValue>> Members { get; private set; } = NoMembers;

    /// <summary>The member of a name; null where there is none.</summary>
    internal JsonValue? this[string name]
    {
        get
        {
            foreach (KeyValuePair<string, JsonValue> member in Members)
            {
                if (member.Key == name)
                {
                    return member.Value;
                }
            }

            return null;
        }
    }

    /// <summary>A truth.</summary>
    internal static JsonValue Of(bool truth) => new(JsonKind.Truth) { Truth = truth };

    /// <summary>A number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It isn't finite: JSON has no word for that.</exception>
    internal static JsonValue Of(double number) => double.IsNaN(number) || double.IsInfinity(number)
        ? throw new ArgumentOutOfRangeException(nameof(number), number.ToString(CultureInfo.InvariantCulture) + " is no number of JSON.")
        : new(JsonKind.Number) { Number = number };

    /// <summary>A text.</summary>
    internal static JsonValue Of(string text) => new(JsonKind.Text) { Text = text };

    /// <summary>A list.</summary>
    internal static JsonValue Of(IReadOnlyList<JsonValue> items) => new(JsonKind.List) { Items = items };

    /// <summary>A map; the names must differ.</summary>
    internal static JsonValue Of(IReadOnlyList<KeyValuePair<string, JsonValue>> members) => new(JsonKind.Map) { Members = members };
}
