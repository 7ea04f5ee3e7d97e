using ToolpathForge.Cutting;
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
        Severity.Stop,
        "The waste of this end, about {found}, comes free in the last pass and nothing holds it; more than {allowed} can be thrown by the bit.",
        "Say how it is held: waste = \"screwed\" (the sheet shows where), \"clamped\", \"chips\" (it is cut to chips) or \"sawn\" (it is sawn off beforehand).");

    /// <summary>Waste that is said to be clamped, and no clamp.</summary>
    internal static readonly FindingKind NoClamp = new(
        "waste-clamp-missing",
        Severity.Stop,
        "The waste is to be clamped, but the job names no clamp that lies on it.",
        "Add a clamp with its place and height, or have the waste screwed down.");

    /// <summary>Waste that is said to be screwed down, and no room for a screw.</summary>
    internal static readonly FindingKind NoRoomForScrew = new(
        "no-room-for-screw",
        Severity.Stop,
        "Two screws find no room in the waste, 3 mm clear of the bit, 10 mm from the edges and 15 mm apart; one alone would let it turn.",
        "Use a thinner bit, clamp the waste, have it cut to chips, or saw it off beforehand.");

    /// <summary>Waste that is to be screwed down, and too small for a screw.</summary>
    internal static readonly FindingKind ScrapUnscrewed = new(
        "scrap-unscrewed",
        Severity.Note,
        "The waste of this end, about {found}, is too small for a screw and comes loose.",
        "Have it cut to chips (waste = \"chips\"); or stand clear, and guard your eyes: even a small scrap flies.");

    /// <summary>Sawing leaves so much that a strip comes off whole.</summary>
    internal static readonly FindingKind SawMarginWide = new(
        "saw-margin-wide",
        Severity.Stop,
        "Sawing leaves {found} outside the line; with a bit of {allowed} a strip would come off whole beside the slot.",
        "Saw nearer to the line, or use a thicker bit.");

    // Common practice: a few millimetres keep the bit out of the bed.
    internal const double LeastSpoilboard = 6;

    /// <summary>
    /// Waste heavier than this does not come loose, kg. Judgment, not practice: no source names a mass that may fly. At the 10 m/s of a 1/2 in bit's rim at 16,000 rpm this one carries
    /// a joule, and even it is told on the sheet.
    /// </summary>
    internal const double LooseMass = 0.02;

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        if (input.Make.Sheet is { Panel: var panel }
            && (input.Make.Thickness < panel.Thinnest - 1e-9 || input.Make.Thickness > panel.Thickest + 1e-9))
        {
            yield return Finding.Of(
                ThicknessUnusual,
                input.At("stock.thickness"),
                Quantity.Length(input.Make.Thickness),
                Quantity.Length(panel.Nominal),
                Arg.Of("panel", panel.Name),
                Arg.Of("thinnest", Quantity.Length(panel.Thinnest)),
                Arg.Of("thickest", Quantity.Length(panel.Thickest)));
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
        if (input.Make is BoardEndMake end && input.Settings.Skin <= 0 && WasteFault(input, end) is { } fault)
        {
            yield return fault;
        }
    }

    private static Finding? WasteFault(CheckInput input, BoardEndMake end)
    {
        double mass = WasteMass(input);
        switch (end.Batch.Waste)
        {
            case Waste.Loose when mass > LooseMass:
                return Finding.Of(
                    WasteLoose,
                    end.At.Keys.ContainsKey("end.waste") ? input.At("end.waste") : input.At("stock"),
                    new Quantity(mass, QuantityKind.Mass),
                    new Quantity(LooseMass, QuantityKind.Mass));
            case Waste.Clamped when input.Clamping.Pieces.Any(p => !end.Clamps.Any(c => IsOnWaste(input, p.Number, c))):
                return Finding.Of(NoClamp, input.At("end.waste"));
            case Waste.Sawn when end.Batch.SawMargin > end.Bit.Diameter + 1e-9:
                return Finding.Of(SawMarginWide, input.At("end.saw-margin"), Quantity.Length(end.Batch.SawMargin), Quantity.Length(end.Bit.Diameter));
            default:
                return null;
        }
    }

    // Some corner or the middle of the clamp lies over the block and off the piece.
    private static bool IsOnWaste(CheckInput input, int number, ClampBox clamp)
    {
        PlacedContour piece = input.Pieces.First(p => p.Placed.Number == number);
        IEnumerable<Point2> points = Contour.Rectangle(clamp.Box).Vertices.ToArray().Select(v => v.Point).Prepend(clamp.Box.Center);
        return points.Any(p => piece.Placed.Block.Contains(p) && !piece.Contour.Contains(p));
    }

    /// <summary>Mass of what comes free of one board's end, kg: all of its block on the bed that is not the piece.</summary>
    internal static double WasteMass(CheckInput input)
    {
        PlacedContour piece = input.Pieces[0];
        Box2 block = piece.Placed.Block;
        double area = (block.Width * block.Height) - Math.Abs(piece.Contour.SignedArea);
        return area * input.Make.Thickness * (input.Make is BoardEndMake end ? end.Density : input.Make.Material.Density) * 1e-9;
    }
}
