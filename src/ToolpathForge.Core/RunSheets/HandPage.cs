using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;

namespace ToolpathForge.RunSheets;

/// <summary>What is done by hand after a program: steps, the depths to set, and the section to scale.</summary>
internal static class HandPage
{
    internal static void Write(Html page, Plan plan, CutPlan cut)
    {
        LengthUnit unit = plan.Job.Unit;
        double comesOut = -1;
        foreach (Make make in cut.Clamping.Makes)
        {
            if (plan.Pieces.FirstOrDefault(p => p.Make.Id == make.Id) is not ProfilePiece piece || HandPlan.Of(piece, unit) is not { } hand)
            {
                continue;
            }

            page.Element("h3", cut.Clamping.Makes.Length > 1 ? $"By hand: {make.Id}" : "By hand").List(true, Steps(piece, hand, unit));
            RunSheetPage.Picture(
                page, hand.Section, hand.Scale, "Across the edge, the work at the left: the hand router at its lowest and its highest setting. Collet and base are sketched.");
            comesOut = Math.Max(comesOut, hand.Passes.Max(p => p.ComesOut));
        }

        if (comesOut >= 0)
        {
            page.Raw("<div class=\"caution\">").Element("h3", "By hand, every time").List(false, HandPlan.Cautions(comesOut, unit)).Raw("</div>");
        }
    }

    private static IEnumerable<string> Steps(ProfilePiece piece, HandPlan hand, LengthUnit unit)
    {
        Make make = piece.Make;
        HandWork work = hand.Work;
        string Say(double mm) => ShopText.Size(mm, unit);
        string Exactly(double mm) => QuantityText.Write(Quantity.Length(mm), unit);
        if (work.Machined is { } machined)
        {
            yield return $"The machine has cut {Say(machined)} deep; {Say(make.Thickness - machined)} is left. Unclamp the board{(hand.SawnBefore is null ? ", take out what held the waste," : "")} and look over the edge: the bearing copies every mark in it.";
            yield return hand.SawnBefore is { } left
                ? $"The waste is off already. Below what the machine has cut, {Say(left)} stands outside the finished edge: "
                    + (hand.Bite < left - 1e-6 ? $"saw or plane that down to {Say(hand.Bite)}, without touching the edge." : "the router takes it, so there's nothing more to saw.")
                : $"Saw the waste off inside the slot, {Say(hand.Bite)} outside the finished edge. Do not touch the edge, and leave nothing standing above the saw cut: the bearing needs that room.";
            if (!make.Openings.IsEmpty)
            {
                yield return "Holes and slots are cut as deep as the edge: drill and saw them through.";
            }
        }
        else
        {
            // A plate for a larger guide lies inside the finished edge, and so does the line along it.
            yield return $"Mark the board along the pattern and saw {Say(hand.Bite + work.PatternInset)} outside the line{(work.PatternInset > 0 ? $": the finished edge lies {Say(work.PatternInset)} outside it" : "")}.";
            yield return $"Lay the pattern {(hand.PatternBelow ? "under" : "on")} the board, its guide block against the reference edge{(piece.Strips.Any(s => s.Along.Y != 0) ? ", its stop against the sawn end" : "")}, and fix it with {Brads.Say(piece.Thickness, work.Board)}.";
        }

        yield return $"Bit: {work.Bit.Name}{(work.Bushing is { } bushing ? $", with a bushing of {Say(bushing)}" : "")}. At least {ShopText.AtLeast(Grip.Least(work.Bit.Shank), unit)} of its shank in the collet; unplug the router while you set it.";
        double fastest = Math.Min(work.Bit.MaxSpeed, SpeedByDiameter.Most(work.Bit.Diameter));
        yield return FormattableString.Invariant($"Speed: {fastest:0} rpm at most for this bit, by its diameter (common practice) and its row; the marking on the bit wins. Set the router's dial by its manual before you switch it on.");
        foreach (HandPass pass in hand.Passes)
        {
            yield return $"{char.ToUpperInvariant(pass.Name[0])}{pass.Name[1..]}: set the cutter's end {Exactly(pass.Best)} below the base, "
                + $"anywhere from {Exactly(pass.Least)} to {Exactly(pass.Most)}. Try it on a scrap of the same thickness.";
        }

        if (work.Machined is null && hand.Passes.Length > 1)
        {
            yield return "Take the pattern and its brads off before the second pass: the base then lies on the board.";
        }

        yield return hand.Feed;
        yield return $"Bring the {(work.Bushing is null ? "bearing" : "bushing")} against the {(work.Machined is null ? "pattern" : "machined edge")} before the cutter meets wood, with both hands on the router; never climb by hand.";
        if (piece.Profile.EndAngle != 0 || make.Material.HasGrain)
        {
            yield return "Where the cut leaves the board at its end, back it up with a scrap.";
        }
    }
}
