using ToolpathForge.Findings;

namespace ToolpathForge.Geometry;

/// <summary>The findings that geometry raises about its own results.</summary>
public static class GeometryFindings
{
    /// <summary>An offset whose own check could not vouch for it. {reproducer} holds the input as text.</summary>
    public static readonly FindingKind OffsetUnproven = new(
        "offset-unproven",
        Severity.Stop,
        "The parallel at {found} could not be proven right: {reason}.",
        "Send the reproducer to the maintainers: {reproducer}; a distance changed by a thousandth of a millimeter usually gets round it.");

    /// <summary>A union, intersection or difference whose own check could not vouch for it. {reproducer} holds the input as text.</summary>
    public static readonly FindingKind RegionUnproven = new(
        "region-unproven",
        Severity.Stop,
        "Shapes could not be put together with proof that the result is right: {reason}.",
        "Send the reproducer to the maintainers: {reproducer}; a shape moved by a thousandth of a millimeter usually gets round it.");

    /// <summary>A piece without usable numbers.</summary>
    public static readonly FindingKind PieceUnusable = new(
        "piece-unusable",
        Severity.Stop,
        "Piece {source} of the drawing has no points, a number that is none, or one beyond {largest}; it is left out.",
        "Draw it again, or bring the drawing nearer to its origin.");

    /// <summary>A gap to be closed outside its bounds.</summary>
    public static readonly FindingKind GapOutOfRange = new(
        "gap-out-of-range", Severity.Warn, "Gaps of up to {found} were to be closed; {allowed} is taken.", "Give a gap of 0 to 10 mm.");

    /// <summary>A contour that crosses itself. {sources} names the pieces it is made of.</summary>
    public static readonly FindingKind CrossesItself = new(
        "outline-crosses-itself",
        Severity.Stop,
        "An outline (pieces {sources}) crosses itself, in {count} places; the place told is the first. It bounds no material.",
        "Redraw it so that it goes round once.");

    /// <summary>Two contours that cross. {sources} names the pieces they are made of.</summary>
    public static readonly FindingKind OutlinesCross = new(
        "outlines-cross",
        Severity.Stop,
        "Two outlines (pieces {sources}) cross each other, in {count} places; the place told is the first.",
        "Move them apart, or join them into one outline.");

    /// <summary>An open line that crosses itself, another one or an outline.</summary>
    public static readonly FindingKind LinesCross = new(
        "open-lines-cross",
        Severity.Note,
        "An open line (pieces {sources}) crosses itself or another line, in {count} places; the place told is the first.",
        "Leave it if it is meant.");

    /// <summary>An open line that touches itself, another one or an outline.</summary>
    public static readonly FindingKind LinesTouch = new(
        "open-lines-touch",
        Severity.Note,
        "An open line (pieces {sources}) touches itself or another line, in {count} places; the place told is the first.",
        "Leave it if it is meant.");

    /// <summary>A contour that touches itself in a point.</summary>
    public static readonly FindingKind TouchesItself = new(
        "outline-touches-itself",
        Severity.Warn,
        "An outline (pieces {sources}) touches itself, in {count} places; the place told is the first. Nothing holds or parts the material there.",
        "Leave it if it is meant; else draw a gap or a bridge there.");

    /// <summary>Two contours that touch in a point.</summary>
    public static readonly FindingKind OutlinesTouch = new(
        "outlines-touch",
        Severity.Warn,
        "Two outlines (pieces {sources}) touch each other, in {count} places; the place told is the first.",
        "Leave them if it is meant; else move them apart.");

    /// <summary>Two contours, or parts of one, that share a stretch.</summary>
    public static readonly FindingKind StretchShared = new(
        "outlines-share-a-stretch",
        Severity.Warn,
        "Outlines (pieces {sources}) run along each other for {found}, in {count} places.",
        "If a line is drawn twice, delete one; if two parts share an edge, draw them apart by the width of the bit.");

    /// <summary>Points where three or more ends meet.</summary>
    public static readonly FindingKind JunctionDecided = new(
        "ends-meet-in-a-fork",
        Severity.Warn,
        "Three or more ends meet at {count} points; lines go on into those from which they turn least, {found} at most, here.",
        "Look at the outlines there; delete the line that should not be.");

    /// <summary>Contours that stayed open.</summary>
    public static readonly FindingKind OutlinesOpen = new(
        "outlines-open",
        Severity.Note,
        "{count} lines are open; the two ends nearest to each other are {found} apart. Gaps of up to {allowed} are closed.",
        "If they should be closed, draw what is missing or allow a wider gap.");

    /// <summary>Ends that were moved together.</summary>
    public static readonly FindingKind EndsMoved = new(
        "ends-moved-together", Severity.Note, "Ends were moved together at {count} points; the widest gap, here, was {found}.", "Nothing to do if the drawing looks right.");

    /// <summary>Gaps that were closed by a line.</summary>
    public static readonly FindingKind GapsBridged = new(
        "gaps-bridged", Severity.Warn, "{count} gaps were closed by short lines; the widest, here, is {found}.", "Look at the outlines there.");

    /// <summary>Pieces that lay on others.</summary>
    public static readonly FindingKind DoubledDropped = new(
        "doubled-lines-dropped", Severity.Note, "{count} lines were drawn twice and left out once; the longest, here, is {found}.", "Nothing to do.");

    /// <summary>Pieces of no length.</summary>
    public static readonly FindingKind ZeroLengthDropped = new(
        "lines-without-length-dropped", Severity.Note, "{count} lines without length were left out; the longest is {found}.", "Nothing to do.");
}
