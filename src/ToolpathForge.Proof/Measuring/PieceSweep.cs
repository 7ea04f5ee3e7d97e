using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>
/// Measures what the cuts do to one piece. Gouge: the bit's radius less the least distance of its centre from the piece, over all motion with the tip below the upper end of a slab.
/// Left-over: the greatest distance of a point of an edge from what the bit reaches, over all motion with the tip at or below the slab's lower end.
/// Both are taken between arcs and lines in closed form, with the errors of both added, so that they are bounds of the truth.
/// </summary>
internal sealed class PieceSweep
{
    private readonly TargetPiece piece;
    private readonly Target target;
    private readonly CutSet cuts;
    private readonly FaultBook faults;
    private readonly double accuracy;
    private readonly Region region;
    private readonly EdgeStretches stretches;
    private readonly MarkCheck marks;

    internal PieceSweep(TargetPiece piece, Target target, CutSet cuts, FaultBook faults)
    {
        this.piece = piece;
        this.target = target;
        this.cuts = cuts;
        this.faults = faults;
        accuracy = Math.Max(target.Tolerance * ProofAccuracy.ShareOfTolerance, ProofAccuracy.LeastEnclosure);
        region = Region.Of(piece, accuracy);
        stretches = new EdgeStretches(piece, region, target.Increment);
        marks = new MarkCheck(piece, target, cuts, accuracy);
    }

    internal Region Region => region;

    internal EdgeStretches Stretches => stretches;

    /// <summary>Measures everything.</summary>
    internal PieceProof Measure()
    {
        var slabs = ImmutableArray.CreateBuilder<SlabProof>();
        ImmutableArray<double> heights = stretches.Heights;
        for (int i = 0; i + 1 < heights.Length; i++)
        {
            (double gouge, ProofPlace? gougeAt) = Gouge(heights[i], heights[i + 1], isTop: i + 2 == heights.Length);
            (double leftover, ProofPlace? leftoverAt) = Leftover(heights[i], heights[i + 1]);
            slabs.Add(new SlabProof(heights[i], heights[i + 1], gouge, gougeAt, leftover, leftoverAt));
        }

        return new PieceProof(piece.Name, slabs.ToImmutable(), Tabs(), marks.Measure(faults));
    }

    /// <summary>Deepest gouge by motion below the upper end of a slab. The top slab holds all that the lower ones do, so faults are told of it alone.</summary>
    private (double Depth, ProofPlace? At) Gouge(double bottom, double top, bool isTop)
    {
        double worst = 0;
        ProofPlace? place = null;
        PartTree low = cuts.AtOrBelow(top - target.Increment);
        var near = new List<int>();
        low.AddNear(region.Box, 2 * cuts.LargestError, near);
        foreach (int index in near)
        {
            PathPart part = low.Parts[index];
            CutMotion cut = cuts.Of(part);

            // Every motion beyond the tolerance is to be told; below it only the deepest matters.
            double above = isTop ? Math.Min(worst, target.Tolerance) : worst;
            double depth = region.DepthOf(part, cut.Radius, above, out PlanePoint at);
            if (depth <= above || (depth > target.Tolerance && marks.Allows(part, cut)))
            {
                continue;
            }

            var tip = new SpacePoint(at.X, at.Y, cuts.HeightAt(part, at));
            if (isTop && depth > target.Tolerance)
            {
                faults.Add(FaultCodes.Gouge, cut.Motion.Line, depth, target.Tolerance, tip, piece.Name);
            }

            if (depth > worst)
            {
                worst = depth;
                place = new ProofPlace(cut.Motion.Line, tip.X, tip.Y, Math.Max(tip.Z, bottom));
            }
        }

        return (worst, place);
    }

    /// <summary>Thickest left-over of a slab: apart on the stretches that tabs below it leave, so that a tab that stands too high is told as such.</summary>
    private (double Thickness, ProofPlace? At) Leftover(double bottom, double top)
    {
        (double thickness, ProofPlace? at) = Leftover(bottom, stretches.Required(top, overTabs: false), FaultCodes.MaterialLeft);
        (double overTabs, ProofPlace? atTabs) = Leftover(bottom, stretches.Required(top, overTabs: true), FaultCodes.TabTooHigh);
        return overTabs > thickness || at is null ? (Math.Max(thickness, overTabs), atTabs) : (thickness, at);
    }

    private (double Thickness, ProofPlace? At) Leftover(double bottom, List<PathPart> required, FaultCode code)
    {
        if (required.Count == 0)
        {
            return (0, null);
        }

        PartTree cover = cuts.AtOrBelow(bottom + target.Increment);
        Farthest worst = CoverSearch.Find(required, cover, 0, accuracy);
        int line = worst.Cover < 0 ? 0 : cuts.Of(cover.Parts[worst.Cover]).Motion.Line;
        if (worst.Value > target.Tolerance)
        {
            faults.Add(code, line, worst.Value, target.Tolerance, new SpacePoint(worst.At.X, worst.At.Y, bottom), piece.Name);
        }

        return (worst.Value, new ProofPlace(line, worst.At.X, worst.At.Y, bottom));
    }

    /// <summary>A tab's core, out to the bit's width from the edge, has to stay clear of every bit lower than its top.</summary>
    private ImmutableArray<TabProof> Tabs()
    {
        var proofs = ImmutableArray.CreateBuilder<TabProof>();
        for (int i = 0; i < piece.Tabs.Length; i++)
        {
            TargetTab tab = piece.Tabs[i];
            var edge = (LineEdge)piece.Loops[tab.Loop][tab.Edge];
            var cores = new Dictionary<double, Region>();
            double worst = 0;
            ProofPlace? place = null;
            PartTree low = cuts.AtOrBelow(tab.Top - target.Increment);
            var near = new List<int>();
            low.AddNear(Box.Around(edge.From, edge.To).Grown(2 * cuts.LargestRadius), 2 * cuts.LargestError, near);
            foreach (int index in near)
            {
                PathPart part = low.Parts[index];
                CutMotion cut = cuts.Of(part);
                if (cut.Radius == 0)
                {
                    continue;
                }

                if (!cores.TryGetValue(cut.Radius, out Region? core))
                {
                    core = Core(edge, tab, 2 * cut.Radius);
                    cores.Add(cut.Radius, core);
                }

                double depth = core.DepthOf(part, cut.Radius, worst, out PlanePoint at);
                if (depth > worst)
                {
                    worst = depth;
                    place = new ProofPlace(cut.Motion.Line, at.X, at.Y, cuts.HeightAt(part, at));
                }
            }

            if (worst > target.Tolerance && place is { } p)
            {
                faults.Add(FaultCodes.TabCut, p.Line, worst, target.Tolerance, new SpacePoint(p.X, p.Y, p.Z), piece.Name);
            }

            proofs.Add(new TabProof(i, worst, place));
        }

        return proofs.ToImmutable();
    }

    private static Region Core(LineEdge edge, TargetTab tab, double width)
    {
        PlanePoint along = edge.To.Minus(edge.From).Unit();
        PlanePoint outwards = along.Left.Times(-width);
        PlanePoint a = edge.From.Plus(along.Times(tab.CoreFrom)), b = edge.From.Plus(along.Times(tab.CoreTo));
        return Region.Of((ReadOnlySpan<PlanePoint>)[a, b, b.Plus(outwards), a.Plus(outwards)]);
    }
}
