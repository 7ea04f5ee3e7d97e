using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Shapes;

namespace ToolpathForge.Tests.Support;

/// <summary>Jobs put together in code, for tests of what comes after the reader.</summary>
internal static class TestJobs
{
    private static readonly Source s_test = new(SourceKind.User, "figures of the test");
    private static readonly Places s_nowhere = new(Place.None, ImmutableDictionary<string, Place>.Empty);

    internal static CutChoices NoChoices { get; } = new(null, null, null, null, null, null, null, null, null, null);

    internal static Machine Machine { get; } = new(
        "test-400", "a 400 mm test machine", 400, 400, 110, 8000, 24000, 2500, 600, 500, 0.5, 0.4, 50, 30, 250, true, false, false, s_test);

    internal static Dialect Metric { get; } = new(
        "test-metric", "metric, arcs by center", LengthUnit.Millimetre, 3, 4, 0, ArcForm.Centre, CommentForm.Brackets, 0, true,
        ["G21 G90 G17 G94 G54"], ["M5", "M30"], BitChange.Command, ["M5", "T{tool} M6"], ["M5", "M0"], ["M3 S{speed}"], 3, "G4 P{seconds}", 256, "\n", ".nc", s_test)
    {
        SpindleStopDwell = 8,
    };

    internal static Bit Bit(double diameter = 6.35, double flutes = 22) => new(
        "test-bit", "a straight test bit", BitKind.Straight, BitSubstance.Carbide, diameter, flutes, 2, diameter, 63, 24000, true, 5, 0, s_test);

    internal static Material Hardboard { get; } = new(
        "test-hardboard", "hardboard", MaterialKind.Panel, 900, 1, 5, 35, [new ChipBand(3.175, 0.1, 0.18), new ChipBand(12.7, 0.5, 0.63)], s_test);

    internal static Material Cedar { get; } = new(
        "test-cedar", "cedar", MaterialKind.Softwood, 370, 1, 5, 25, [new ChipBand(3.175, 0.08, 0.13), new ChipBand(12.7, 0.48, 0.53)], s_test);

    internal static PatternMake Pattern(ShapeSpec shape, int count = 1, double widthInches = 7.25, Bit? bit = null, CutChoices? cut = null) => new(
        "tail", count, new Lumber("2x8", "2x8", 38.1, widthInches * 25.4, s_test), widthInches * 25.4,
        Hardboard, 5.6, shape, bit ?? Bit(), cut ?? NoChoices, 100, 38, 12, s_nowhere)
    {
        Sheet = new PanelSheet(new Panel("board", "1/4 in hardboard", "test-hardboard", 6.35, 5.3, 6.8, s_test)),
    };

    internal static BoardEndMake BoardEnd(ShapeSpec shape, double width = 139.7, double thickness = 25.4, Bit? bit = null, CutChoices? cut = null, double slope = 0) => new(
        "bracket", 1, new Lumber("1x6", "1x6", thickness, width, s_test), width, Cedar, thickness, shape, bit ?? Bit(6.35, 28.6), cut ?? NoChoices,
        600, 300, slope, 3, 12, s_nowhere)
    {
        Batch = new BoardBatch([new MeasuredBoards("", 1, width, thickness, Place.None)], false, 1, null, 597, Waste.Screwed, 0, false, 0, false, 600),
    };

    internal static Job Of(params Make[] makes) => new(
        "test.toml", "Test", LengthUnit.Inch, 0.1, Machine, Metric, ZeroHeight.Bed, 5, 18, [.. makes], s_nowhere);

    internal static ShapeSpec Scoop(double run = 190.5, double depth = 107.95, double angle = 10) =>
        QuarterEllipseTests.Spec("scoop", Measure.Fixed(run), Measure.Fixed(depth), 0, angle);

    internal static ShapeSpec Belly(double run = 82.55, double depth = 63.5, double angle = 0) =>
        QuarterEllipseTests.Spec("belly", Measure.Fixed(run), Measure.Fixed(depth), 0, angle, "bottom");
}
