using ToolpathForge.Findings;

namespace ToolpathForge.Jobs;

/// <summary>What can be wrong with a job once its file can be read.</summary>
internal static class JobFindings
{
    internal static readonly FindingKind FormatUnknown = new(
        "format-unknown",
        Severity.Stop,
        "The job is written in form {text}; this program reads form {allowed}.",
        "Use the program that the job was written for, or bring the job to form 1 by samples/README.md.")
    { Unusable = true };

    internal static readonly FindingKind ThicknessMissing = new(
        "thickness-missing",
        Severity.Stop,
        "The stock of this pattern has no {key}; the nominal thickness of a panel is never taken for the real one.",
        "Measure the sheet in hand with a caliper, away from its edges, and write it beside the panel: thickness = \"5.6 mm\".");

    internal static readonly FindingKind UnknownRow = new(
        "unknown-id",
        Severity.Stop,
        "{key} is '{text}', which is in no catalogue of {catalogue}.",
        "There are: {words}.");

    internal static readonly FindingKind UnknownRowNear = new(
        "unknown-id-near",
        Severity.Stop,
        "{key} is '{text}', which is in no catalogue of {catalogue}.",
        "Did you mean '{near}'?");

    internal static readonly FindingKind IdUnusable = new(
        "make-id-unusable",
        Severity.Stop,
        "'{text}' cannot name a make and its files.",
        "Use letters a to z, digits and hyphens, with a letter or digit at either end.");

    internal static readonly FindingKind IdTwice = new(
        "make-id-twice",
        Severity.Stop,
        "The id {text} is used by an earlier make, on line {line}.",
        "Give each make an id of its own; capitals do not tell two ids apart.");

    internal static readonly FindingKind CatalogueMissing = new(
        "catalogue-missing",
        Severity.Stop,
        "The catalogue file '{file}' cannot be read.",
        "Put it beside the job file, or correct its name.")
    { Unusable = true };

    internal static readonly FindingKind CatalogueTwice = new(
        "catalogue-twice",
        Severity.Stop,
        "The catalogue file '{file}' is named twice.",
        "Name it once.")
    { Unusable = true };

    internal static readonly FindingKind NotTimber = new(
        "material-not-timber",
        Severity.Stop,
        "A board end is cut from timber, but {material} is a panel.",
        "Name the timber of the board, or make a pattern instead.");

    internal static readonly FindingKind BeyondBoard = new(
        "on-bed-beyond-board",
        Severity.Stop,
        "{found} of the board are to lie on the bed, but it is only {allowed} long.",
        "Lower on-bed, or leave it out.");

    internal static readonly FindingKind ThicknessUnlikely = new(
        "thickness-unlikely",
        Severity.Warn,
        "A thickness of {found} is unusual for {name}, which is between {least} and {most}.",
        "Measure again, and check the digits and the unit.");

    internal static readonly FindingKind WidthUnlikely = new(
        "width-unlikely",
        Severity.Warn,
        "A width of {found} is far from the dressed width of {name}, {allowed}.",
        "Measure again, and check the digits and the unit.");

    internal static readonly FindingKind CountBesideMeasured = new(
        "count-beside-measured",
        Severity.Stop,
        "count stands beside boards that are listed as measured, which have counts of their own.",
        "Take count out, or the list.")
    { Unusable = true };

    internal static readonly FindingKind BoardTooShort = new(
        "board-too-short",
        Severity.Stop,
        "A finished length of {found} does not come out of this board: {allowed} at most are left of it past what stands over its tips.",
        "Take a longer board, or a smaller allowance.");
}
