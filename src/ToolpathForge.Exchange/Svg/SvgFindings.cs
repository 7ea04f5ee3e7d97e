using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Svg;

/// <summary>What can be wrong with an SVG drawing and with no other.</summary>
internal static class SvgFindings
{
    internal static readonly FindingKind Entities = new(
        "drawing-xml-entities",
        Severity.Stop,
        "The drawing begins with declarations of its own (a DOCTYPE with text in square brackets). They can stand for other files or for text without end, so the drawing is not read.",
        "Save it as plain SVG, or take the DOCTYPE out.")
    { Unusable = true };

    internal static readonly FindingKind XmlBroken = new(
        "drawing-xml-broken",
        Severity.Warn,
        "The file breaks the rules of XML here, or ends too early; what stands before is taken.",
        "Fetch or save the file again, and look whether the drawing is whole.");

    internal static readonly FindingKind NoNamespace = new(
        "drawing-no-namespace",
        Severity.Warn,
        "The drawing does not say that it is SVG (xmlns); it is read as SVG all the same.",
        "Write xmlns=\"http://www.w3.org/2000/svg\" into its first element, or save the file again.");

    internal static readonly FindingKind PathBroken = new(
        "drawing-path-broken",
        Severity.Warn,
        "{what} cannot be followed any more at character {position}, where {text} stands; what comes before is taken.",
        "Draw it again, or save the file again from the program that drew it.");

    internal static readonly FindingKind UseElsewhere = new(
        "drawing-use-elsewhere",
        Severity.Warn,
        "{what} takes something from outside the file ('{text}'), which is never opened; it is left out.",
        "Put what it needs into the file itself.");

    internal static readonly FindingKind OwnUnit = new(
        "drawing-own-unit",
        Severity.Warn,
        "A size within the drawing has a unit of its own ({text}). By the rules of SVG it counts as px there, 96 to the inch, whatever the drawing's own unit is.",
        "Check that size, or write it without a unit.");

    internal static readonly FindingKind Clipped = new(
        "drawing-clip-not-applied",
        Severity.Warn,
        "The drawing shows {count} of its parts through a clip-path or a mask, first {what}. Neither is applied: those parts are taken whole, and what you don't see of them would be cut as well.",
        "Look at the outlines that were found. If a part should be smaller, cut it off in the program that drew it, and take the clip or mask out.");

    internal static readonly FindingKind StyleNotApplied = new(
        "drawing-style-not-applied",
        Severity.Warn,
        "The drawing has {count} style rules or sheets that may hide, move or change what is drawn and are not applied. What they hide would be cut, and what they move or change is where and as it was without them.",
        "Delete what is not to be cut, or save the drawing with its styles written into each element.");
}
