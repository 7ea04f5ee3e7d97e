using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>
/// How deep earlier cuts went at a place: there the bit finds no material again, or no more than a sliver at its rim. Only a cut whose centre passed that
/// near counts, by a bit at least as wide.
/// </summary>
internal sealed class ClearedDepth
{
    private readonly PartTree tree;
    private readonly Dictionary<int, CutMotion> cuts = [];
    private readonly List<int> found = [];

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
    }

    /// <summary>Makes a cut known, once its bit is.</summary>
    internal void Add(CutMotion cut) => cuts.Add(cut.Index, cut);

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
            PathPart part = tree.Parts[index];
            if (part.Owner >= before || !cuts.TryGetValue(part.Owner, out CutMotion cut) || cut.Radius < radius
                || Distances.Between(p, part, out PlanePoint on) > nearness)
            {
                continue;
            }

            double height = cut.Motion.IsVertical ? cut.LowestZ : cut.HeightAt(part.From + ((part.To - part.From) * part.ShareAt(on)));
            lowest = Math.Min(lowest, height);
        }

        return lowest;
    }
}
