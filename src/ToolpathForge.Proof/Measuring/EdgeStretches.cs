using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>Which stretches of a piece's edges have to be free at which height.</summary>
internal sealed class EdgeStretches
{
    private readonly Region region;
    private readonly double slack;
    private readonly ImmutableArray<TargetEdge> edges;
    private readonly List<(int Edge, double From, double To, double Below, bool IsTab)> exempt = [];

    internal EdgeStretches(TargetPiece piece, Region region, double slack)
    {
        this.region = region;
        this.slack = slack;
        edges = [.. piece.Loops.SelectMany(l => l)];
        var first = new int[piece.Loops.Length];
        for (int i = 1; i < first.Length; i++)
        {
            first[i] = first[i - 1] + piece.Loops[i - 1].Length;
        }

        foreach (TargetTab tab in piece.Tabs)
        {
            var edge = (LineEdge)piece.Loops[tab.Loop][tab.Edge];
            double length = edge.From.DistanceTo(edge.To);
            exempt.Add((first[tab.Loop] + tab.Edge, tab.OuterFrom / length, tab.OuterTo / length, tab.Top, true));
        }

        foreach (TargetAllowance a in piece.Allowances)
        {
            exempt.Add((first[a.Loop] + a.Edge, a.FromShare, a.ToShare, a.Below, false));
        }

        var heights = new SortedSet<double> { piece.Bottom, piece.Top };
        foreach (double height in exempt.Select(e => e.Below))
        {
            if (height > piece.Bottom + slack && height < piece.Top - slack)
            {
                heights.Add(height);
            }
        }

        Heights = [.. heights];
    }

    /// <summary>Limits of the slabs, from the bottom up.</summary>
    internal ImmutableArray<double> Heights { get; }

    /// <summary>All edges that must be cut, whatever is allowed to stay along them.</summary>
    internal IEnumerable<PathPart> Cuttable() => region.Boundary.ToArray().Where(p => edges[p.Owner].MustBeCut);

    /// <summary>The stretches that have to be free in the slab that ends at a height.</summary>
    /// <param name="top">The slab's upper end.</param>
    /// <param name="overTabs">True for those above a tab that is lower; false for all others.</param>
    internal List<PathPart> Required(double top, bool overTabs)
    {
        var required = new List<PathPart>();
        foreach (PathPart part in region.Boundary)
        {
            if (!edges[part.Owner].MustBeCut)
            {
                continue;
            }

            List<(double From, double To)> open = Without([(part.From, part.To)], exempt.Where(e => e.Edge == part.Owner && e.Below >= top - slack));
            IEnumerable<(int Edge, double From, double To, double Below, bool IsTab)> tabs =
                exempt.Where(e => e.IsTab && e.Edge == part.Owner && e.Below < top - slack);
            List<(double From, double To)> beside = Without(open, tabs);
            foreach ((double from, double to) in overTabs ? Difference(open, beside) : beside)
            {
                double span = part.To - part.From;
                required.Add(from == part.From && to == part.To ? part : part.Between((from - part.From) / span, (to - part.From) / span));
            }
        }

        return required;
    }

    private static List<(double From, double To)> Without(
        List<(double From, double To)> stretches, IEnumerable<(int Edge, double From, double To, double Below, bool IsTab)> cut)
    {
        foreach ((_, double from, double to, _, _) in cut)
        {
            var left = new List<(double From, double To)>();
            foreach ((double a, double b) in stretches)
            {
                if (Math.Min(b, from) > a)
                {
                    left.Add((a, Math.Min(b, from)));
                }

                if (Math.Max(a, to) < b && to > from)
                {
                    left.Add((Math.Max(a, to), b));
                }
            }

            stretches = left;
        }

        return stretches;
    }

    private static List<(double From, double To)> Difference(List<(double From, double To)> all, List<(double From, double To)> without) =>
        Without(all, without.Select(w => (0, w.From, w.To, 0.0, false)));
}
