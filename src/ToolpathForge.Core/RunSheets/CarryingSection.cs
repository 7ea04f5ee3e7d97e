using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;

namespace ToolpathForge.RunSheets;

/// <summary>What the residential code says of cuts in members that carry, each limit beside what the job's own profile takes and leaves. Once for the whole job.</summary>
internal static class CarryingSection
{
    internal static void Write(Html page, Plan plan)
    {
        LengthUnit unit = plan.Job.Unit;
        ProfilePiece[] pieces = [.. plan.Pieces.OfType<ProfilePiece>()];
        if (pieces.Length == 0)
        {
            return;
        }

        page.Raw("<div class=\"caution\">").Element("h3", "Before it carries anything")
            .Table(
                ["Make", "Depth of the board", "Cut into an end", $"Left on an overhang, {Least(unit)} or more", $"Overhang, {Longest(unit)} at most"],
                pieces.Select(p => Row(p, unit)))
            .List(false, CodeLimits.InWords(unit)).Raw("</div>");
    }

    private static IReadOnlyList<string> Row(ProfilePiece piece, LengthUnit unit)
    {
        string Say(double mm) => ShopText.Size(mm, unit);
        var make = (ProfileMake)piece.Make;
        var limits = new CodeLimits(piece.Profile.Width);
        (double whole, _) = DepthLeft.Least(piece.Profile, double.PositiveInfinity);
        (double least, double at) = DepthLeft.Least(piece.Profile, make.BearsAt ?? double.PositiveInfinity);
        double cut = piece.Profile.Width - whole;
        return
        [
            make.Id,
            Say(limits.Depth),
            $"{Say(limits.EndNotch)} at most; yours: {Say(cut)}{(cut > limits.EndNotch + 1e-9 ? ", more" : "")}",
            $"yours: {Say(least)}, {RuleText.Size(at, unit)} from the tip{(least < CodeLimits.LeastOnCantilever - 1e-9 ? ", less" : "")}",
            make.BearsAt is { } bears ? $"yours: {Say(bears)}{(bears > CodeLimits.LongestCantilever + 1e-9 ? ", more" : "")}" : "not stated (bears-at)",
        ];
    }

    private static string Least(LengthUnit unit) => ShopText.Size(CodeLimits.LeastOnCantilever, unit);

    private static string Longest(LengthUnit unit) => ShopText.Size(CodeLimits.LongestCantilever, unit);
}
