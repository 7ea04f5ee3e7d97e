using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>
/// How deep earlier cuts went at a place: there the bit finds no material again, or no more than a sliver at its rim. Only a cut whose centre passed that
/// near counts, by a bit at least as wide.
/// </summary>
internal sealed class ClearedDepth
{
    private readonly PartTree tree;
    private readonly CutMotion[] cuts;
    private readonly List<int> found = [];
    private int witness = -1;

    internal ClearedDepth(ImmutableArray<ProgramStep> steps)
    {
        var parts = new List<PathPart>();
        for (int i = 0; i < steps.Length; i++)
        {
            if (steps[i] is Motion { IsFeed: true } motion)
            {
                new CutMotion(i, motion, null).AddAtOrBelow(parts, double.PositiveInfinity);
            }
        }

        tree = new PartTree([.. parts], new double[parts.Count]);
        cuts = new CutMotion[steps.Length];
    }

    /// <summary>Makes a cut known, once its bit is.</summary>
    internal void Add(CutMotion cut) => cuts[cut.Index] = cut;

    /// <summary>Lowest tip of the cuts before a moment at a place; infinite if there was none.</summary>
    /// <param name="p">The place.</param>
    /// <param name="before">Only cuts before this one count.</param>
    /// <param name="radius">Only bits at least this thick count, mm.</param>
    /// <param name="nearness">How far from the place a cut's centre may have passed, mm.</param>
    internal double At(PlanePoint p, int before, double radius, double nearness)
    {
        found.Clear();
        tree.AddNear(new Box(p.X, p.Y, p.X, p.Y), nearness, found);
        double lowest = double.PositiveInfinity;
        foreach (int index in found)
        {
            if (cuts[tree.Parts[index].Owner].Radius >= radius)
            {
                lowest = Math.Min(lowest, TipOf(index, p, before, nearness));
            }
        }

        return lowest;
    }

    /// <summary>Whether a cut before a moment went as low as a height at a place, by a bit of any size.</summary>
    /// <param name="p">The place.</param>
    /// <param name="before">Only cuts before this one count.</param>
    /// <param name="nearness">How far from the place a cut's centre may have passed, mm.</param>
    /// <param name="height">The tip has to have been there or lower, mm.</param>
    internal bool IsClearedTo(PlanePoint p, int before, double nearness, double height)
    {
        // A pass follows the one above it, motion by motion: what cleared the last place, or the part after it, is likely to have cleared this one.
        for (int index = Math.Max(witness, 0); index < Math.Min(witness + 2, tree.Parts.Length); index++)
        {
            if (TipOf(index, p, before, nearness) <= height)
            {
                witness = index;
                return true;
            }
        }

        found.Clear();
        tree.AddNear(new Box(p.X, p.Y, p.X, p.Y), nearness, found);
        foreach (int index in found)
        {
            if (TipOf(index, p, before, nearness) <= height)
            {
                witness = index;
                return true;
            }
        }

        return false;
    }

    /// <summary>Height of the tip where a part passed nearest to a place; infinite if it came later or stayed away.</summary>
    private double TipOf(int index, PlanePoint p, int before, double nearness)
    {
        ref readonly PathPart part = ref tree.Parts[index];
        CutMotion cut = cuts[part.Owner];
        if (part.Owner >= before || cut.Motion is null || Distances.Between(p, part, out PlanePoint on) > nearness)
        {
            return double.PositiveInfinity;
        }

        return cut.Motion.IsVertical ? cut.LowestZ : cut.HeightAt(part.From + ((part.To - part.From) * part.ShareAt(on)));
    }
}
