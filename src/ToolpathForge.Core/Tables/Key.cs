using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Tables;

/// <summary>What kind of value a key takes.</summary>
internal enum KeyKind
{
    /// <summary>One line of text.</summary>
    Text,

    /// <summary>The id of a row of a catalogue.</summary>
    Row,

    /// <summary>One of a few words.</summary>
    Choice,

    /// <summary>A length: text with or without unit, or a bare number in the file's unit.</summary>
    Length,

    /// <summary>A length, or a share of the design width.</summary>
    Size,

    /// <summary>An angle: degrees or rise:run.</summary>
    Angle,

    /// <summary>A feed.</summary>
    Feed,

    /// <summary>A spindle speed.</summary>
    Speed,

    /// <summary>A plain number in a unit that the key itself states.</summary>
    Number,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>True or false.</summary>
    Flag,

    /// <summary>A list of texts.</summary>
    Texts,

    /// <summary>A table.</summary>
    Table,

    /// <summary>A list of tables.</summary>
    Tables,
}

/// <summary>
/// One key of a table: what it takes, what happens without it, and what it means. Readers are driven by these, and so are the reference page
/// and the near words; a key that is not here does not exist.
/// </summary>
/// <param name="Name">The key.</param>
/// <param name="Kind">What it takes.</param>
/// <param name="Says">What it means, one sentence.</param>
internal sealed record Key(string Name, KeyKind Kind, string Says)
{
    /// <summary>Smallest value (mm, degrees, mm/min, rev/min or the number itself); for texts and lists the fewest.</summary>
    internal double Least { get; private init; } = double.NegativeInfinity;

    /// <summary>Largest value; for texts and lists the most.</summary>
    internal double Most { get; private init; } = double.PositiveInfinity;

    /// <summary>The words of a choice.</summary>
    internal ImmutableArray<string> Words { get; private init; } = [];

    /// <summary>The keys of the table or of each table of the list.</summary>
    internal TableKeys? Inner { get; private init; }

    /// <summary>The unit that a plain number is in, for the reference page; or which catalogue a row is of.</summary>
    internal string Unit { get; private init; } = "";

    /// <summary>The finding when it is missing; null when it may be.</summary>
    internal FindingKind? WhenMissing { get; private init; } = TableFindings.MissingKey;

    /// <summary>What is taken when the file is silent, as it would be written; null for nothing.</summary>
    internal string? Default { get; private init; }

    /// <summary>The same for a file in millimetres, where a round number there is another one.</summary>
    internal string? MetricDefault { get; private init; }

    /// <summary>What the reference page says about the default where it is worked out from other values.</summary>
    internal string DefaultSays { get; private init; } = "";

    internal bool IsRequired => WhenMissing is not null;

    internal static Key Text(string name, string says, int most = 80) => new(name, KeyKind.Text, says) { Least = 1, Most = most };

    internal static Key Row(string name, string catalogue, string says) => new(name, KeyKind.Row, says) { Unit = catalogue, Least = 1, Most = 40 };

    internal static Key Choice(string name, string says, params ImmutableArray<string> words) => new(name, KeyKind.Choice, says) { Words = words };

    internal static Key Length(string name, string says, double least, double most) => new(name, KeyKind.Length, says) { Least = least, Most = most };

    internal static Key Size(string name, string says, double least, double most) => new(name, KeyKind.Size, says) { Least = least, Most = most };

    internal static Key Angle(string name, string says, double least, double most) => new(name, KeyKind.Angle, says) { Least = least, Most = most };

    internal static Key Feed(string name, string says, double least, double most) => new(name, KeyKind.Feed, says) { Least = least, Most = most };

    internal static Key Speed(string name, string says, double least, double most) => new(name, KeyKind.Speed, says) { Least = least, Most = most };

    internal static Key Number(string name, string unit, string says, double least, double most) =>
        new(name, KeyKind.Number, says) { Unit = unit, Least = least, Most = most };

    internal static Key Whole(string name, string says, int least, int most) => new(name, KeyKind.Whole, says) { Least = least, Most = most };

    internal static Key Flag(string name, string says) => new(name, KeyKind.Flag, says);

    internal static Key Texts(string name, string says, int least, int most) => new(name, KeyKind.Texts, says) { Least = least, Most = most };

    internal static Key Table(string name, string says, TableKeys inner) => new(name, KeyKind.Table, says) { Inner = inner };

    internal static Key Tables(string name, string says, TableKeys inner, int least, int most) =>
        new(name, KeyKind.Tables, says) { Inner = inner, Least = least, Most = most };

    /// <summary>May be left out; this is taken then.</summary>
    internal Key Else(string written, string? metric = null) => this with { WhenMissing = null, Default = written, MetricDefault = metric };

    /// <summary>May be left out; what is taken then follows from other values.</summary>
    internal Key ElseFrom(string says) => this with { WhenMissing = null, DefaultSays = says };

    /// <summary>Must be there, and has a finding of its own when it is not.</summary>
    internal Key OrElse(FindingKind missing) => this with { WhenMissing = missing };
}

/// <summary>The keys of one kind of table.</summary>
/// <param name="Name">How findings and the reference page call the table.</param>
/// <param name="Keys">Its keys, in the order of the reference page.</param>
internal sealed record TableKeys(string Name, ImmutableArray<Key> Keys)
{
    internal Key? Find(string name) => Keys.FirstOrDefault(k => k.Name == name);
}
