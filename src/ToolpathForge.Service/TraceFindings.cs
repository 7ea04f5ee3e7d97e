using ToolpathForge.Findings;

namespace ToolpathForge.Service;

/// <summary>What can be wrong with what <c>trace</c> is asked.</summary>
internal static class TraceFindings
{
    internal static readonly FindingKind UnitUnknown = new(
        "trace-unit-unknown",
        Severity.Stop,
        "'{text}' is no unit that a drawing can be read in.",
        "Use one of mm, cm, dm, m, in, ft, yd.")
    { Unusable = true };

    internal static readonly FindingKind LayerUnknown = new(
        "trace-layer-unknown",
        Severity.Stop,
        "Nothing that is seen lies on a layer called '{text}'; the drawing uses {words}.",
        "Use one of these, as it is written there.")
    { Unusable = true };

    internal static readonly FindingKind UnitNeeded = new(
        "trace-unit-needed",
        Severity.Stop,
        "A parallel or a bit has a size, and the drawing does not say what unit it is drawn in.",
        "Add --unit, then mm, cm, m, in or ft.");

    internal static readonly FindingKind DistanceUnusable = new(
        "trace-distance-unusable",
        Severity.Stop,
        "{key} is {found}, which is no size for it.",
        "A parallel lies at any distance but 0, outside when positive; a bit's diameter is more than 0; neither is more than 1 m.")
    { Unusable = true };

    internal static readonly FindingKind NothingClosed = new(
        "trace-nothing-closed",
        Severity.Warn,
        "No line of the drawing closes into an outline.",
        "Nothing to do if open lines are meant; else allow a wider gap with --gap, or draw what is missing.");

    internal static readonly FindingKind NothingLeft = new(
        "trace-nothing-left",
        Severity.Stop,
        "Nothing is left of the outlines at a distance of {found}.",
        "Take a smaller distance.");

    internal static readonly FindingKind BitLeaves = new(
        "trace-bit-leaves",
        Severity.Warn,
        "A bit of {allowed} leaves up to {found} standing here, over {length} of the outline.",
        "Take a smaller bit, widen the place, or square it out by hand.");

    internal static readonly FindingKind BitReaches = new(
        "trace-bit-reaches",
        Severity.Note,
        "A bit of {allowed} reaches all of every outline.",
        "Nothing to do.");
}
