using System.Globalization;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads what a trial piece has shown, and turns down what cannot be.</summary>
internal static class TrialReader
{
    internal static readonly FindingKind BitFar = new(
        "trial-bit-far",
        Severity.Stop,
        "A slot of {found} from a bit of {allowed} cannot be: it may be {room} off.",
        "Measure the slot again, in its middle and near its floor, and look whether this is the bit that was named.");

    internal static readonly FindingKind ScaleFar = new(
        "trial-scale-far",
        Severity.Stop,
        "By these readings the {axis} axis goes {found} for every {allowed}: more than a hundredth off.",
        "Measure again; if it is so, put the axis's setting in the controller right instead, and cut another trial piece.");

    internal static readonly FindingKind SkewFar = new(
        "trial-skew-far",
        Severity.Stop,
        "By these readings the axes are {found} from square; up to {allowed} is made up for.",
        "Measure the diagonals again; if it is so, square the frame and cut another trial piece.");

    internal static readonly FindingKind Contradict = new(
        "trial-contradicts",
        Severity.Stop,
        "The diagonals do not belong to these widths: they are {found} apart, and a caliper accounts for {allowed}.",
        "Measure the square again. The rising diagonal goes from the near left to the far right corner.");

    internal static readonly FindingKind Play = new(
        "trial-play",
        Severity.Warn,
        "By the hole the bit is {found} thick, by the slot {allowed}: something has play, or deflects.",
        "Check the belts, nuts and collet, and cut another trial piece; take lighter passes if it stays.");

    internal static readonly FindingKind Corrected = new(
        "trial-corrected",
        Severity.Note,
        "By the trial piece {bit} cuts {found} wide; X is scaled by {x}, Y by {y}, and Y leans {skew} to the right. Programs make up for it.",
        "Cut another trial piece when bit or machine has changed.");

    // A bit is worn or runs out by no more than this, mm, nor a tenth of its diameter (common practice); what a caliper and a hand leave in doubt, mm.
    private const double BitRoom = 0.4;
    private const double Doubt = 0.4;
    private const double PlayRoom = 0.15;

    /// <summary>The keys.</summary>
    internal static TableKeys Keys { get; } = new("trial",
    [
        Key.Row("bit", "bits", "The bit that the trial piece was cut with."),
        Key.Length("slot", "Width of the slot: the bit's true diameter.", 0.5, 60),
        Key.Length("side", "Side of the square in the trial program, as its page says.", 20, 1000).Else("4 in", "100 mm"),
        Key.Length("across-x", "Width of the square along X.", 10, 1100).ElseFrom("not measured: only the bit is made up for"),
        Key.Length("across-y", "Width of the square along Y.", 10, 1100).ElseFrom("not measured"),
        Key.Length("rising", "Diagonal from the near left corner to the far right one.", 10, 1600).ElseFrom("not measured"),
        Key.Length("falling", "Diagonal from the far left corner to the near right one.", 10, 1600).ElseFrom("not measured"),
        Key.Length("hole", "Diameter of the hole in the trial program, as its page says.", 2, 500).Else("1 1/2 in", "40 mm"),
        Key.Length("hole-x", "Width of the hole along X.", 1, 600).ElseFrom("not measured: play is not looked at"),
        Key.Length("hole-y", "Width of the hole along Y.", 1, 600).ElseFrom("not measured: play is not looked at"),
    ]);

    /// <summary>The catalogues with the bit as it really is, and the errors of the axes; no errors where a finding says what is wrong.</summary>
    internal static (Catalogues Catalogues, AxisErrors? Axes, Bit? Before) Read(TableValue? table, Catalogues catalogues, TableContext context)
    {
        if (table is null)
        {
            return (catalogues, AxisErrors.None, null);
        }

        var read = Fields.Read(table, Keys, context);
        Bit? bit = RowLookup.Find(read, "bit", "bits", catalogues.Bits, context);
        string[] square = ["across-x", "across-y", "rising", "falling"];
        if (Array.Exists(square, read.Has) && Array.Find(square, k => !read.Has(k)) is { } missing)
        {
            context.Add(Finding.Of(
                TableFindings.MissingKey, table.At, Arg.Of("key", missing), Arg.Of("table", Keys.Name), Arg.Of("meaning", "the square is measured in four ways, or not at all.")));
            return (catalogues, null, null);
        }

        if (!read.IsSound || bit is null)
        {
            return (catalogues, null, null);
        }

        double slot = read.Amount("slot");
        double room = Math.Min(BitRoom, bit.Diameter / 10);
        if (Math.Abs(slot - bit.Diameter) > room)
        {
            context.Add(Finding.Of(BitFar, read.Where("slot"), Quantity.Length(slot), Quantity.Length(bit.Diameter), Arg.Of("room", Quantity.Length(room))));
            return (catalogues, null, null);
        }

        AxisErrors? found = read.Has("rising") ? Axes(read, bit, slot, context) : AxisErrors.None;
        if (found is not { } axes)
        {
            return (catalogues, null, null);
        }

        static string Scale(double s) => s.ToString("0.00000", CultureInfo.InvariantCulture);
        context.Add(Finding.Of(
            Corrected, read.Table.At, Quantity.Length(slot), Quantity.Length(bit.Diameter), Arg.Of("bit", bit.Name), Arg.Of("x", Scale(axes.ScaleX)), Arg.Of("y", Scale(axes.ScaleY)),
            Arg.Of("skew", Quantity.Angle(axes.Skew * 180 / Math.PI))));
        return (catalogues with { Bits = catalogues.Bits.With([bit with { Diameter = slot }]) }, axes, bit);
    }

    private static AxisErrors? Axes(Fields read, Bit bit, double slot, TableContext context)
    {
        var readings = new TrialReadings(
            bit.Diameter, slot, read.Amount("side"), read.Amount("across-x"), read.Amount("across-y"), read.Amount("rising"), read.Amount("falling"));
        AxisErrors axes = readings.Axes;
        bool sound = true;
        foreach ((string key, string name, double scale) in (ReadOnlySpan<(string, string, double)>)[("across-x", "X", axes.ScaleX), ("across-y", "Y", axes.ScaleY)])
        {
            if (Math.Abs(scale - 1) > AxisErrors.MostScale)
            {
                sound = false;
                context.Add(Finding.Of(ScaleFar, read.Where(key), Quantity.Length(scale * 100), Quantity.Length(100), Arg.Of("axis", name)));
            }
        }

        if (Math.Abs(axes.Skew) > AxisErrors.MostSkew)
        {
            sound = false;
            context.Add(Finding.Of(
                SkewFar, read.Where("rising"), Quantity.Angle(Math.Abs(axes.Skew) * 180 / Math.PI), Quantity.Angle(AxisErrors.MostSkew * 180 / Math.PI)));
        }

        if (sound && readings.Contradiction > Doubt)
        {
            sound = false;
            context.Add(Finding.Of(Contradict, read.Where("rising"), Quantity.Length(readings.Contradiction), Quantity.Length(Doubt)));
        }

        foreach ((string key, double scale) in (ReadOnlySpan<(string, double)>)[("hole-x", axes.ScaleX), ("hole-y", axes.ScaleY)])
        {
            if (sound && read.AmountOrNull(key) is { } hole && readings.BitByHole(hole, read.Amount("hole"), scale) is var byHole && Math.Abs(byHole - slot) > PlayRoom)
            {
                context.Add(Finding.Of(Play, read.Where(key), Quantity.Length(byHole), Quantity.Length(slot)));
            }
        }

        return sound ? axes : null;
    }
}
