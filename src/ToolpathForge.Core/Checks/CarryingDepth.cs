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

    internal static readonly FindingKind OverhangLong = new(
        "overhang-long",
        Severity.Warn,
        "The board reaches {found} past what it bears on; IRC R802.7.1.1 speaks of cuts in cantilevered rafters up to {allowed}.",
        "Shorten the overhang, or have it designed: local code and a licensed designer decide.");

    internal static readonly FindingKind OverhangThin = new(
        "overhang-thin",
        Severity.Warn,
        "No more than {found} are left where the overhang begins; IRC R802.7.1.1 asks for {allowed} or more on a cantilever.",
        "Take a wider board or a shallower profile; local code and a licensed designer decide.");

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

        if (at > CodeLimits.LongestCantilever + 1e-9)
        {
            yield return Finding.Of(OverhangLong, where, Quantity.Length(at), Quantity.Length(CodeLimits.LongestCantilever));
        }

        if (left < CodeLimits.LeastOnCantilever - 1e-9)
        {
            yield return Finding.Of(OverhangThin, where, Quantity.Length(left), Quantity.Length(CodeLimits.LeastOnCantilever));
        }
    }
}
