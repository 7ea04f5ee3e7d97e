using ToolpathForge.Findings;

namespace ToolpathForge.Measures;

/// <summary>What can be wrong with a size, an angle, a feed or a speed as a person writes it.</summary>
public static class MeasureFindings
{
    /// <summary>There is no number where one must stand.</summary>
    public static readonly FindingKind NumberExpected = new(
        "number-expected",
        Severity.Stop,
        "{key} says '{text}': a number was expected at {piece}.",
        "Write a number such as 3 1/2 or 88.9, with a point for decimals and nothing between thousands.")
    { Unusable = true };

    /// <summary>The word after the number is no unit that is known here.</summary>
    public static readonly FindingKind UnitUnknown = new(
        "unit-unknown",
        Severity.Stop,
        "{key} says '{text}': {piece} is not a unit that is known here.",
        "Lengths take mm, cm, m, in, \" , ft or '; angles deg or °; feeds mm/min, m/min, mm/s, in/min or in/s; speeds rpm.")
    { Unusable = true };

    /// <summary>There is a bare number, and nothing says what unit it is in.</summary>
    public static readonly FindingKind UnitMissing = new(
        "unit-missing",
        Severity.Stop,
        "{key} says '{text}' without a unit, and none has been stated; it is not guessed.",
        "State the unit of the file (unit = \"in\" or unit = \"mm\"), or write one behind the number.")
    { Unusable = true };

    /// <summary>Two whole numbers with a slash where an angle is asked: a slope, or a part of a degree.</summary>
    public static readonly FindingKind SlopeSlashed = new(
        "slope-slashed",
        Severity.Stop,
        "{key} says '{text}', which could be a slope or a part of a degree.",
        "Write a slope with a colon, rise to run: 4:12. Write a part of a degree as 1/3 deg.")
    { Unusable = true };

    /// <summary>A share written in per cent.</summary>
    public static readonly FindingKind Percent = new(
        "share-in-percent",
        Severity.Stop,
        "{key} says '{text}'; shares are not written in per cent here.",
        "A share of the board's width is written with w: 0.9 w is nine tenths of it.")
    { Unusable = true };

    /// <summary>A fraction over nothing, or a mixed number whose fraction is more than a whole.</summary>
    public static readonly FindingKind FractionBroken = new(
        "fraction-broken",
        Severity.Stop,
        "{key} says '{text}': {piece} is not a fraction below one.",
        "Write the fraction as 7/8, or a whole number and a fraction as 3 1/2.")
    { Unusable = true };

    /// <summary>The text goes on where it should end.</summary>
    public static readonly FindingKind TextLeftOver = new(
        "text-left-over",
        Severity.Stop,
        "{key} says '{text}': it is not clear what {piece} means there.",
        "Write one size: 3 1/2 in, 2' 3-1/2\", 89 mm; feet and inches may stand together, other units may not.")
    { Unusable = true };

    /// <summary>A share of the board's width where only a length will do.</summary>
    public static readonly FindingKind ShareNotAllowed = new(
        "share-not-allowed",
        Severity.Stop,
        "{key} says '{text}', a share of the board's width; only a length can stand here.",
        "Write a length. Shares are for the sizes of a shape.")
    { Unusable = true };

    /// <summary>The number is beyond anything a workshop holds.</summary>
    public static readonly FindingKind ValueAbsurd = new(
        "value-absurd",
        Severity.Stop,
        "{key} says '{text}', which is beyond anything that can be cut here.",
        "Check the digits and the unit.")
    { Unusable = true };

    /// <summary>A slope over nothing.</summary>
    public static readonly FindingKind SlopeBroken = new(
        "slope-broken",
        Severity.Stop,
        "{key} says '{text}': a slope is rise:run, and its run must be more than 0.",
        "Write a slope as 3:12, or an angle as 14 deg.")
    { Unusable = true };
}
