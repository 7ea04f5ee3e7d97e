using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Findings;

namespace ToolpathForge.Checks;

/// <summary>
/// Whether a stop can say what a hand must do there. Where the spindle is switched by hand and the dialect writes no comments, a pause between boards looks like any other, and the bit turns where
/// hands go: the sheet alone is not enough, for it lies elsewhere.
/// </summary>
internal static class UnseenStop
{
    /// <summary>A pause between boards with the spindle on, and no word of it.</summary>
    internal static readonly FindingKind Silent = new(
        "waiting-unseen",
        Severity.Stop,
        "The program is to wait between boards while the spindle is switched by hand, and dialect {dialect} writes no comments: nothing at the machine would say that the bit still turns.",
        "Leave runs out, so that each board has a start of its own, or use a dialect that writes comments or runs the spindle.");

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        Dialect dialect = input.Job.Dialect;
        if (input.Clamping.Waits && dialect.Comments == CommentForm.None && dialect.IsSwitchedByHand(input.Job.Machine))
        {
            yield return Finding.Of(Silent, input.At("end.runs"), Arg.Of("dialect", dialect.Id));
        }
    }
}
