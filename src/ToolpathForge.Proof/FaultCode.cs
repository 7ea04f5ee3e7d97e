using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>What a fault's two numbers are in.</summary>
public enum FaultUnit
{
    /// <summary>The fault carries no numbers.</summary>
    None,

    /// <summary>mm.</summary>
    Length,

    /// <summary>mm/min.</summary>
    Feed,

    /// <summary>Revolutions a minute.</summary>
    Speed,

    /// <summary>Degrees.</summary>
    Angle,

    /// <summary>Seconds.</summary>
    Time,

    /// <summary>A number of things.</summary>
    Count,
}

/// <summary>One way in which a program can fail, with its stable name. All of them are in <see cref="FaultCodes"/>.</summary>
public sealed class FaultCode
{
    internal FaultCode(string name, FaultUnit unit, string meaning)
    {
        Name = name;
        Unit = unit;
        Meaning = meaning;
    }

    /// <summary>Stable name in lower case with hyphens.</summary>
    public string Name { get; }

    /// <summary>What <see cref="Fault.Found"/> and <see cref="Fault.Allowed"/> are in.</summary>
    public FaultUnit Unit { get; }

    /// <summary>What it means and what the numbers are, one sentence in English, for documentation.</summary>
    public string Meaning { get; }

    /// <inheritdoc/>
    public override string ToString() => Name;
}

/// <summary>Every fault code, each declared once.</summary>
public static class FaultCodes
{
    private static readonly ImmutableArray<FaultCode>.Builder Declared = ImmutableArray.CreateBuilder<FaultCode>();

