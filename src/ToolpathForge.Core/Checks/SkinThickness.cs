using ToolpathForge.Findings;
using ToolpathForge.Jobs;

namespace ToolpathForge.Checks;

/// <summary>Whether a skin left under the cut holds the piece and stays whole.</summary>
internal static class SkinThickness
{
    /// <summary>Unevenness of the sheet could use the skin up.</summary>
    internal static readonly FindingKind TooThin = new(
        "skin-too-thin",
        Severity.Stop,
        "A skin of {found} could be cut through: the sheet is {flatness} from flat, and a skin must be thicker than twice that, {allowed}.",
        "Leave a thicker skin, or flatten and clamp the sheet better and measure again.");

    /// <summary>Nobody has measured how flat the sheet lies.</summary>
    internal static readonly FindingKind FlatnessUnknown = new(
        "skin-flatness-unknown",
        Severity.Warn,
        "A skin of {found} is to hold the piece, and how flat the sheet lies has not been measured.",
        "Measure it with a straightedge where the plate will be, and state it as flatness; the skin must be thicker than twice that.");

    /// <summary>A skin that thick has to be sawn.</summary>
    internal static readonly FindingKind TooThick = new(
        "skin-too-thick",
        Severity.Stop,
        "A skin of {found} cannot be cut with a knife; {allowed} at most.",
        "Leave a thinner skin, or tabs.");

    /// <summary>Only panels are left a skin.</summary>
    internal static readonly FindingKind OnBoard = new(
        "skin-on-board",
        Severity.Stop,
        "A skin of {found} under a board's end would tear as the waste comes away.",
        "Leave skin out; screw or clamp the waste, or saw most of it off first.");

    // Common practice: what a knife takes in a few strokes, and no more than two fifths of the sheet.
    private const double Knife = 2;
    private const double MostShare = 0.4;

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        // What is left for the hand is sawn, and need not be thin.
        bool byHand = input.Make is ProfileMake { Hand.Machined: not null };
        double skin = input.Settings.Skin > 0 && !byHand ? input.Settings.Skin : input.Make.Cut.Skin ?? 0;
        if (skin <= 0)
        {
            yield break;
        }

        if (input.Make.Sheet is not { } sheet)
        {
            yield return Finding.Of(OnBoard, input.At("cut.skin"), Quantity.Length(skin), Quantity.Length(0));
            yield break;
        }

        double most = Math.Min(Knife, input.Make.Thickness * MostShare);
        if (skin > most)
        {
            yield return Finding.Of(TooThick, input.At("cut.skin"), Quantity.Length(skin), Quantity.Length(most));
        }

        if (sheet.Flatness is not { } flatness)
        {
            yield return Finding.Of(FlatnessUnknown, input.At("cut.skin"), Quantity.Length(skin), Quantity.Length(0));
        }
        else if (skin <= 2 * flatness)
        {
            yield return Finding.Of(
                TooThin, input.At("cut.skin"), Quantity.Length(skin), Quantity.Length(2 * flatness), Arg.Of("flatness", Quantity.Length(flatness)));
        }
    }
}
