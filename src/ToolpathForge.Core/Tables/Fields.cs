using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;

namespace ToolpathForge.Tables;

/// <summary>What a whole file has in common while its tables are read.</summary>
/// <param name="Unit">The unit of bare numbers; null when the file does not state one that can be used.</param>
/// <param name="Findings">Takes what is wrong.</param>
/// <param name="UnitWasTold">Whether the missing unit has been reported, so that each bare number need not repeat it.</param>
internal sealed record TableContext(LengthUnit? Unit, ICollection<Finding> Findings, bool UnitWasTold)
{
    /// <summary>The make whose tables are being read.</summary>
    internal string? Make { get; init; }

    internal void Add(Finding finding) => Findings.Add(Make is null ? finding : finding with { Place = finding.Place.OfMake(Make) });
}

/// <summary>A value that was read and found good.</summary>
/// <param name="Amount">Number, length (mm), angle (degrees), feed (mm/min), speed (rev/min), share; 1 for true.</param>
/// <param name="IsShare">Whether the amount is a share of the design width.</param>
/// <param name="Text">Text, word or id.</param>
/// <param name="Texts">List of texts.</param>
/// <param name="Tables">The table, or the tables.</param>
/// <param name="At">Where the value stands; the table when it is a default.</param>
internal sealed record FieldValue(
    double Amount, bool IsShare, string Text, ImmutableArray<TextValue> Texts, ImmutableArray<TableValue> Tables, Place At)
{
    internal static FieldValue OfAmount(double amount, Place at, bool isShare = false) => new(amount, isShare, "", [], [], at);

    internal static FieldValue OfText(string text, Place at) => new(0, false, text, [], [], at);
}

/// <summary>
/// The values of one table, checked against its keys. While <see cref="IsSound"/> is false some are missing, and nothing may be built from them;
/// every fault has been reported.
/// </summary>
internal sealed class Fields
{
    private readonly ImmutableDictionary<string, FieldValue> _values;

    private Fields(TableValue table, bool isSound, ImmutableDictionary<string, FieldValue> values) =>
        (Table, IsSound, _values) = (table, isSound, values);

    internal TableValue Table { get; }

    internal bool IsSound { get; }

    internal FieldValue this[string key] => _values[key];

    /// <summary>Reads a table.</summary>
    /// <param name="table">The table.</param>
    /// <param name="keys">What it may hold.</param>
    /// <param name="context">The file.</param>
    /// <param name="elsewhere">Other tables that a misplaced key may belong to.</param>
    internal static Fields Read(TableValue table, TableKeys keys, TableContext context, params ImmutableArray<TableKeys> elsewhere)
    {
        bool sound = true;
        var values = ImmutableDictionary.CreateBuilder<string, FieldValue>(StringComparer.Ordinal);
        foreach (TableEntry entry in table.Entries)
        {
            if (keys.Find(entry.Name) is null)
            {
                sound = false;
                context.Add(Unknown(entry, keys, elsewhere));
            }
        }

        foreach (Key key in keys.Keys)
        {
            if (table.Find(key.Name) is { } entry)
            {
                FieldValue? value = FieldReader.Read(entry, key, context);
                sound &= value is not null;
                if (value is not null)
                {
                    values[key.Name] = value;
                }
            }
            else if (key.WhenMissing is { } missing)
            {
                sound = false;
                context.Add(Finding.Of(
                    missing, table.At, Arg.Of("key", key.Name), Arg.Of("table", keys.Name), Arg.Of("meaning", char.ToLowerInvariant(key.Says[0]) + key.Says[1..])));
            }
            else if (Default(key, context) is { } written)
            {
                values[key.Name] = FieldReader.ReadDefault(written, key, table.At);
            }
        }

        return new Fields(table, sound, values.ToImmutable());
    }

    /// <summary>Whether the file sets the key, or a default stands for it.</summary>
    internal bool Has(string key) => _values.ContainsKey(key);

    internal string Text(string key) => _values[key].Text;

    internal double Amount(string key) => _values[key].Amount;

    internal int Whole(string key) => (int)_values[key].Amount;

    internal bool Flag(string key) => _values[key].Amount > 0;

    internal double? AmountOrNull(string key) => _values.TryGetValue(key, out FieldValue? value) ? value.Amount : null;

    /// <summary>The table of a key; an empty one at this table's place when the file has none.</summary>
    internal TableValue Inner(string key) => _values.TryGetValue(key, out FieldValue? value) ? value.Tables[0] : new TableValue([], Table.At);

    internal ImmutableArray<TableValue> Inners(string key) => _values.TryGetValue(key, out FieldValue? value) ? value.Tables : [];

    internal ImmutableArray<TextValue> Texts(string key) => _values.TryGetValue(key, out FieldValue? value) ? value.Texts : [];

    /// <summary>Where a key's value stands; the table's beginning when the file is silent about it.</summary>
    internal Place Where(string key) => _values.TryGetValue(key, out FieldValue? value) ? value.At : Table.At;

    private static string? Default(Key key, TableContext context) =>
        context.Unit == LengthUnit.Millimetre ? key.MetricDefault ?? key.Default : key.Default;

    private static Finding Unknown(TableEntry entry, TableKeys keys, ImmutableArray<TableKeys> elsewhere)
    {
        var key = Arg.Of("key", TextPiece.Short(entry.Name));
        var table = Arg.Of("table", keys.Name);
        if (elsewhere.FirstOrDefault(t => t.Find(entry.Name) is not null) is { } other)
        {
            return Finding.Of(TableFindings.MisplacedKey, entry.NameAt, key, table, Arg.Of("other", other.Name));
        }

        ImmutableArray<string> names = [.. keys.Keys.Select(k => k.Name)];
        return NearWord.Find(entry.Name, names) is { } near
            ? Finding.Of(TableFindings.UnknownKeyNear, entry.NameAt, key, table, Arg.Of("near", near))
            : Finding.Of(TableFindings.UnknownKey, entry.NameAt, key, table, Arg.Of("keys", string.Join(", ", names)));
    }
}