    // The text cannot be read (NISTIR 6556 sections 3.3 to 3.8, and refusals of our own).
    internal static readonly FaultCode LineTooLong = Add("line-too-long", FaultUnit.Count, "A line has more than 256 characters.");
    internal static readonly FaultCode CharacterNotAllowed = Add("character-not-allowed", FaultUnit.None, "A character has no place in a program there.");
    internal static readonly FaultCode CommentNotClosed = Add("comment-not-closed", FaultUnit.None, "A comment opens and does not close on its line.");
    internal static readonly FaultCode CommentNested = Add("comment-nested", FaultUnit.None, "A comment opens inside another.");
    internal static readonly FaultCode PercentNotPaired = Add("percent-not-paired", FaultUnit.None, "A program that opens with a percent line has no second one.");
    internal static readonly FaultCode LineNumberMalformed = Add("line-number-malformed", FaultUnit.None, "N is not followed by one to five digits, or does not stand first.");
    internal static readonly FaultCode NumberMalformed = Add("number-malformed", FaultUnit.None, "A word has no readable number.");
    internal static readonly FaultCode NumberTooLarge = Add("number-too-large", FaultUnit.None, "A number is beyond a million, or no number at all.");
    internal static readonly FaultCode ExpressionMalformed = Add("expression-malformed", FaultUnit.None, "An expression in brackets cannot be read.");
    internal static readonly FaultCode ExpressionUndefined = Add("expression-undefined", FaultUnit.None, "An expression has no value: a division by zero, a root or logarithm of a negative number.");
    internal static readonly FaultCode ParameterRefused = Add("parameter-refused", FaultUnit.None, "A numbered parameter: its value is not in the text, so it cannot be proven.");
    internal static readonly FaultCode WordUnknown = Add("word-unknown", FaultUnit.None, "A letter that is no word of the language, or of an axis that is not read.");
    internal static readonly FaultCode WordRepeated = Add("word-repeated", FaultUnit.None, "A letter other than G and M twice on a line.");
    internal static readonly FaultCode WordUnused = Add("word-unused", FaultUnit.None, "A word that nothing on its line can use.");
    internal static readonly FaultCode WordMissing = Add("word-missing", FaultUnit.None, "A code without the word it needs.");
    internal static readonly FaultCode CodeUnknown = Add("code-unknown", FaultUnit.None, "A G or M code that is not known.");
    internal static readonly FaultCode CodeRefused = Add("code-refused", FaultUnit.None, "A G or M code that is known but whose effect cannot be proven, or has no place on this machine.");
    internal static readonly FaultCode GroupRepeated = Add("group-repeated", FaultUnit.None, "Two codes of one modal group on a line.");
    internal static readonly FaultCode TooManyStops = Add("too-many-m-words", FaultUnit.Count, "More than four M words on a line.");
    internal static readonly FaultCode ValueNegative = Add("value-negative", FaultUnit.None, "A feed, speed, dwell or tool number below zero.");
    internal static readonly FaultCode ValueNotWhole = Add("value-not-whole", FaultUnit.None, "A tool number or code that has to be a whole number is not.");
    internal static readonly FaultCode AxesMissing = Add("axes-missing", FaultUnit.None, "A motion code without an axis word.");
    internal static readonly FaultCode AxesWithoutMotion = Add("axes-without-motion", FaultUnit.None, "Axis words while no motion code is in force.");
    internal static readonly FaultCode FeedMissing = Add("feed-missing", FaultUnit.None, "A feed motion with no feed, or a feed of zero.");
    internal static readonly FaultCode UnitChanged = Add("unit-changed", FaultUnit.None, "The unit changes after a length has been read, or on a line that also sets a feed.");
    internal static readonly FaultCode WorkOffsetChanged = Add("work-offset-changed", FaultUnit.None, "A second work coordinate system: only one a program can be measured.");
    internal static readonly FaultCode PlaneNotRead = Add("plane-not-read", FaultUnit.None, "An arc outside the XY plane.");
    internal static readonly FaultCode ArcEndMissing = Add("arc-end-missing", FaultUnit.None, "An arc with neither X nor Y.");
    internal static readonly FaultCode ArcCenterMissing = Add("arc-center-missing", FaultUnit.None, "An arc with neither center nor radius.");
    internal static readonly FaultCode ArcFormsMixed = Add("arc-forms-mixed", FaultUnit.None, "An arc with both center and radius.");
    internal static readonly FaultCode ArcRadiusMismatch = Add("arc-radius-mismatch", FaultUnit.Length, "An arc whose radius at its start and at its end differ by more than 0.002 mm, or 0.0002 in in inches.");
    internal static readonly FaultCode ArcRadiusTooSmall = Add("arc-radius-too-small", FaultUnit.Length, "A radius that does not reach from the arc's start to its end.");
    internal static readonly FaultCode ArcEndIsStart = Add("arc-end-is-start", FaultUnit.None, "An arc in radius form that ends where it starts.");
    internal static readonly FaultCode ArcRadiusZero = Add("arc-radius-zero", FaultUnit.None, "An arc of no radius.");
    internal static readonly FaultCode PositionUnknown = Add("position-unknown", FaultUnit.None, "A feed, an arc or an incremental motion from a place the program has not said.");

    // The text reads, and is not fit to run.
    internal static readonly FaultCode UnitNotStated = Add("unit-not-stated", FaultUnit.None, "A length before G20 or G21.");
    internal static readonly FaultCode DistanceModeNotStated = Add("distance-mode-not-stated", FaultUnit.None, "An axis word before G90 or G91.");
    internal static readonly FaultCode PlaneNotStated = Add("plane-not-stated", FaultUnit.None, "An arc before G17.");
    internal static readonly FaultCode FeedModeNotStated = Add("feed-mode-not-stated", FaultUnit.None, "A feed before G94.");
    internal static readonly FaultCode BlockDeleteUsed = Add("block-delete-used", FaultUnit.None, "A line that a switch on the machine turns off: what runs is not settled by the text.");
    internal static readonly FaultCode ProgramNotEnded = Add("program-not-ended", FaultUnit.None, "The program does not end with M2 or M30.");

