using ToolpathForge.Findings;

namespace ToolpathForge.Catalogue;

/// <summary>What can be wrong with the rows of a catalogue beyond their form.</summary>
internal static class CatalogueFindings
{
    internal static readonly FindingKind IdTwice = new(
        "row-id-twice",
        Severity.Stop,
        "The id {id} stands twice in this file.",
        "Give one of the two rows another id.")
    { Unusable = true };

    internal static readonly FindingKind OutOfOrder = new(
        "row-out-of-order",
        Severity.Stop,
        "Of {id}, {first} is {found}, but {second} is {allowed}: the first may not be the larger.",
        "Check the two numbers.")
    { Unusable = true };

    internal static readonly FindingKind UpCutPart = new(
        "row-up-cut-part",
        Severity.Stop,
        "The bit {id} is of kind {kind}; up-cut-length belongs to compression bits, and only to them.",
        "Add or remove up-cut-length, or correct the kind.")
    { Unusable = true };

    internal static readonly FindingKind BitPart = new(
        "row-bit-part",
        Severity.Stop,
        "The bit {id} is of kind {kind}; {key} belongs to bits of kind {words}, and only to them.",
        "Add or remove {key}, or correct the kind.")
    { Unusable = true };

    internal static readonly FindingKind UnknownMaterial = new(
        "row-material-unknown",
        Severity.Stop,
        "The panel {id} is of material {material}, which is in no catalogue.",
        "Add a [[material]] row before it, or use one of: {words}.")
    { Unusable = true };

    internal static readonly FindingKind DialectPlaceholder = new(
        "dialect-placeholder",
        Severity.Stop,
        "The line '{text}' holds {placeholder}, which is not filled in there.",
        "Use {words}, or write the text out.")
    { Unusable = true };

    internal static readonly FindingKind DialectMoves = new(
        "dialect-moves",
        Severity.Stop,
        "The line '{text}' moves the machine ({word}); the fixed lines of a dialect may not.",
        "Remove the word. Moves are the program's business, where they are checked.")
    { Unusable = true };

    internal static readonly FindingKind DialectWordMissing = new(
        "dialect-word-missing",
        Severity.Stop,
        "The {key} of dialect {id} does not hold {word}.",
        "Add it: without it the program depends on what the machine did before.")
    { Unusable = true };

    internal static readonly FindingKind DialectContradicts = new(
        "dialect-contradicts",
        Severity.Stop,
        "The line '{text}' holds {word}, which contradicts the dialect's own fields.",
        "Remove the word, or correct the field.")
    { Unusable = true };

    internal static readonly FindingKind DialectLineTooLong = new(
        "dialect-line-too-long",
        Severity.Stop,
        "The line '{text}' is {found} characters long; the dialect allows {allowed}.",
        "Shorten it.")
    { Unusable = true };

    internal static readonly FindingKind DialectCharacter = new(
        "dialect-character",
        Severity.Stop,
        "The line '{text}' holds a character that controllers of G-code do not know.",
        "Keep to letters, digits and signs of plain ASCII, one line a text.")
    { Unusable = true };

    internal static readonly FindingKind DialectFileEnding = new(
        "dialect-file-ending",
        Severity.Stop,
        "'{text}' cannot end a file's name.",
        "Write a dot and one to eight letters or digits, such as \".nc\".")
    { Unusable = true };
}
