using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Reading;

/// <summary>What a reader puts right or leaves out, each told with its place. A reading that takes only sound files stops at any of them.</summary>
internal static class RepairFindings
{
    internal static readonly FindingKind CutOff = new(
        "drawing-cut-off",
        Severity.Warn,
        "The file ends before its drawing does; {what}.",
        "Fetch or save the file again: something was lost on the way.");

    internal static readonly FindingKind CodeUnreadable = new(
        "drawing-code-unreadable",
        Severity.Warn,
        "A group code should stand here, but there is '{text}'; nothing after it is read.",
        "Save the file again: two lines have changed places or one is missing.");

    internal static readonly FindingKind SectionUnclosed = new(
        "drawing-section-unclosed",
        Severity.Warn,
        "Section {what} is not closed; it is taken to end here.",
        "Save the file again from the program that drew it.");

    internal static readonly FindingKind OutsideSection = new(
        "drawing-outside-section",
        Severity.Warn,
        "Something stands here outside every section; it is not read.",
        "Save the file again from the program that drew it.");

    internal static readonly FindingKind BlockUnclosed = new(
        "drawing-block-unclosed",
        Severity.Warn,
        "Block '{what}' is not closed; it is taken to end here.",
        "Save the file again from the program that drew it.");

    internal static readonly FindingKind BlockTwice = new(
        "drawing-block-twice",
        Severity.Warn,
        "Block '{what}' is there twice; the first is taken.",
        "Give each block a name of its own.");

    internal static readonly FindingKind NumberUnreadable = new(
        "drawing-number-unreadable",
        Severity.Warn,
        "{what} has '{text}' where a number should be; it is left out.",
        "Draw it again, or save the file again from the program that drew it.");

    internal static readonly FindingKind NumberComma = new(
        "drawing-number-comma",
        Severity.Warn,
        "The drawing writes numbers with a decimal comma, which the format does not allow ('{text}'); the comma is read as a point.",
        "Check a size that you know.");

    internal static readonly FindingKind ValueMissing = new(
        "drawing-value-missing",
        Severity.Warn,
        "{what} has no {key}; it is left out.",
        "Draw it again, or save the file again from the program that drew it.");

    internal static readonly FindingKind ValueUnusable = new(
        "drawing-value-unusable",
        Severity.Warn,
        "{what} has a {key} of {text}; it is left out.",
        "Draw it again.");

    internal static readonly FindingKind CountWrong = new(
        "drawing-count-wrong",
        Severity.Warn,
        "{what} announces {allowed} {key} but holds {found}; those that are there are taken.",
        "Look whether the shape is whole.");

    internal static readonly FindingKind PolylineBroken = new(
        "drawing-polyline-broken",
        Severity.Warn,
        "{what} is left out, because one of its points cannot be used.",
        "Draw it again, or save the file again from the program that drew it.");

    internal static readonly FindingKind NoSize = new(
        "drawing-no-size",
        Severity.Warn,
        "{what} has no size; it is left out.",
        "Delete it, or draw it again.");

    internal static readonly FindingKind SplineUnusable = new(
        "drawing-spline-unusable",
        Severity.Warn,
        "{what} is left out: {reason}.",
        "Turn it into a spline of degree 3 with control points, or into a polyline, in the program that drew it.");

    internal static readonly FindingKind BlockMissing = new(
        "drawing-block-missing",
        Severity.Warn,
        "{what} puts in '{text}', which the file does not have; it is left out.",
        "Save the file again with what it refers to put into it.");

    internal static readonly FindingKind BlockRecursive = new(
        "drawing-block-recursive",
        Severity.Warn,
        "{what} puts in '{text}' within itself; it is left out there.",
        "Break the block up in the program that drew it.");

    internal static readonly FindingKind TooDeep = new(
        "drawing-too-deep",
        Severity.Warn,
        "{what} lies more than {allowed} levels deep; it is left out.",
        "Break the outer blocks or groups up in the program that drew it.");

    internal static readonly FindingKind OutOfPlane = new(
        "drawing-out-of-plane",
        Severity.Warn,
        "{what} does not lie flat in the drawing plane; it is left out.",
        "Flatten the drawing, or turn it so that it is seen from above.");

    internal static readonly FindingKind TooFar = new(
        "drawing-too-far",
        Severity.Warn,
        "{what} reaches farther than {allowed} from zero; it is left out.",
        "Check the unit, or move the drawing to its zero.");
}
