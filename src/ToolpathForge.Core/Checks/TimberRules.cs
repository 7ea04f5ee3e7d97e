using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Shapes;

namespace ToolpathForge.Checks;

/// <summary>
/// Timber that the residential code lets nobody cut like a board: engineered timber at all, and the tension side of thick members away from their ends.
/// Cautions, never a calculation.
/// </summary>
internal static class TimberRules
{
    internal static readonly FindingKind Engineered = new(
        "engineered-timber",
        Severity.Stop,
        "{board} is engineered timber, and the job quotes no word of its maker: it is not cut, notched or drilled (IRC R502.8.2, R802.7.2).",
        "Ask its maker or a licensed designer for this very cut, and write what they allow, and where it is written, as maker-allows; or take sawn lumber.");

    internal static readonly FindingKind EngineeredAllowed = new(
        "engineered-timber-allowed",
        Severity.Warn,
        "{board} is engineered timber. The job says that its maker allows the cut: {allows}.",
        "Lay that paper beside this sheet before you cut, and cut nothing that it does not name; local code and a licensed designer decide.");

    internal static readonly FindingKind ThickAtEnd = new(
        "thick-member-end",
        Severity.Note,
        "A member {found} thick is 4 in nominal or more: its tension side is not notched except at the ends (IRC R502.8.1, R802.7.1). This profile reaches {cut} from the tip.",
        "Ask whether that counts as the end of the member: where it goes on past its support, opinions differ; local code and a licensed designer decide.");

    internal static readonly FindingKind ThickInSpan = new(
        "thick-member-span",
        Severity.Warn,
        "A member {found} thick is 4 in nominal or more: its tension side is not notched except at the ends (IRC R502.8.1, R802.7.1). This profile reaches {cut} from the tip, past the support at {allowed}.",
        "Shorten the profile so that it ends before the support; local code and a licensed designer decide.");

    internal static IEnumerable<Finding> Find(ProfileMake make, Profile profile)
    {
        Place board = make.At["board"].OfMake(make.Id);
        if (make.Board.Engineered)
        {
            yield return make.MakerAllows is { } allows
                ? Finding.Of(EngineeredAllowed, make.At["maker-allows"].OfMake(make.Id), Arg.Of("board", make.Board.Name), Arg.Of("allows", allows.TrimEnd('.')))
                : Finding.Of(Engineered, board, Arg.Of("board", make.Board.Name));
        }

        // What a panel is cut into is no matter; what the pattern will guide a router along is.
        if (!CodeLimits.IsThick(make.Board.Thickness))
        {
            yield break;
        }

        double cut = DepthLeft.CutUpTo(profile);
        yield return make.BearsAt is { } at && cut > at
            ? Finding.Of(ThickInSpan, board, Quantity.Length(make.Board.Thickness), Quantity.Length(at), Arg.Of("cut", Quantity.Length(cut)))
            : Finding.Of(ThickAtEnd, board, Arg.Of("found", Quantity.Length(make.Board.Thickness)), Arg.Of("cut", Quantity.Length(cut)));
    }
}
