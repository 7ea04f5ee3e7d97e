namespace ToolpathForge.Proof;

/// <summary>
/// The feed motions of a program as parts seen from above, clipped at one height or another. Pieces of one clamping share their heights, so each clipping is made once.
/// </summary>
internal sealed class CutSet
{
    private readonly List<CutMotion> cuts;
    private readonly Dictionary<int, CutMotion> byIndex;
    private readonly Dictionary<double, PartTree> surfaces = [];
    private readonly Dictionary<double, PartTree> centers = [];

    internal CutSet(List<CutMotion> cuts)
    {
        this.cuts = cuts;
        byIndex = cuts.ToDictionary(c => c.Index);
        LargestError = cuts.Select(c => c.Motion.RadiusError).DefaultIfEmpty(0).Max();
        LargestRadius = cuts.Select(c => c.Radius).DefaultIfEmpty(0).Max();
    }

    internal IReadOnlyList<CutMotion> Cuts => cuts;

    /// <summary>Largest error of an arc's radius, mm.</summary>
    internal double LargestError { get; }

    /// <summary>Radius of the widest bit, mm.</summary>
    internal double LargestRadius { get; }

    /// <summary>The motion that a part is of.</summary>
    internal CutMotion Of(in PathPart part) => byIndex[part.Owner];

    /// <summary>Line of the text of a motion.</summary>
    internal int LineOf(int index) => byIndex[index].Motion.Line;

    /// <summary>Height of the tip at a point of a part.</summary>
    internal double HeightAt(in PathPart part, PlanePoint on) => Of(part).HeightAt(part.From + ((part.To - part.From) * part.ShareAt(on)));

    /// <summary>Paths of the tip at or below a height; distances to them count to the bit's surface: less the radius, plus the path's error.</summary>
    internal PartTree AtOrBelow(double height) => Tree(surfaces, height, c => c.Motion.RadiusError - c.Radius);

    /// <summary>Paths of the tip at or below a height; distances to them count to the tip's centre, plus the path's error.</summary>
    internal PartTree CentersAtOrBelow(double height) => Tree(centers, height, c => c.Motion.RadiusError);

    private PartTree Tree(Dictionary<double, PartTree> known, double height, Func<CutMotion, double> offset)
    {
        if (known.TryGetValue(height, out PartTree? tree))
        {
            return tree;
        }

        var parts = new List<PathPart>(cuts.Count);
        var offsets = new List<double>(cuts.Count);
        foreach (CutMotion cut in cuts)
        {
            cut.AddAtOrBelow(parts, height);
            double own = offset(cut);
            while (offsets.Count < parts.Count)
            {
                offsets.Add(own);
            }
        }

        tree = new PartTree([.. parts], [.. offsets]);
        known.Add(height, tree);
        return tree;
    }
}
