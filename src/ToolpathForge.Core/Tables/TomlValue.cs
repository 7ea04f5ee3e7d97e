using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Tables;

/// <summary>A value of a TOML file with its place. What it means is for the table's keys to say.</summary>
/// <param name="At">Where it starts.</param>
internal abstract record TomlValue(Place At);

/// <summary>A text.</summary>
/// <param name="Text">Without quotes, escapes resolved.</param>
/// <param name="Written">As it stands in the file, with its quotes.</param>
/// <param name="At">Where its first quote stands.</param>
internal sealed record TextValue(string Text, string Written, Place At) : TomlValue(At)
{
    /// <summary>Where a character of the text stands in the file; the text's beginning when it runs over several lines.</summary>
    internal Place Inside(int index)
    {
        if (Written.Length < 2 || Written.StartsWith("\"\"\"", StringComparison.Ordinal) || Written.StartsWith("'''", StringComparison.Ordinal))
        {
            return At;
        }

        int raw = 1;
        bool escapes = Written[0] == '"';
        for (int read = 0; read < index && raw < Written.Length; read++)
        {
            raw += !escapes || Written[raw] != '\\' || raw + 1 >= Written.Length ? 1 : Written[raw + 1] switch
            {
                'x' => 4,
                'u' => 6,
                'U' => 10,
                _ => 2,
            };
        }

        return At with { Column = At.Column + raw };
    }
}

/// <summary>A number written bare.</summary>
/// <param name="Amount">May be infinite or not a number: TOML allows both.</param>
/// <param name="IsWhole">Whether it is written as an integer.</param>
/// <param name="Written">As it stands in the file.</param>
/// <param name="At">Where it starts.</param>
internal sealed record NumberValue(double Amount, bool IsWhole, string Written, Place At) : TomlValue(At);

/// <summary>True or false.</summary>
/// <param name="IsTrue">Which.</param>
/// <param name="At">Where it starts.</param>
internal sealed record FlagValue(bool IsTrue, Place At) : TomlValue(At);

/// <summary>A date or a time: no key of ours takes one, but a person may write one by mistake.</summary>
/// <param name="At">Where it starts.</param>
internal sealed record DateValue(Place At) : TomlValue(At);

/// <summary>A list in square brackets, or the tables of one doubled header.</summary>
/// <param name="Items">In the order written.</param>
/// <param name="At">Where it starts.</param>
internal sealed record ListValue(ImmutableArray<TomlValue> Items, Place At) : TomlValue(At);

/// <summary>A table, however it is written: under a header, in braces, or by dotted keys.</summary>
/// <param name="Entries">In the order written, each name once.</param>
/// <param name="At">Where its header or brace stands.</param>
internal sealed record TableValue(ImmutableArray<TableEntry> Entries, Place At) : TomlValue(At)
{
    /// <summary>The entry of a name.</summary>
    internal TableEntry? Find(string name) => Entries.FirstOrDefault(e => e.Name == name);
}

/// <summary>A key with its value.</summary>
/// <param name="Name">The key.</param>
/// <param name="NameAt">Where the key stands.</param>
/// <param name="Value">Its value.</param>
internal sealed record TableEntry(string Name, Place NameAt, TomlValue Value);
