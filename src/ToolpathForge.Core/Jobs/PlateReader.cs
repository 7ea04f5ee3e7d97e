using ToolpathForge.Findings;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads how far a pattern's plate reaches, and holds that against the boards and the router that it is for.</summary>
internal static class PlateReader
{
    /// <summary>A wide board would stand out past the plate.</summary>
    internal static readonly FindingKind ReachShort = new(
        "plate-reach-short",
        Severity.Stop,
        "The plate reaches {found} past the profile edge; the widest board it is for, {widest}, asks for {allowed}.",
        "Raise reach, or leave it out: it is then made long enough.");

    /// <summary>The router would tip where the cut begins or ends.</summary>
    internal static readonly FindingKind BaseTips = new(
        "plate-base-tips",
        Severity.Stop,
        "{key} is {found}; a router's base {base} across needs half of that, {allowed}, past the end of the curve to stand on.",
        "Raise it, or leave it out: it is then made long enough.");

    /// <summary>A plate is never short of the widest board: this much goes past it, mm (1/16 in).</summary>
    internal const double PastWidest = 25.4 / 16;

    /// <summary>The margins of a plate: those that are not written are made as long as boards and router ask.</summary>
    /// <param name="plate">The plate's table, sound.</param>
    /// <param name="width">Width that the shape is drawn for, mm.</param>
    /// <param name="widest">Width of the widest board, mm.</param>
    /// <param name="context">The file.</param>
    internal static (double Hold, double Seat, double Reach) Margins(Fields plate, double width, double widest, TableContext context)
    {
        double half = (plate.AmountOrNull("base") ?? 0) / 2;
        double past = Math.Max(0, widest - width) + PastWidest;
        double Margin(string key, double least) =>
            plate.Table.Find(key) is null ? Math.Max(plate.Amount(key), least) : plate.Amount(key);

        foreach (string key in (string[])["hold", "seat", "reach"])
        {
            if (plate.Table.Find(key) is not null && plate.Amount(key) < half - 1e-9)
            {
                context.Add(Finding.Of(
                    BaseTips, plate.Where(key), Quantity.Length(plate.Amount(key)), Quantity.Length(half),
                    Arg.Of("key", key), Arg.Of("base", Quantity.Length(2 * half))));
            }
        }

        double reach = Margin("reach", Math.Max(half, past));
        if (reach < past - 1e-9)
        {
            context.Add(Finding.Of(
                ReachShort, plate.Where("reach"), Quantity.Length(reach), Quantity.Length(past), Arg.Of("widest", Quantity.Length(Math.Max(width, widest)))));
        }

        return (Margin("hold", half), Margin("seat", half), reach);
    }
}
