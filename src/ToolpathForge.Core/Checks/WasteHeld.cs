using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Checks;

/// <summary>Tells which large openings go to chips although the job would have their waste held.</summary>
internal static class WasteHeld
{
    /// <summary>Tabs do not hold the waste of a large opening.</summary>
    internal static readonly FindingKind ToChips = new(
        "opening-to-chips",
        Severity.Note,
        "The waste of opening '{name}' can't be held whole: its straight sides have no room for {allowed} tabs of {length}, or the bit of the outline does not get into its corners. It is cut to chips.",
        "Shorten the tabs, let them be square, or leave it so: it takes longer and nothing can lie in it.");

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        if (input.Make is not OutlineMake { HoldsWaste: true } make)
        {
            yield break;
        }

        foreach (Opening opening in make.Openings.Where(o => !o.Held))
        {
            CutSettings s = HeldOpening.Settings(make, opening, input.Machine, input.Settings.Skin);
            if (HeldOpening.HasWaste(make, opening, s))
            {
                Point2 at = make.InDrawing(opening.From.Towards(opening.To, 0.5));
                yield return new Finding(
                    ToChips,
                    make.At["openings"].OfMake(make.Id).AtPoint(at.X, at.Y),
                    null,
                    Quantity.Number(s.TabCount),
                    [Arg.Of("name", opening.Name), Arg.Of("length", Quantity.Length(s.TabLength))]);
            }
        }
    }
}
