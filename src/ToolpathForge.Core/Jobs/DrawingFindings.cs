using ToolpathForge.Findings;

namespace ToolpathForge.Jobs;

/// <summary>What can be wrong with a drawing that a job names.</summary>
internal static class DrawingFindings
{
    internal static readonly FindingKind Missing = new(
        "drawing-missing",
        Severity.Stop,
        "There is no drawing '{file}'.",
        "Put it in the job's folder, or correct its name; a name with @ is a drawing that a CAD host sends.")
    { Unusable = true };

    internal static readonly FindingKind UnitNeeded = new(
        "drawing-unit-needed",
        Severity.Stop,
        "The drawing '{file}' does not say what unit it is drawn in.",
        "Add unit = \"mm\" or \"in\" beside drawing, or save the drawing with its unit.");

    internal static readonly FindingKind LayerUnknown = new(
        "drawing-layer-unknown",
        Severity.Stop,
        "Nothing that is seen in '{file}' lies on a layer called '{text}'.",
        "There are: {words}.");

    internal static readonly FindingKind LayerUnknownNear = new(
        "drawing-layer-unknown-near",
        Severity.Stop,
        "Nothing that is seen in '{file}' lies on a layer called '{text}'.",
        "Did you mean '{near}'?");

    internal static readonly FindingKind NothingClosed = new(
        "drawing-nothing-closed",
        Severity.Stop,
        "No line of '{file}' closes into an outline that could be cut; {found} lines are open.",
        "Draw what is missing, allow a wider gap, or name the layer that the outline lies on.");

    internal static readonly FindingKind TooManyOutlines = new(
        "drawing-too-many-outlines",
        Severity.Stop,
        "'{file}' holds {found} outlines; {allowed} at most are taken for one make.",
        "Name the layer of those you want, or split the drawing.");

    internal static readonly FindingKind NothingOpen = new(
        "drawing-nothing-open",
        Severity.Stop,
        "'{file}' holds no open line that a board's end could follow; {found} of its lines are closed.",
        "Draw the line from the board's lower edge to its end cut alone, without the edges of the board, or name the layer that it lies on.");

    internal static readonly FindingKind SeveralOpen = new(
        "drawing-several-open",
        Severity.Stop,
        "'{file}' holds {found} open lines, where {allowed} is wanted: from {words}.",
        "Name the layer that the line lies on, allow a wider gap if its parts do not quite meet, or delete the others.");

    internal static readonly FindingKind LineTooFine = new(
        "drawing-line-too-fine",
        Severity.Stop,
        "The line of '{file}' is made of {found} parts; {allowed} at most are taken for a board's end.",
        "Draw it with arcs or curves instead of many short lines.");

    internal static readonly FindingKind ClosedLeft = new(
        "drawing-outlines-left",
        Severity.Note,
        "Beside the line that is open, {found} lines of '{file}' are closed; they are not used.",
        "Nothing to do if they only explain the drawing.");

    internal static readonly FindingKind OpenLeft = new(
        "drawing-open-lines-left",
        Severity.Warn,
        "Beside what closes, {found} lines of '{file}' are open; they are not cut.",
        "Nothing to do if they only explain the drawing; else draw what is missing, or allow a wider gap.");
}
