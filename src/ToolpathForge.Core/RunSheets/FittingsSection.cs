using ToolpathForge.Cutting;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;

namespace ToolpathForge.RunSheets;

/// <summary>How a pattern is fitted out when it is cut: the strips to saw and screw under it, where brads go, how it is used for the other hand.</summary>
internal static class FittingsSection
{
    internal static void Write(Html page, Plan plan, CutPlan cut)
    {
        foreach (Make make in cut.Clamping.Makes)
        {
            if (plan.Pieces.FirstOrDefault(p => p.Make.Id == make.Id) is ProfilePiece { Make: PatternMake pattern } piece && Steps(piece, pattern, plan.Job.Unit).ToArray() is { Length: > 0 } steps)
            {
                page.Element("h3", cut.Clamping.IsShared ? $"Fit out {make.Id}" : "Fit it out").List(true, steps);
            }
        }
    }

    private static IEnumerable<string> Steps(ProfilePiece piece, PatternMake make, LengthUnit unit)
    {
        string Say(double mm) => ShopText.Size(mm, unit);
        foreach (PlateStrip strip in piece.Strips)
        {
            bool block = strip.Along.Y == 0;
            yield return $"{Capital(strip.Name)}: saw a strip {Say(strip.Thickness)} thick, {Say(strip.Width)} wide and {Say(strip.Length)} long, one edge straight and square. "
                + $"Drill {Say(strip.Pilot)} in the middle of its width, {string.Join(", ", strip.Screws.Select(Say))} from the end nearest {(block ? "the tip" : "the guide block")}. "
                + $"Screw it under the plate, that edge on the {(block ? "guide-block line" : "line of the sawn end")}; sink the heads below the face, or the router catches on them.";
        }

        if (piece.Strips.Any(s => s.Along.Y != 0))
        {
            yield return "Saw the ends of the boards to their line first. The pattern lies with its stop against the sawn end and its block against the reference edge; what guides the router runs straight out over the end.";
        }

        if (piece.Brads.Length > 0)
        {
            string through = make.Fittings.Brads!.Bit is null ? make.Marks is { Labels: true } ? "through the crosses" : "at the crosses of the drawing" : "through their holes";
            yield return $"Fix it to the board with brads {through}, {Say(make.Fittings.Brads.Off)} or more off the finished edge.";
        }

        if (make.Fittings.Hands == PlateHands.Both)
        {
            string screwed = piece.Strips.IsEmpty ? "" : " and screw what guides it to the other face";
            yield return $"For left-hand ends turn it over{screwed}. The router is then fed the other way along the curve, from the tip to the profile edge, always against the cutter's rotation: "
                + "where the grain rises against that, take less at a time, or lay the board end over end instead and use the pattern as it is.";
        }
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
