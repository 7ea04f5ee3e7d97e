using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Reading;

/// <summary>What can be wrong with a drawing as a whole.</summary>
internal static class ReadingFindings
{
    internal static readonly FindingKind NotRecognised = new(
        "drawing-not-recognised",
        Severity.Stop,
        "The file is neither a DXF nor an SVG drawing.",
        "Check that it is the file you mean, and save it as DXF from the program that drew it.")
    { Unusable = true };

    internal static readonly FindingKind OverSize = new(
        "drawing-over-size",
        Severity.Stop,
        "The drawing is larger than {megabytes} MB.",
        "Save only what is to be cut, without hatching, pictures and text.")
    { Unusable = true };

    internal static readonly FindingKind OverCurves = new(
        "drawing-over-curves",
        Severity.Stop,
        "The drawing comes to more than {allowed} curves once everything that it uses repeatedly is put in place.",
        "Save only what is to be cut, or look for a block that is repeated without need.")
    { Unusable = true };

    internal static readonly FindingKind OverTime = new(
        "drawing-over-time",
        Severity.Stop,
        "Reading the drawing took longer than {seconds} seconds and was given up.",
        "Save only what is to be cut, without hatching, pictures and text.")
    { Unusable = true };

    internal static readonly FindingKind Empty = new(
        "drawing-empty",
        Severity.Stop,
        "The drawing holds no line or curve to work with.",
        "Check its layers: those that are off or frozen are left out, and so is everything that is no line or curve, such as text.")
    { Unusable = true };

    internal static readonly FindingKind NeedsRepair = new(
        "drawing-needs-repair",
        Severity.Stop,
        "The drawing is damaged in {count} places, and is to be read only if it is sound.",
        "Put it right in the program that drew it, or allow repairs and look at what they did.")
    { Unusable = true };

    internal static readonly FindingKind UnitMissing = new(
        "drawing-unit-missing",
        Severity.Warn,
        "The drawing does not say what unit it is drawn in; it is {width} by {height} of it.",
        "Say which it is (mm, cm, m, in, ft), with --unit or in the job: nothing is cut from it before that.");

    internal static readonly FindingKind UnitOverruled = new(
        "drawing-unit-overruled",
        Severity.Warn,
        "The drawing says that it is drawn in {text}; it is read in {key} because you said so.",
        "Leave the unit out if the drawing is right about it.");

    internal static readonly FindingKind OtherHeight = new(
        "drawing-other-height",
        Severity.Note,
        "Some of the drawing ({count}) does not lie at height 0; it is seen from above like the rest.",
        "Nothing needs doing if the drawing is flat when seen from above.");

    internal static readonly FindingKind MoreRepairs = new(
        "drawing-more-repairs",
        Severity.Warn,
        "There are {count} more repairs of this kind.",
        "Put the drawing right in the program that made it; what has been told here is only the beginning.");
}
