using ToolpathForge.Findings;
using ToolpathForge.Jobs;

namespace ToolpathForge.Checks;

/// <summary>Whether marks will be legible, and shallow enough to do no harm.</summary>
internal static class MarkTool
{
    /// <summary>Strokes would run into each other.</summary>
    internal static readonly FindingKind TooBroad = new(
        "mark-too-broad",
        Severity.Stop,
        "The strokes would be {found} wide; letters {height} high stay legible up to {allowed}.",
        "Engrave with a pointed or thinner bit, less deep, or larger letters.");

    /// <summary>Marks would weaken the piece or go through it.</summary>
    internal static readonly FindingKind TooDeep = new(
        "mark-too-deep",
        Severity.Stop,
        "Marks {found} deep in a piece {thickness} thick; {allowed} at most.",
        "Engrave less deep.");

    /// <summary>Engraving begins with a plunge.</summary>
    internal static readonly FindingKind CannotPlunge = new(
        "mark-needs-plunge",
        Severity.Stop,
        "{bit} does not cut at its center and cannot go down into the face.",
        "Engrave with a bit that plunges.");

    // Strokes of a letter keep a tenth of its height apart; half as much again still reads (tried on the printed alphabet).
    private const double WidestShare = 1.0 / 6;
    private const double DeepestShare = 1.0 / 3;

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        if (input.Make.Marks is not { } marks)
        {
            yield break;
        }

        Place at = marks.At["bit"].OfMake(input.Make.Id);
        double width = marks.StrokeWidth;
        if (width > marks.Height * WidestShare)
        {
            yield return Finding.Of(
                TooBroad, at, Quantity.Length(width), Quantity.Length(marks.Height * WidestShare), Arg.Of("height", Quantity.Length(marks.Height)));
        }

        double deepest = input.Make.Thickness * DeepestShare;
        if (marks.Depth > deepest)
        {
            yield return Finding.Of(
                TooDeep, marks.At["depth"].OfMake(input.Make.Id), Quantity.Length(marks.Depth), Quantity.Length(deepest),
                Arg.Of("thickness", Quantity.Length(input.Make.Thickness)));
        }

        if (!marks.Bit.CanPlunge)
        {
            yield return Finding.Of(CannotPlunge, at, Arg.Of("bit", marks.Bit.Name));
        }
    }
}
