using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>Marks of one piece: which motions inside the piece they justify, and whether they are cut.</summary>
internal sealed class MarkCheck
{
    private readonly TargetPiece piece;
    private readonly Target target;
    private readonly CutSet cuts;
    private readonly double accuracy;
    private readonly (TargetMark Mark, List<PathPart> Required, PartTree Strokes)[] marks;

    internal MarkCheck(TargetPiece piece, Target target, CutSet cuts, double accuracy)
    {
        this.piece = piece;
        this.target = target;
        this.cuts = cuts;
        this.accuracy = accuracy;
        marks = [.. piece.Marks.Select(m => Prepare(m, accuracy))];
    }

    /// <summary>Whether a motion inside the piece stays on a mark's strokes, no deeper than meant and no wider.</summary>
    internal bool Allows(in PathPart part, CutMotion cut)
    {
        if (cut.Tool is not { } tool)
        {
            return false;
        }

        double lowest = Math.Min(cut.HeightAt(part.From), cut.HeightAt(part.To));
        foreach ((TargetMark mark, _, PartTree strokes) in marks)
        {
            double halfWidth = tool.HalfWidthAt(piece.Top - lowest);
            if (lowest >= mark.Depth - target.Increment
                && halfWidth <= mark.HalfWidth + target.Tolerance
                && strokes.Box.Grown(target.Tolerance).SquareDistanceTo(part.Box) == 0
                && CoverSearch.Find([part], strokes, target.Tolerance - accuracy, accuracy).Value <= target.Tolerance)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>How far the cuts miss each mark's strokes.</summary>
    internal ImmutableArray<MarkProof> Measure(FaultBook faults)
    {
        var proofs = ImmutableArray.CreateBuilder<MarkProof>(marks.Length);
        foreach ((TargetMark mark, List<PathPart> required, _) in marks)
        {
            PartTree cover = cuts.CentersAtOrBelow(mark.Depth + target.Increment);
            Farthest worst = CoverSearch.Find(required, cover, 0, accuracy);
            int line = worst.Cover < 0 ? 0 : cuts.Of(cover.Parts[worst.Cover]).Motion.Line;
            if (worst.Value > target.Tolerance)
            {
                faults.Add(FaultCodes.MarkMissing, line, worst.Value, target.Tolerance, new SpacePoint(worst.At.X, worst.At.Y, mark.Depth), mark.Name);
            }

            proofs.Add(new MarkProof(mark.Name, worst.Value, required.Count == 0 ? null : new ProofPlace(line, worst.At.X, worst.At.Y, mark.Depth)));
        }

        return proofs.MoveToImmutable();
    }

    private static (TargetMark Mark, List<PathPart> Required, PartTree Strokes) Prepare(TargetMark mark, double accuracy)
    {
        var all = new List<PathPart>();
        for (int i = 0; i < mark.Strokes.Length; i++)
        {
            EdgeEnclosure.Add(all, mark.Strokes[i], i, accuracy);
        }

        var offsets = new double[all.Count];
        for (int i = 0; i < offsets.Length; i++)
        {
            offsets[i] = all[i].Error;
        }

        return (mark, all.FindAll(p => mark.Strokes[p.Owner].MustBeCut), new PartTree([.. all], offsets));
    }
}
