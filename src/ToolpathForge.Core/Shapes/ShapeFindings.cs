using ToolpathForge.Findings;

namespace ToolpathForge.Shapes;

/// <summary>What any shape may have to say about its answers.</summary>
internal static class ShapeFindings
{
    /// <summary>The curve would take the whole width and leave no end to cut.</summary>
    internal static readonly FindingKind TooDeep = new(
        "shape-too-deep",
        Severity.Stop,
        "The curve reaches {found} up a board that is {width} wide; at most {allowed} leaves an end worth cutting.",
        "Lower the depth, or choose a wider board.");

    /// <summary>Rounding to the fraction asked for left nothing.</summary>
    internal static readonly FindingKind RoundedAway = new(
        "shape-rounded-away",
        Severity.Stop,
        "Rounded to {round}, the {size} becomes {found}.",
        "Round to a finer fraction, or give the size itself.");

    /// <summary>A size is next to nothing.</summary>
    internal static readonly FindingKind NextToNothing = new(
        "shape-size-next-to-nothing",
        Severity.Stop,
        "The {size} comes to less than {allowed} on this board.",
        "Give a larger size, or leave it out.");

    /// <summary>Rounding spoils the proportion that a family should share.</summary>
    internal static readonly FindingKind RatioMoved = new(
        "shape-ratio-moved",
        Severity.Warn,
        "Rounded to {round}, run to depth becomes {rounded} instead of {exact}: {found} per cent off, where {allowed} is to be kept.",
        "Round to a finer fraction, allow more with keep-ratio, or give this board its own sizes.");

    /// <summary>One size uses up another.</summary>
    internal static readonly FindingKind NothingLeft = new(
        "shape-nothing-left",
        Severity.Stop,
        "The {size} of {found} leaves nothing of the {whole} of {allowed} for the curve.",
        "Make the one smaller or the other larger.");

    /// <summary>The curve leaves the board, or lies on its edge.</summary>
    internal static readonly FindingKind LeavesBoard = new(
        "shape-leaves-board",
        Severity.Stop,
        "The curve comes back to the {edge}, {found} from it; it must stay clear of it once it has begun.",
        "Ease the curve, or let its first part rise from the edge.");

    /// <summary>The curve meets itself.</summary>
    internal static readonly FindingKind CrossesItself = new(
        "shape-crosses-itself",
        Severity.Stop,
        "The curve meets itself {along} along the board from where it begins and {across} up it.",
        "Change the sizes so that its parts stay apart.");

    /// <summary>A point so sharp that it breaks.</summary>
    internal static readonly FindingKind TooSharp = new(
        "shape-too-sharp",
        Severity.Stop,
        "The point {along} along the board from where the curve begins and {across} up it is only {found} sharp; below {allowed} it breaks off.",
        "Lean the end cut the other way, or ease the curve there.");

    /// <summary>The sizes of a part do not settle it.</summary>
    internal static readonly FindingKind PartUnsettled = new(
        "part-unsettled",
        Severity.Stop,
        "These sizes do not settle {part}: it takes {takes}.",
        "Give one of these sets of sizes and leave out the others.");

    /// <summary>Parts that should flow into each other make a corner.</summary>
    internal static readonly FindingKind NotSmooth = new(
        "join-not-smooth",
        Severity.Stop,
        "Part {number} is to go on smoothly, but it turns by {found} where it begins, {along} along the board and {across} up it; {allowed} is allowed.",
        "Leave out one of its sizes so that it follows from the join, or put a fillet between the two.");

    /// <summary>A circle cannot pass through both ends.</summary>
    internal static readonly FindingKind RadiusShort = new(
        "arc-radius-short",
        Severity.Stop,
        "An arc of radius {found} cannot span from its beginning to its end; it takes {allowed} at least.",
        "Give a larger radius, or a shorter run or depth.");

    /// <summary>The end lies on the other side.</summary>
    internal static readonly FindingKind WrongWay = new(
        "arc-wrong-way",
        Severity.Stop,
        "Starting as it must, {found} from the board's edge, a {form} cannot reach its end; it would have to begin {side} than {allowed}.",
        "Change run or depth, give a radius, or use the other form.");

    /// <summary>No corner, or the first or last of the parts.</summary>
    internal static readonly FindingKind NothingToRound = new(
        "fillet-no-corner",
        Severity.Stop,
        "There is no corner for the fillet: {why}.",
        "Put the fillet between two parts that meet in a corner, or take it out.");

    /// <summary>More than the parts beside the corner have room for.</summary>
    internal static readonly FindingKind FilletTooLarge = new(
        "fillet-too-large",
        Severity.Stop,
        "A fillet of {found} has no room beside its corner; at most {allowed} fits.",
        "Use a smaller fillet, or longer parts beside it.");
}