    internal static readonly FaultCode Gouge = Add("gouge", FaultUnit.Length, "The bit takes more of a piece than the tolerance; how deep, measured into the piece.");
    internal static readonly FaultCode MaterialLeft = Add("material-left", FaultUnit.Length, "More than the tolerance is left standing along an edge; how thick.");
    internal static readonly FaultCode TabCut = Add("tab-cut", FaultUnit.Length, "A tab's core is cut into; how far.");
    internal static readonly FaultCode TabTooHigh = Add("tab-too-high", FaultUnit.Length, "Material is left standing above a tab's top; how thick.");
    internal static readonly FaultCode MarkMissing = Add("mark-missing", FaultUnit.Length, "A stroke of a mark is not cut; how far from it the bit stays.");
    internal static readonly FaultCode BelowFloor = Add("below-floor", FaultUnit.Length, "The tip goes lower than allowed; the height.");
    internal static readonly FaultCode RapidInMaterial = Add("rapid-in-material", FaultUnit.Length, "A rapid passes through stock; the height of the tip and the stock's top.");
    internal static readonly FaultCode RapidTooLow = Add("rapid-too-low", FaultUnit.Length, "A rapid travels over stock or keep-outs below the clear height; the height of the tip.");
    internal static readonly FaultCode RapidInKeepOut = Add("rapid-in-keep-out", FaultUnit.Length, "A rapid hits a keep-out; the height of the tip and the keep-out's top.");
    internal static readonly FaultCode CutInKeepOut = Add("cut-in-keep-out", FaultUnit.Length, "A feed motion hits a keep-out; the height of the tip and the keep-out's top.");
    internal static readonly FaultCode OutsideTravel = Add("outside-travel", FaultUnit.Length, "A motion leaves the machine's travel; the coordinate and its limit.");
    internal static readonly FaultCode FeedTooHigh = Add("feed-too-high", FaultUnit.Feed, "A feed above the machine's.");
    internal static readonly FaultCode PlungeTooFast = Add("plunge-too-fast", FaultUnit.Feed, "A feed downwards above the machine's.");
    internal static readonly FaultCode ChipLoadTooHigh = Add("chip-load-too-high", FaultUnit.Length, "A feed per tooth above the bit's.");
    internal static readonly FaultCode ChipLoadTooLow = Add("chip-load-too-low", FaultUnit.Length, "A feed per tooth on the level in material below the bit's: it rubs.");
    internal static readonly FaultCode SpeedTooHigh = Add("speed-too-high", FaultUnit.Speed, "A spindle speed above the bit's or the machine's.");
    internal static readonly FaultCode SpeedTooLow = Add("speed-too-low", FaultUnit.Speed, "A spindle speed below the bit's or the machine's, or none at all.");
    internal static readonly FaultCode SpindleOff = Add("spindle-off", FaultUnit.None, "A cut while the spindle stands still.");
    internal static readonly FaultCode SpindleNotAtSpeed = Add("spindle-not-at-speed", FaultUnit.Time, "A cut before the spindle's dwell is over; the dwell given and the dwell needed.");
    internal static readonly FaultCode SpindleLeftRunning = Add("spindle-left-running", FaultUnit.None, "The program ends without M5 while the spindle runs.");
    internal static readonly FaultCode SpindleRunsAtChange = Add("spindle-runs-at-change", FaultUnit.None, "A pause to change the bit while the spindle runs.");
    internal static readonly FaultCode ToolUnknown = Add("tool-unknown", FaultUnit.Count, "A bit that the target does not know, or a cut with none in the spindle; its number.");
    internal static readonly FaultCode PlungeRefused = Add("plunge-refused", FaultUnit.Length, "A bit that may not goes straight down into material; how far.");
    internal static readonly FaultCode RampTooSteep = Add("ramp-too-steep", FaultUnit.Angle, "A way down into material steeper than the bit may go.");
    internal static readonly FaultCode UncutTooDeep = Add("uncut-too-deep", FaultUnit.Length, "The bit goes through material that no earlier pass has opened, deeper than one pass may; how deep.");
    internal static readonly FaultCode EndsTooLow = Add("ends-too-low", FaultUnit.Length, "The program ends with the tip below the clear height; the height.");

    /// <summary>Every code, in the order in which they are declared here.</summary>
    public static ImmutableArray<FaultCode> All { get; } = Declared.ToImmutable();

    private static FaultCode Add(string name, FaultUnit unit, string meaning)
    {
        var code = new FaultCode(name, unit, meaning);
        Declared.Add(code);
        return code;
    }
}
