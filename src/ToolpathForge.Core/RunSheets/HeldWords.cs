using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Pieces;

namespace ToolpathForge.RunSheets;

/// <summary>Openings whose waste stays whole, and what lies in them, in words and in the pictures.</summary>
internal static class HeldWords
{
    /// <summary>What is to be known before the program starts, one sentence or two for each opening.</summary>
    internal static IEnumerable<string> Steps(CutPlan cut)
    {
        foreach (HeldWaste waste in cut.Works[^1].Outline ? HeldWaste.On(cut.Clamping) : [])
        {
            int tabs = cut.Tabs.Count(t => t.Piece == waste.Of.Number && t.Tab.Opening == waste.Opening.Name);
            string held = tabs > 0 ? FormattableString.Invariant($"{tabs} tabs hold it") : "the skin holds it";
            string stays = $"The waste in {waste.Opening.Called} of {waste.Of.Name} stays whole: {held}.";
            yield return waste.Within.IsEmpty
                ? $"{stays} It is cut before the outside of {waste.Of.Name}."
                : $"{stays} In it {(waste.Within.Length > 1 ? "lie" : "lies")} {Names(waste.Within)}, cut first; then the opening, then the outside of {waste.Of.Name}. Leave everything in place until the program has ended, and free it in that order too.";
        }
    }

    /// <summary>What lies in openings, for the line under a blank's picture; empty for nothing.</summary>
    internal static string Within(Clamping clamping) => string.Concat(HeldWaste.On(clamping).Where(w => !w.Within.IsEmpty).Select(w =>
        $" In {w.Opening.Called} of {w.Of.Name}: {Names(w.Within)}."));

    /// <summary>The tones of pieces on their blank: of one that lies in an opening after the piece round it, and the waste of such openings with the offcuts in it.</summary>
    /// <param name="cut">What lies there.</param>
    /// <param name="tone">The tone of a piece.</param>
    /// <param name="offcuts">The blank's offcuts, where they are toned; empty where they are not.</param>
    internal static IEnumerable<Fill> Fills(CutPlan cut, Tone tone, ImmutableArray<Box2> offcuts)
    {
        ImmutableArray<HeldWaste> held = HeldWaste.On(cut.Clamping);
        foreach (Placed placed in cut.Clamping.Pieces.OrderBy(p => held.Count(w => w.Within.Contains(p))))
        {
            yield return new Fill(tone, placed.Exact);
            foreach (HeldWaste waste in held.Where(w => w.Of == placed))
            {
                yield return new Fill(Tone.Waste, OpeningOutline.Exact(waste.Opening, placed.Placement));
                foreach (Box2 offcut in offcuts.Where(o => waste.Edge.Contains(o.Center)))
                {
                    yield return new Fill(Tone.Paper, Outlines.Of(Contour.Rectangle(offcut)));
                }
            }
        }
    }

    private static string Names(ImmutableArray<Placed> pieces) => string.Join(", ", pieces.Select(p => p.Name));
}
