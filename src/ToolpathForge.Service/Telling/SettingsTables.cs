using System.Collections.Immutable;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Findings;
using ToolpathForge.Measures;

namespace ToolpathForge.Service.Telling;

/// <summary>Answers about settings as tables to read.</summary>
internal static class SettingsTables
{
    internal static ImmutableArray<Section> Of(SettingsAnswer answer, LengthUnit unit) =>
    [
        .. answer.Rows.IsEmpty ? [] : (ImmutableArray<Section>)
        [
            new Section(
                [answer.About],
                [new("setting"), new("is"), new("may be"), new("verdict"), new("because of")],
                [.. answer.Rows.Select(r => (ImmutableArray<string>)[r.Setting, Told(r.Is, unit, "yours to set"), MayBe(r, unit), Word(r.Verdict), r.Because])]),
        ],
        .. answer.Windows.Select(w => Of(w, unit)),
        .. answer.Feed is { } feed ? (ImmutableArray<Section>)[new Section([], [new("which way to feed")], [[feed]])] : [],
        .. Cautions(answer, unit),
    ];

    // With every answer that gives a depth to set.
    private static IEnumerable<Section> Cautions(SettingsAnswer answer, LengthUnit unit)
    {
        ImmutableArray<NamedWindow> open = [.. answer.Windows.Where(w => w.Window.IsOpen)];
        if (!open.IsEmpty)
        {
            double comesOut = open.Max(w => w.Section?.ComesOut(w.Window.Best(w.CutsThrough, unit)) ?? 0);
            yield return new Section([], [new("every time")], [.. HandCautions.Of(comesOut, unit).Select(c => (ImmutableArray<string>)[c])]);
        }
    }

    // Each limit as the sum that makes it, the deciding ones first each way.
    private static Section Of(NamedWindow named, LengthUnit unit)
    {
        DepthWindow window = named.Window;
        string title = window.IsOpen
            ? $"{Capital(named.Pass)}: {Length(window.Least, unit)} to {Length(window.Most, unit)}, best {Length(window.Best(named.CutsThrough, unit), unit)}."
            : $"{Capital(named.Pass)}: no depth serves.";
        return new Section(
            [title, "The depth is that of the cutter's end below the router's base."],
            [new("depth"), new("worked out from"), new("because")],
            [
                .. window.Limits.OrderBy(l => l.Sense).ThenBy(l => l.Sense == Sense.AtLeast ? -l.Value : l.Value).Select(l => (ImmutableArray<string>)
                    [l.Sense == Sense.AtLeast ? "at least" : "at most", l.InWords(unit), l.Reason]),
            ]);
    }

    private static string MayBe(SettingRow row, LengthUnit unit) => (row.AtLeast, row.AtMost) switch
    {
        ({ } least, { } most) when least.Value <= most.Value => $"{QuantityText.Write(least, unit)} to {QuantityText.Write(most, unit)}",
        ({ } least, { } most) => $"{QuantityText.Write(least, unit)} or more, but {QuantityText.Write(most, unit)} or less",
        ({ } least, null) => $"{QuantityText.Write(least, unit)} or more",
        (null, { } most) => $"{QuantityText.Write(most, unit)} or less",
        _ => "",
    };

    private static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Fits => "fits",
        Verdict.SetIt => "set it so",
        Verdict.Doubtful => "doubtful",
        _ => "broken",
    };

    private static string Told(Quantity? quantity, LengthUnit unit, string otherwise) => quantity is { } q ? QuantityText.Write(q, unit) : otherwise;

    private static string Length(double millimetres, LengthUnit unit) => QuantityText.Write(Quantity.Length(millimetres), unit);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
