using ToolpathForge.Findings;

namespace ToolpathForge.Tables;

/// <summary>What can be wrong with a TOML file before anyone asks what it means.</summary>
internal static class TableFindings
{
    internal static readonly FindingKind Syntax = new(
        "toml-syntax",
        Severity.Stop,
        "This is not TOML: {problem}.",
        "Put the line right; every line is a comment (#), a [header], or a key = value.")
    { Unusable = true };

    internal static readonly FindingKind QuoteNotClosed = new(
        "quote-not-closed",
        Severity.Stop,
        "A text on this line begins with a quote and no quote ends it.",
        "Put a quote at its end. Only this is told: with one quote missing, the rest of the file cannot be read.")
    { Unusable = true };

    internal static readonly FindingKind QuotesMissing = new(
        "quotes-missing",
        Severity.Stop,
        "The value {text} of {key} needs quotes: it is neither a plain number nor true or false.",
        "Write {key} = \"{text}\".")
    { Unusable = true };

    internal static readonly FindingKind FileTooLarge = new(
        "file-too-large",
        Severity.Stop,
        "The file holds {found} characters; at most {allowed} are read.",
        "Check that it is the right file, or split the job in two.")
    { Unusable = true };

    internal static readonly FindingKind KeyTwice = new(
        "key-twice",
        Severity.Stop,
        "{key} is set a second time; it was set on line {line} already.",
        "Remove one of the two.")
    { Unusable = true };

    internal static readonly FindingKind UnknownKey = new(
        "unknown-key",
        Severity.Stop,
        "{key} is not a key of {table}.",
        "The keys there are: {keys}.")
    { Unusable = true };

    internal static readonly FindingKind UnknownKeyNear = new(
        "unknown-key-near",
        Severity.Stop,
        "{key} is not a key of {table}.",
        "Did you mean '{near}'?")
    { Unusable = true };

    internal static readonly FindingKind MisplacedKey = new(
        "misplaced-key",
        Severity.Stop,
        "{key} is not a key of {table}; it belongs in {other}.",
        "Move it there.")
    { Unusable = true };

    internal static readonly FindingKind MissingKey = new(
        "missing-key",
        Severity.Stop,
        "{key} is missing from {table}.",
        "Add {key}: {meaning}")
    { Unusable = true };

    internal static readonly FindingKind WrongType = new(
        "wrong-type",
        Severity.Stop,
        "{key} takes {wanted}, but here stands {given}.",
        "Write {key} = {example}.")
    { Unusable = true };

    internal static readonly FindingKind NotFinite = new(
        "not-finite",
        Severity.Stop,
        "{key} is {text}, which is not a number that can be cut.",
        "Write a number.")
    { Unusable = true };

    internal static readonly FindingKind UnknownWord = new(
        "unknown-word",
        Severity.Stop,
        "{key} cannot be '{text}'.",
        "It can be: {words}.")
    { Unusable = true };

    internal static readonly FindingKind UnknownWordNear = new(
        "unknown-word-near",
        Severity.Stop,
        "{key} cannot be '{text}'.",
        "Did you mean '{near}'? It can be: {words}.")
    { Unusable = true };

    internal static readonly FindingKind TooSmall = new(
        "too-small",
        Severity.Stop,
        "{key} is {found}; the least is {allowed}.",
        "Check the number and its unit.");

    internal static readonly FindingKind TooLarge = new(
        "too-large",
        Severity.Stop,
        "{key} is {found}; the most is {allowed}.",
        "Check the number and its unit.");

    internal static readonly FindingKind TextUnusable = new(
        "text-unusable",
        Severity.Stop,
        "{key} is {text}; it takes one line of 1 to {allowed} characters.",
        "Write a short text without line breaks or control characters.");

    internal static readonly FindingKind TooFew = new(
        "too-few",
        Severity.Stop,
        "{key} holds {found}; at least {allowed} must be there.",
        "Add what is missing.")
    { Unusable = true };

    internal static readonly FindingKind TooMany = new(
        "too-many",
        Severity.Stop,
        "{key} holds {found}; at most {allowed} are taken.",
        "Split the file in two.");
}
