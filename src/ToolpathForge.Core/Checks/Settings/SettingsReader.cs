using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Tables;

namespace ToolpathForge.Checks.Settings;

/// <summary>An option as a person wrote it.</summary>
/// <param name="Name">With its dashes.</param>
/// <param name="Text">Its value; null for a switch.</param>
public readonly record struct WrittenOption(string Name, string? Text);

/// <summary>Reads the options of a check without a job.</summary>
public static class SettingsReader
{
    /// <summary>The machine that is taken where nobody names one.</summary>
    private const string UsualMachine = "desktop-400";

    /// <summary>The option that names a file for the section of a hand router.</summary>
    public const string Drawing = "--drawing";

    /// <summary>The options of a check for a machine: name, what it means, whether it is a switch.</summary>
    public static ImmutableArray<(string Name, string Says, bool IsSwitch)> MachineOptions { get; } = Told(SettingsKeys.Machine);

    /// <summary>The options of a check for a hand router.</summary>
    public static ImmutableArray<(string Name, string Says, bool IsSwitch)> HandOptions { get; } = Told(SettingsKeys.Hand);

    /// <summary>A question about a machine; null when a finding says why it is none.</summary>
    /// <param name="options">As written, each once.</param>
    /// <param name="rows">The catalogues.</param>
    /// <param name="machine">The machine that is taken where no option names one; null for the usual one.</param>
    /// <param name="unit">Unit of bare numbers.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static MachineQuestion? ReadMachine(
        IEnumerable<WrittenOption> options, Catalogues rows, Machine? machine, LengthUnit unit, ICollection<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(rows);
        (Fields fields, TableContext context) = Read(options, SettingsKeys.Machine, unit, findings);
        Bit? bit = Find(fields, "--bit", "bits", rows.Bits, context);
        Material? material = Find(fields, "--material", "materials", rows.Materials, context);
        Machine? on = fields.Has("--machine") ? Find(fields, "--machine", "machines", rows.Machines, context) : machine ?? rows.Machines.Find(UsualMachine);
        if (!fields.IsSound || bit is null || material is null || on is null)
        {
            return null;
        }

        double? length = fields.AmountOrNull("--length");
        double? width = fields.AmountOrNull("--width");
        double? onBed = fields.AmountOrNull("--on-bed");
        return new MachineQuestion(bit, material, on, fields.Amount("--depth"))
        {
            Overcut = Math.Min(fields.AmountOrNull("--overcut") ?? 0, fields.Amount("--depth")),
            Spoilboard = fields.AmountOrNull("--spoilboard"),
            Speed = fields.AmountOrNull("--rpm"),
            Feed = fields.AmountOrNull("--feed"),
            Plunge = fields.AmountOrNull("--plunge"),
            PassDepth = fields.AmountOrNull("--pass-depth"),
            StickOut = fields.AmountOrNull("--stick-out"),
            Overhang = length is { } l && width is { } w && onBed is { } o ? new Overhang(l, w, Math.Min(o, l), fields.Flag("--stand")) { Moisture = fields.Amount("--moisture") } : null,
        };
    }

    /// <summary>A question about a hand router; null when a finding says why it is none.</summary>
    /// <param name="options">As written, each once.</param>
    /// <param name="rows">The catalogues.</param>
    /// <param name="unit">Unit of bare numbers.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static HandQuestion? ReadHand(IEnumerable<WrittenOption> options, Catalogues rows, LengthUnit unit, ICollection<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(rows);
        (Fields fields, TableContext context) = Read(options, SettingsKeys.Hand, unit, findings);
        Bit? bit = Find(fields, "--bit", "bits", rows.Bits, context);
        return !fields.IsSound || bit is null
            ? null
            : new HandQuestion(bit, fields.Amount("--board"))
            {
                Pattern = fields.AmountOrNull("--pattern"),
                Machined = fields.AmountOrNull("--machined"),
                Depth = fields.AmountOrNull("--depth"),
                Bushing = fields.AmountOrNull("--bushing"),
                BushingLength = fields.AmountOrNull("--bushing-length"),
                InsideRadius = fields.AmountOrNull("--inside-radius"),
                Bite = fields.AmountOrNull("--bite"),
                ColletHeight = fields.AmountOrNull("--collet-height") ?? 0,
                MayHang = fields.Flag("--may-hang"),
                End = !fields.Has("--end") ? null : fields.Text("--end") == "right" ? EndSide.Right : EndSide.Left,
                Lean = fields.Amount("--lean"),
                GrainSlope = fields.AmountOrNull("--grain-slope") ?? 0,
                Speed = fields.AmountOrNull("--rpm"),
                Unit = unit,
            };
    }

    private static (Fields Fields, TableContext Context) Read(
        IEnumerable<WrittenOption> options, TableKeys keys, LengthUnit unit, ICollection<Finding> findings)
    {
        // A command line is a table whose values stand nowhere in a file.
        var table = new TableValue(
            [.. options.Select(o => new TableEntry(o.Name, Place.None, o.Text is { } text ? new TextValue(text, "", Place.None) : new FlagValue(true, Place.None)))],
            Place.None);
        var context = new TableContext(unit, findings, UnitWasTold: true);
        return (Fields.Read(table, keys, context), context);
    }

    private static T? Find<T>(Fields fields, string key, string catalogue, Rows<T> rows, TableContext context)
        where T : class =>
        fields.Has(key) && rows.FindLoosely(fields.Text(key)) is { } row ? row : RowLookup.Find(fields, key, catalogue, rows, context);

    private static ImmutableArray<(string Name, string Says, bool IsSwitch)> Told(TableKeys keys) =>
        [.. keys.Keys.Select(k => (k.Name, k.Says, k.Kind == KeyKind.Flag))];
}
