using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Shapes;

namespace ToolpathForge.Checks;

/// <summary>What a profile leaves of the depth where the board bears, if the job says where; against the residential code as it stands, never instead of it.</summary>
internal static class CarryingDepth
{
    internal static readonly FindingKind AtBearing = new(
        "depth-at-bearing",
        Severity.Note,
        "Where the board bears, {at} from its tip, {found} of {allowed} are left.",
        "Have it looked at before it is cut: local code and a licensed designer decide.");

    internal static readonly FindingKind NotchAtBearing = new(
        "bearing-cut-into",
        Severity.Warn,
        "The profile takes {found} off the depth where the board bears; IRC R502.8.1 and R802.7.1 let a notch at an end be {allowed} deep at most.",
        "Shorten the profile so that it ends before the bearing; local code and a licensed designer decide.");

    internal static readonly FindingKind SeatCutAway = new(
        "seat-cut-away",
        Severity.Warn,
        "The profile reaches {found} from the tip, past the near side of what the board bears on at {allowed}: it takes {lost} off the seat.",
        "Shorten the profile: a seat stays flat, with 1 1/2 in (38 mm) or more on wood and 3 in (76 mm) on masonry (IRC R502.6, R802.6); local code and a licensed designer decide.");

    internal static readonly FindingKind OverhangLong = new(
        "overhang-long",
        Severity.Warn,
        "The board reaches {found} past what it bears on; IRC R802.7.1.1 speaks of cuts in cantilevered rafters up to {allowed}.",
        "Shorten the overhang, or have it designed: local code and a licensed designer decide.");

    internal static readonly FindingKind OverhangThin = new(
        "overhang-thin",
        Severity.Warn,
        "The overhang is {found} deep where it is least, {at} from the tip; IRC R802.7.1.1 asks for {allowed} or more all along a cantilever.",
        "Take a wider board or a shallower profile; local code and a licensed designer decide.");

    // A line that is drawn to end at the support may miss it by this, mm (judgement).
    private const double SeatHair = 0.5;

    internal static IEnumerable<Finding> Find(ProfileMake make, Profile profile)
    {
        if (make.BearsAt is not { } at)
        {
            yield break;
        }

        Place where = make.At["bears-at"].OfMake(make.Id);
        var limits = new CodeLimits(profile.Width);
        double left = DepthLeft.At(profile, at);
        yield return Finding.Of(AtBearing, where, Quantity.Length(left), Quantity.Length(profile.Width), Arg.Of("at", Quantity.Length(at)));
        double notch = profile.Width - left;
        if (notch > limits.EndNotch + 1e-9)
        {
            yield return Finding.Of(NotchAtBearing, where, Quantity.Length(notch), Quantity.Length(limits.EndNotch));
        }

        double cut = DepthLeft.CutUpTo(profile);
        if (cut > at + SeatHair)
        {
            yield return Finding.Of(SeatCutAway, where, Quantity.Length(cut), Quantity.Length(at), Arg.Of("lost", Quantity.Length(cut - at)));
        }

        if (at > CodeLimits.LongestCantilever + 1e-9)
        {
            yield return Finding.Of(OverhangLong, where, Quantity.Length(at), Quantity.Length(CodeLimits.LongestCantilever));
        }

        (double least, double place) = DepthLeft.Least(profile, at);
        if (at > 0 && least < CodeLimits.LeastOnCantilever - 1e-9)
        {
            yield return Finding.Of(OverhangThin, where, Quantity.Length(least), Quantity.Length(CodeLimits.LeastOnCantilever), Arg.Of("at", Quantity.Length(place)));
        }
    }
}
