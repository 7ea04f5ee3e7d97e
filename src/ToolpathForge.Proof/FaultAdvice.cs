using System.Collections.Frozen;

namespace ToolpathForge.Proof;

/// <summary>
/// What to do about a fault in a program from elsewhere, or one that was changed by hand. A fault of a program that ToolpathForge wrote is ToolpathForge's own,
/// and nothing of it is handed over.
/// </summary>
public static class FaultAdvice
{
    private static readonly FrozenDictionary<string, string> s_advice = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["line-too-long"] = "Break the line up: one motion a line, and comments on lines of their own.",
        ["character-not-allowed"] = "Remove the character, or put what is meant for people into a comment.",
        ["comment-not-closed"] = "Close the comment on the line where it opens.",
        ["comment-nested"] = "Use other signs than parentheses inside a comment.",
        ["percent-not-paired"] = "Begin and end with a percent line, or use neither.",
        ["line-number-malformed"] = "Put N with one to five digits first on its line, or leave line numbers out.",
        ["number-malformed"] = "Write the number in plain digits behind its letter: X12.5.",
        ["number-too-large"] = "Check for a missing decimal point.",
        ["expression-malformed"] = "Work the expression out and write the number.",
        ["expression-undefined"] = "Work the expression out and write the number; as it stands it has none.",
        ["parameter-refused"] = "Write the value itself in place of the numbered parameter.",
        ["word-unknown"] = "Remove the word; only X, Y and Z are read as axes.",
        ["word-repeated"] = "Write each letter once a line, or split the line in two.",
        ["word-unused"] = "Remove the word, or add the code that was to use it.",
        ["word-missing"] = "Add the word that the code needs.",
        ["code-unknown"] = "Look for a slip in the number; else have the program written in a plainer dialect.",
        ["code-refused"] = "Have the program written without it: plain moves, no canned cycles, cutter compensation or coordinate changes.",
        ["group-repeated"] = "Keep one of the two codes, or put them on lines of their own.",
        ["too-many-m-words"] = "Spread the M words over several lines.",
        ["value-negative"] = "Write a value of zero or more.",
        ["value-not-whole"] = "Write a whole number.",
        ["axes-missing"] = "Add the axes that are to move, or remove the motion code.",
        ["axes-without-motion"] = "Put G0 or G1 before the first axis words.",
        ["feed-missing"] = "Give a feed, as F900, on or before the line.",
        ["unit-changed"] = "State G20 or G21 once, at the head, on a line without F.",
        ["work-offset-changed"] = "Use one work coordinate system a program.",
        ["plane-not-read"] = "State G17, and make arcs in other planes of short lines.",
        ["arc-end-missing"] = "Write where the arc ends, in X, in Y or in both.",
        ["arc-center-missing"] = "Add I and J, or R.",
        ["arc-forms-mixed"] = "Keep either I and J, or R.",
        ["arc-radius-mismatch"] = "Write ends and center with more decimals, or from one source.",
        ["arc-radius-too-small"] = "Check radius and end; the radius must be half the distance between them or more.",
        ["arc-end-is-start"] = "Write a full circle with I and J, or in two halves.",
        ["arc-radius-zero"] = "Check I and J: one of them must lead away from the start.",
        ["position-unknown"] = "Go to a stated X, Y and Z before the first cut, in absolute coordinates.",
        ["unit-not-stated"] = "Put G20 or G21 at the head.",
        ["distance-mode-not-stated"] = "Put G90 at the head.",
        ["plane-not-stated"] = "Put G17 at the head.",
        ["feed-mode-not-stated"] = "Put G94 at the head.",
        ["block-delete-used"] = "Remove the slash, or the line.",
        ["program-not-ended"] = "End the program with M2 or M30; look whether the file was cut short.",
        ["gouge"] = "Look at the line and place that are told; is it the right job, the right bit, the right work zero? Have the program made anew.",
        ["material-left"] = "Look whether a pass is missing or the bit is thinner than the program was made for; have it made anew.",
        ["tab-cut"] = "Raise the path over the tab, or move the tab in the job.",
        ["tab-too-high"] = "Lower the path over the tab to the height that the job states.",
        ["mark-missing"] = "Look whether a stroke was deleted, or engraved too shallow.",
        ["below-floor"] = "Raise the deepest pass, or check where Z is zero: bed or upper face.",
        ["rapid-in-material"] = "Lift the bit before the rapid, or make it a feed motion where wood is to be cut.",
        ["rapid-too-low"] = "Lift the bit to the clear height before it travels.",
        ["rapid-in-keep-out"] = "Lift over the clamp, go round it, or move it.",
        ["cut-in-keep-out"] = "Move the clamp, screw or fence out of the bit's way, and say so in the job.",
        ["outside-travel"] = "Move the work zero or the stock; nothing may lie further out than the machine reaches.",
        ["feed-too-high"] = "Lower F to what the machine does.",
        ["plunge-too-fast"] = "Lower the feed on the way down, or come down a flatter ramp.",
        ["chip-load-too-high"] = "Lower the feed, or raise the spindle speed within the bit's marking.",
        ["chip-load-too-low"] = "Lower the spindle speed or take a bit with fewer flutes; never just feed faster.",
        ["speed-too-high"] = "Lower S to what bit and machine allow.",
        ["speed-too-low"] = "Raise S, or add it: no speed at all is stated.",
        ["spindle-off"] = "Start the spindle with S and M3 before the first cut.",
        ["spindle-not-at-speed"] = "Add a dwell, as G4 P4, after M3.",
        ["spindle-left-running"] = "Put M5 before the end.",
        ["spindle-runs-at-change"] = "Put M5 before the pause for the bit.",
        ["tool-unknown"] = "Use the bits of the job, in its order and with its numbers.",
        ["plunge-refused"] = "Come down along a ramp, or use a bit that cuts at its center.",
        ["ramp-too-steep"] = "Make the ramp longer, or take it in several turns.",
        ["uncut-too-deep"] = "Add a pass before it: the bit may go no deeper at once than the job's pass depth.",
        ["ends-too-low"] = "Lift the bit to the clear height before the end.",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>What to do, a sentence or two.</summary>
    /// <param name="code">The fault's code.</param>
    public static string For(FaultCode code)
    {
        ArgumentNullException.ThrowIfNull(code);
        return s_advice[code.Name];
    }

    /// <summary>The names that there is advice for.</summary>
    internal static IEnumerable<string> Names => s_advice.Keys;
}
