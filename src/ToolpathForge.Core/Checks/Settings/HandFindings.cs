using ToolpathForge.Findings;

namespace ToolpathForge.Checks.Settings;

/// <summary>What can be wrong with a hand router's set-up.</summary>
internal static class HandFindings
{
    internal static readonly FindingKind SpeedHigh = new(
        "hand-speed-high",
        Severity.Stop,
        "{found} is too fast for this bit; {allowed} is the most for its diameter and by its row.",
        "Turn the router down before it is switched on. A large bit that runs too fast may fly apart or tear the router from the hands.");

    internal static readonly FindingKind SlowDown = new(
        "hand-speed-set",
        Severity.Note,
        "This bit is too large for a router that nobody has turned down: {found} is usual, {allowed} the most.",
        "Turn the router down before it is switched on, by its dial and its manual.");

    internal static readonly FindingKind NoGuide = new(
        "hand-no-guide",
        Severity.Stop,
        "{bit} is of kind {kind} and has nothing that follows a pattern.",
        "Take a straight bit with a bearing, or state the bushing that you use with this one.");

    internal static readonly FindingKind NothingToFollow = new(
        "hand-nothing-to-follow",
        Severity.Stop,
        "Neither a pattern nor an edge that is cut already is stated: the bearing has nothing to follow.",
        "State the thickness of the pattern, or how deep the edge is cut.");

    internal static readonly FindingKind PatternThin = new(
        "hand-pattern-thin",
        Severity.Stop,
        "The pattern is {found} thick; guide and margins need {allowed}.",
        "Make the pattern of a thicker panel, or put a second one on it with brads.");

    internal static readonly FindingKind TwoPasses = new(
        "hand-two-passes",
        Severity.Warn,
        "The cutter is {found} long; this board takes {allowed} in one pass.",
        "Take two passes, the second without the pattern and the bearing on what the first has cut; or a longer cutter.");

    internal static readonly FindingKind BoardThick = new(
        "hand-board-thick",
        Severity.Stop,
        "The board is {found} thick; with this cutter {allowed} can be cut.",
        "Take a longer cutter, or thinner stock.");

    internal static readonly FindingKind EdgeShallow = new(
        "hand-edge-shallow",
        Severity.Stop,
        "The edge that guides is {found} deep; bearing and cutter need {allowed}.",
        "Cut the edge deeper first, or take a longer cutter.");

    internal static readonly FindingKind OutOfReach = new(
        "hand-out-of-reach",
        Severity.Stop,
        "With its shank fully gripped the bit gets {found} below the base; {allowed} is needed.",
        "Take a longer bit, or a router whose collet comes further down; never grip less.");

    internal static readonly FindingKind NoDepth = new(
        "hand-no-depth",
        Severity.Stop,
        "No depth serves: {lower}, which takes {found} or more, but {upper}, which allows {allowed} at most.",
        "Change one of the lengths in these sums: the cutter, the pattern, the board or the bit's reach.");

    internal static readonly FindingKind DepthOutside = new(
        "hand-depth-outside",
        Severity.Stop,
        "A depth of {found} is outside {least} to {most}.",
        "Set it within them, best at {allowed}, the middle.");

    internal static readonly FindingKind CurveTight = new(
        "hand-curve-tight",
        Severity.Stop,
        "What guides is {allowed} in radius and does not reach into an inside curve of {found}.",
        "Take a smaller cutter and bearing, or ease the inside curve.");

    internal static readonly FindingKind GuideSmall = new(
        "hand-guide-small",
        Severity.Stop,
        "What guides is {found} across, less than the cutter's {allowed}: the cutter would run into the pattern.",
        "Take a bearing of the cutter's own diameter, or a larger one.");

    internal static readonly FindingKind GuideLarge = new(
        "hand-guide-large",
        Severity.Warn,
        "What guides is {found} across and the cutter {allowed}: the work stands {offset} proud of the pattern.",
        "Make outside patterns smaller by {offset} and openings larger by it; or take a bearing of the cutter's own diameter.");

    internal static readonly FindingKind BushingLong = new(
        "hand-bushing-long",
        Severity.Stop,
        "The bushing stands out {found}; the pattern allows {allowed}, or it would ride on the board.",
        "Take a shorter bushing, or a thicker pattern.");

    internal static readonly FindingKind BiteLarge = new(
        "hand-bite-large",
        Severity.Stop,
        "The saw leaves {found}; a hand router takes {allowed} in one bite at most.",
        "Saw closer to the line, about 1/16 in (1.5 mm) outside it.");

    internal static readonly FindingKind AgainstGrain = new(
        "hand-against-grain",
        Severity.Warn,
        "Fed as it must be by hand, against the rotation, this edge is cut against the grain.",
        "Lay the board end over end, with a pattern for that face; or take very light passes.");
}
