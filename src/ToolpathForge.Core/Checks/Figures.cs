using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;

namespace ToolpathForge.Checks;

/// <summary>A figure of the program's own that no row of a catalogue holds, and how well founded it is.</summary>
/// <param name="Id">A word for it, lower case with hyphens.</param>
/// <param name="Says">What it is, for a person.</param>
/// <param name="Value">How much. A share and a count are numbers.</param>
/// <param name="Unit">The unit of a number, as "N/mm²"; empty for a share, a count, and for quantities that bring theirs.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record Figure(string Id, string Says, Quantity Value, string Unit, Source Source);

/// <summary>
/// The figures that decide what is cut, held and refused, each read from where it is used, so that the list cannot say another. Those of bits, materials, machines and sizes are in the
/// catalogues. A job overrides most of them by its own keys.
/// </summary>
public static class Figures
{
    /// <summary>All of them, in the order of the work: feeds, passes, finish, tabs, grain, holding, machine.</summary>
    public static ImmutableArray<Figure> All { get; } =
    [
        Number("plunge-share", "Plunge feed to feed", Feeds.PlungeShare, "", SourceKind.Practice, "Usual where no bit or machine says less"),
        Speed("usual-speed", "Spindle speed where nothing speaks against it", Feeds.UsualSpeed, SourceKind.Practice, "Middle of what routers run at"),
        Number("slot-share", "Feed in a slot of the bit's width to feed", CutSettings.SlotShare, "", SourceKind.Practice, "Chips leave a slot badly"),
        Number("deep-slot", "Slots are widened beyond this depth, in diameters", CutSettings.DeepSlot, "", SourceKind.Practice, "Chips leave a slot badly"),
        Number("step-over", "Distance of rings in holes to the diameter", HoleCut.StepOver, "", SourceKind.Practice, "Less than a half leaves no core"),
        Number("row-distance", "Distance of rows in waste cut to chips to the diameter", WasteRows.Share, "", SourceKind.Practice, "No ridge is left between rows"),
        Length("panel-overcut", "Last pass below a panel", CutSettings.PanelOvercut, SourceKind.Practice, "Clears a panel's unevenness; measure yours"),
        Length("board-overcut", "Last pass below a board", CutSettings.BoardOvercut, SourceKind.Practice, "Clears a board's unevenness; measure yours"),
        Length("allowance", "What roughing leaves for the finish", CutSettings.UsualAllowance, SourceKind.Practice, "Half a millimeter; a light frame wants more"),
        Number("finish-push", "Most that a finishing pass may push bit and frame aside, to the allowance", CutSettings.PushShare, "", SourceKind.Judgment, "A third leaves two thirds to be cut"),
        Length("edge-rounding", "Chips thinner than this rub", FinishChip.EdgeRounding, SourceKind.Memory, "Rounding of a carbide edge in use, 10 to 20 µm"),
        Number("bit-core", "Core that bends to the diameter", SideLoad.Core, "", SourceKind.Memory, "Flutes take the rest"),
        Number("carbide-modulus", "Young's modulus of carbide", SideLoad.Carbide / 1000, "kN/mm²", SourceKind.Memory, "By grade 550 to 650"),
        Number("steel-modulus", "Young's modulus of steel", SideLoad.Steel / 1000, "kN/mm²", SourceKind.Published, "Any engineering handbook"),
        Length("tab-length", "Length of a tab at its top", CutSettings.UsualTabLength, SourceKind.Practice, "Sawn or chiseled off"),
        Number("tab-height-share", "Height of a tab to the thickness, 1 to 3 mm", CutSettings.TabHeightShare, "", SourceKind.Judgment, "About a third; a job says another"),
        Length("tab-spacing", "Most between tabs", CutSettings.TabSpacing, SourceKind.Practice, "A job says another"),
        Number("tab-strength", "Shear strength that a tab is reckoned with", CutSettings.TabStrength, "N/mm²", SourceKind.Memory, "Low for fiberboard, so that it is safe for the others"),
        Number("tab-safety", "Force that tabs hold to that of a full pass", CutSettings.TabSafety, "", SourceKind.Judgment, "Wood varies, and bits catch"),
        Angle("tab-side", "Slope of a tab's sides for a bit that plunges", CutSettings.SteepTab, SourceKind.Judgment, "Short, and no jolt for a light frame"),
        Angle("grain-along", "Edges nearer to the grain than this are along it", Grain.AlongLimit, SourceKind.Judgment, "Sources on tear-out begin between 0 and 15 degrees"),
        Angle("grain-end", "Edges farther from the grain than this are end grain", Grain.EndLimit, SourceKind.Judgment, "Sources have the worst edges near 60 degrees"),
        Angle("grain-close", "An edge nearer to one of those limits is told", Grain.Hair, SourceKind.Judgment, "End cuts must not hang on a rounding"),
        Number("corner-risk", "Corners are cut first from this risk on; 1 is a square corner", FinishRuns.CornerRisk, "", SourceKind.Judgment, "Half of the risk of a square corner"),
        Length("corner-first", "What is cut first there, or the bit's diameter if that is more", FinishRuns.LeastCorner, SourceKind.Practice, "Ends first, from the edge inwards"),
        Length("screw-edge", "Screws from the edges of waste", WasteScrews.EdgeDistance, SourceKind.Practice, "Nearer ones split the wood"),
        Length("screw-apart", "Screws in waste from each other, at least", WasteScrews.Apart, SourceKind.Judgment, "Nearer ones hold little better than one"),
        Length("metal-clear", "Metal from the bit, at least", Clamping.MetalGap, SourceKind.Practice, "Room for a clamp that is a little askew"),
        Length("nut-clear", "Collet nut above the stock, at least", CutSettings.Nut, SourceKind.Practice, "Chips and a board that is not flat"),
        Length("spoilboard-left", "Spoilboard below the deepest pass, at least", StockAndBed.LeastSpoilboard, SourceKind.Practice, "Keeps the bit out of the bed"),
        Length("grip-least", "Shank in the collet, or two diameters of it if that is more", Grip.LeastLength, SourceKind.Practice, "The collet's maker may ask for more"),
        Length("stick-out-flutes", "Stick-out past the flutes, for their run-out", StickOut.RunOut, SourceKind.Judgment, "Look at yours: flutes never go into the collet"),
        Length("off-bottom", "Shank off the collet's bottom", StickOut.OffBottom, SourceKind.Practice, "Tightening would draw it down onto the bottom"),
        Number("long-bit", "Stick-out in shanks from which a bit runs slower", SpeedByDiameter.LongBit, "", SourceKind.Practice, "A long bit whips"),
        Number("long-bit-share", "Share of the speed for such a bit", SpeedByDiameter.LongShare, "", SourceKind.Judgment, "Practice says slower, not by how much"),
        Number("loose-mass", "Waste that may come loose, at most, kg", StockAndBed.LooseMass, "", SourceKind.Judgment, "No source names a mass that may fly"),
        Length("screw-pilot", "Hole drilled for a screw in waste", WasteScrews.Pilot, SourceKind.Practice, "About the core of the screw"),
        Length("screw-above-bed", "Spoilboard below a screw's point, at least", WasteScrews.AboveBed, SourceKind.Judgment, "Keeps metal off the bed"),
        Number("tipping-share", "Moment of an overhanging board to the machine's own, at most", Tipping.Share, "", SourceKind.Judgment, "A board is also leaned on"),
        Number("sold-as-dry", "Moisture of lumber sold as dry, at most", WoodDensity.SoldAsDry, "%", SourceKind.Published, "American Softwood Lumber Standard PS 20"),
    ];

    private static Figure Length(string id, string says, double value, SourceKind kind, string source) => new(id, says, Quantity.Length(value), "", new Source(kind, source));

    private static Figure Angle(string id, string says, double value, SourceKind kind, string source) => new(id, says, Quantity.Angle(value), "", new Source(kind, source));

    private static Figure Speed(string id, string says, double value, SourceKind kind, string source) => new(id, says, Quantity.Speed(value), "", new Source(kind, source));

    private static Figure Number(string id, string says, double value, string unit, SourceKind kind, string source) => new(id, says, Quantity.Number(value), unit, new Source(kind, source));
}
