using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.Jobs;

/// <summary>Where Z is zero.</summary>
public enum ZeroHeight
{
    /// <summary>On the spoilboard: through cuts end where they should whatever the stock's thickness.</summary>
    Bed,

    /// <summary>On the upper face of the stock.</summary>
    Top,
}

/// <summary>Which way round the job wants the finished edge cut.</summary>
public enum DirectionChoice
{
    /// <summary>As the grain asks, edge by edge.</summary>
    ByGrain,

    /// <summary>Part on the left of the travel, clockwise spindle.</summary>
    Conventional,

    /// <summary>Part on the right of the travel.</summary>
    Climb,
}

/// <summary>Where each key of a table stands in the job file, so that a finding can point at it.</summary>
/// <param name="Table">Where the table itself begins.</param>
/// <param name="Keys">Where each value stands, by dotted key below the table (<c>stock.thickness</c>).</param>
public sealed record Places(Place Table, ImmutableDictionary<string, Place> Keys)
{
    /// <summary>Where a key's value stands; the table's beginning when the job does not write it.</summary>
    /// <param name="key">Dotted key below the table.</param>
    public Place this[string key] => Keys.TryGetValue(key, out Place? place) ? place : Table;
}

/// <summary>A job as read and resolved: immutable, complete, every value with its place in the file.</summary>
/// <param name="FileName">The file's name without folders.</param>
/// <param name="Name">What the person calls it.</param>
/// <param name="Unit">The unit its bare numbers are in, and that findings are worded in.</param>
/// <param name="Tolerance">Largest departure of the finished piece from the exact one, mm: the total of curve fit, chords and rounding.</param>
/// <param name="Machine">The machine.</param>
/// <param name="Dialect">The dialect its programs are written in.</param>
/// <param name="Zero">Where Z is zero.</param>
/// <param name="Clearance">How far above the stock the bit travels between cuts, mm.</param>
/// <param name="Spoilboard">Thickness of the spoilboard under the stock, mm.</param>
/// <param name="Makes">What to make, in the order written.</param>
/// <param name="At">Where each key stands.</param>
public sealed record Job(
    string FileName,
    string Name,
    LengthUnit Unit,
    double Tolerance,
    Machine Machine,
    Dialect Dialect,
    ZeroHeight Zero,
    double Clearance,
    double Spoilboard,
    ImmutableArray<Make> Makes,
    Places At)
{
    /// <summary>How boards are bought.</summary>
    public BuyingTerms Buying { get; init; } = new([], 0, 0);

    /// <summary>How pieces are laid on panels.</summary>
    public PanelSharing Panels { get; init; } = PanelSharing.None;

    /// <summary>How the machine's axes are off, as a trial piece has shown; every program makes up for it.</summary>
    public AxisErrors Axes { get; init; } = AxisErrors.None;

    /// <summary>The row of the bit whose diameter a trial piece has corrected, as it was before; null without a trial.</summary>
    public Bit? TrialBit { get; init; }
}
