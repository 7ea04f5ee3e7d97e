namespace ToolpathForge.Tables;

/// <summary>Says in words what a key takes, for findings and for the reference page.</summary>
internal static class KeyText
{
    /// <summary>The kind of value, with its article.</summary>
    internal static string Takes(KeyKind kind) => kind switch
    {
        KeyKind.Text => "a text",
        KeyKind.Row => "an id in quotes",
        KeyKind.Choice => "a word in quotes",
        KeyKind.Length => "a length",
        KeyKind.Size => "a size",
        KeyKind.Angle => "an angle",
        KeyKind.Feed => "a feed",
        KeyKind.Speed => "a spindle speed",
        KeyKind.Number => "a number",
        KeyKind.Whole => "a whole number",
        KeyKind.Flag => "true or false",
        KeyKind.Texts => "a list of texts",
        KeyKind.Table => "a table",
        _ => "a list of tables",
    };

    /// <summary>A value as it could be written.</summary>
    internal static string Example(Key key) => key.Kind switch
    {
        KeyKind.Text => "\"Boathouse porch\"",
        KeyKind.Row => "\"an id\"",
        KeyKind.Choice => $"\"{key.Words[0]}\"",
        KeyKind.Length => "\"3 1/2 in\" or \"89 mm\"",
        KeyKind.Size => "\"3 1/2 in\" or \"0.62 w\"",
        KeyKind.Angle => "\"10 deg\"",
        KeyKind.Feed => "\"1500 mm/min\"",
        KeyKind.Speed => "16000",
        KeyKind.Number => "0.5",
        KeyKind.Whole => "4",
        KeyKind.Flag => "true",
        KeyKind.Texts => "[\"my-bits.toml\"]",
        KeyKind.Table => "{ … }, or put a header line before its keys",
        _ => "[ { … } ], or put a doubled header line before its keys",
    };
}
