using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Checks;

/// <summary>Whether stock, overcut and spoilboard go together, and what comes loose.</summary>
internal static class StockAndBed
{
    /// <summary>Thinner or thicker than the standard lets a panel be.</summary>
    internal static readonly FindingKind ThicknessUnusual = new(
        "thickness-unusual",
        Severity.Warn,
        "The panel is said to be {found} thick; {panel} runs from {thinnest} to {thickest}.",
        "Measure it again with a caliper, away from the edge.");

    /// <summary>The last pass would leave too little spoilboard.</summary>
    internal static readonly FindingKind SpoilboardThin = new(
        "spoilboard-thin",
        Severity.Stop,
        "The overcut leaves {found} of the spoilboard; {allowed} must stay.",
        "Lower the overcut, or fit a thicker spoilboard.");

    /// <summary>Tabs as high as the stock leave nothing cut.</summary>
    internal static readonly FindingKind TabTooHigh = new(
        "tab-too-high",
        Severity.Stop,
        "Tabs {found} high in stock {thickness} thick cannot be sawn free; {allowed} at most.",
        "Lower the tabs.");

    /// <summary>Waste that nothing holds.</summary>
    internal static readonly FindingKind WasteLoose = new(
        "waste-loose",
        Severity.Warn,
        "The waste of this end, about {found}, comes free in the last pass; more than {allowed} can be thrown by the bit.",
        "Screw the waste to the spoilboard clear of the bit's track (the sheet shows it), or saw most of it off first.");

    // Common practice: a few millimetres keep the bit out of the bed.
    internal const double LeastSpoilboard = 6;

    // Common practice: a piece lighter than this is blown aside rather than thrown.
    internal const double LooseMass = 0.05;

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        if (input.Make is PatternMake pattern
            && (pattern.Thickness < pattern.Panel.Thinnest - 1e-9 || pattern.Thickness > pattern.Panel.Thickest + 1e-9))
        {
            yield return Finding.Of(
                ThicknessUnusual,
                input.At("stock.thickness"),
                Quantity.Length(pattern.Thickness),
                Quantity.Length(pattern.Panel.Nominal),
                Arg.Of("panel", pattern.Panel.Name),
                Arg.Of("thinnest", Quantity.Length(pattern.Panel.Thinnest)),
                Arg.Of("thickest", Quantity.Length(pattern.Panel.Thickest)));
        }

        double left = input.Job.Spoilboard - input.Settings.Overcut;
        if (left < LeastSpoilboard)
        {
            yield return Finding.Of(SpoilboardThin, input.At("cut.overcut"), Quantity.Length(left), Quantity.Length(LeastSpoilboard));
        }

        double highest = input.Make.Thickness * 0.6;
        if (input.Settings.TabCount > 0 && input.Settings.TabHeight > highest)
        {
            yield return Finding.Of(
                TabTooHigh,
                input.At("cut.tab-height"),
                Quantity.Length(input.Settings.TabHeight),
                Quantity.Length(highest),
                Arg.Of("thickness", Quantity.Length(input.Make.Thickness)));
        }

        // Cut part way, the waste stays on the board until it is sawn off.
        if (input.Make is BoardEndMake && input.Settings.Skin <= 0)
        {
            double mass = WasteMass(input);
            if (mass > LooseMass)
            {
                yield return Finding.Of(
                    WasteLoose, input.At("stock"), new Quantity(mass, QuantityKind.Mass), new Quantity(LooseMass, QuantityKind.Mass));
            }
        }
    }

    /// <summary>Mass of what comes free of a board's end, kg: all of the stock on the bed that is not the piece.</summary>
    internal static double WasteMass(CheckInput input)
    {
        Box2 stock = input.Clamping.Stock.Box;
        double area = (stock.Width * stock.Height) - input.Pieces.Sum(p => Math.Abs(p.Contour.SignedArea));
        return area * input.Make.Thickness * input.Make.Material.Density * 1e-9;
    }
}
