using ToolpathForge.Findings;
using ToolpathForge.Jobs;

namespace ToolpathForge.Checks;

/// <summary>Whether tabs are asked for at a board's end, where none can stand.</summary>
internal static class BoardTabs
{
    /// <summary>A board's end has no straight edge that stays unfinished.</summary>
    internal static readonly FindingKind NoEdge = new(
        "tabs-on-board-end",
        Severity.Stop,
        "A board's end has no edge that allows a tab: each is finished. About {found} of waste comes free; more than {allowed} can be thrown by the bit.",
        "Leave tabs out; screw the waste to the spoilboard clear of the bit's track, or saw most of it off first.");

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        CutChoices said = input.Make.Cut;
        string? key = said.Tabs is not null ? "cut.tabs"
            : said.TabLength is not null ? "cut.tab-length"
            : said.TabHeight is not null ? "cut.tab-height"
            : said.TabSpacing is not null ? "cut.tab-spacing"
            : null;
        if (input.Make is BoardEndMake && key is not null)
        {
            yield return Finding.Of(
                NoEdge,
                input.At(key),
                new Quantity(StockAndBed.WasteMass(input), QuantityKind.Mass),
                new Quantity(StockAndBed.LooseMass, QuantityKind.Mass));
        }
    }
}
