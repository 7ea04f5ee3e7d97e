using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>
/// Finds for every finished edge in which direction it was cut, height by height: the direction of the first motion that brought the surface to within the tolerance of where it ends up.
/// A stretch is settled at once if every motion that could be that one goes the same way; otherwise it is halved, down to <see cref="ProofAccuracy.ShortestStretch"/>.
/// </summary>
internal sealed class DirectionSearch
{
    private readonly int index;
    private readonly TargetPiece piece;
    private readonly Target target;
    private readonly CutSet cuts;
    private readonly PieceSweep sweep;
    private readonly double accuracy;
    private readonly List<int> near = [];

    internal DirectionSearch(int index, TargetPiece piece, Target target, CutSet cuts, PieceSweep sweep)
    {
        this.index = index;
        this.piece = piece;
        this.target = target;
        this.cuts = cuts;
        this.sweep = sweep;
        accuracy = Math.Max(target.Tolerance * ProofAccuracy.ShareOfTolerance, ProofAccuracy.LeastEnclosure);
    }

    /// <summary>All stretches, by loop, edge, height and share.</summary>
    internal ImmutableArray<EdgePass> Find()
    {
        List<double> heights = Heights();
        var passes = new List<EdgePass>();
        for (int i = 0; i + 1 < heights.Count; i++)
        {
            Add(passes, heights[i], heights[i + 1]);
        }

        return [.. passes.OrderBy(p => p.Loop).ThenBy(p => p.Edge).ThenBy(p => p.Bottom).ThenBy(p => p.FromShare)];
    }

    /// <summary>Heights at which another level pass takes over: those of level motions that touch the piece, between its bottom and top.</summary>
    private List<double> Heights()
    {
        var found = new SortedSet<double> { piece.Bottom, piece.Top };
        PartTree low = cuts.AtOrBelow(piece.Top - target.Increment);
        near.Clear();
        low.AddNear(sweep.Region.Box, target.Tolerance, near);
        foreach (int i in near)
        {
            PathPart part = low.Parts[i];
            CutMotion cut = cuts.Of(part);
            double z = cut.Motion.End.Z;
            if (cut.Motion.Start.Z == z && z > piece.Bottom && !found.Contains(z)
                && sweep.Region.DepthOf(part, cut.Radius + target.Tolerance, 0, out _) > 0)
            {
                found.Add(z);
            }
        }

        // Heights that differ by rounding are one.
        var heights = new List<double>();
        foreach (double z in found)
        {
            if (heights.Count == 0 || z - heights[^1] > target.Increment)
            {
                heights.Add(z);
            }
        }

        heights[^1] = piece.Top;
        return heights;
    }

    private void Add(List<EdgePass> passes, double bottom, double top)
    {
        PartTree cover = cuts.AtOrBelow(bottom + target.Increment);
        if (cover.Parts.Length == 0)
        {
            return;
        }

        (int Loop, int Edge)[] names = [.. piece.Loops.SelectMany((loop, l) => loop.Select((_, e) => (l, e)))];
        EdgePass? last = null;
        int hint = -1;
        var open = new Stack<PathPart>();
        foreach (PathPart whole in sweep.Stretches.Cuttable())
        {
            open.Push(whole);
            while (open.TryPop(out PathPart part))
            {
                PlanePoint middle = part.PointAt(0.5);
                hint = cover.NearestTo(middle, hint, out double there);
                if (!TryDirection(part, cover, hint, there, out CutDirection direction, out int line))
                {
                    double share = FarthestDistances.LeavesFrontAt(part, cover.Parts[hint]);
                    share = share > 0.01 && share < 0.99 ? share : 0.5;
                    open.Push(part.Between(share, 1));
                    open.Push(part.Between(0, share));
                    continue;
                }

                if (line == 0)
                {
                    continue;
                }

                (int loop, int edge) = names[part.Owner];
                if (last is not null && last.Loop == loop && last.Edge == edge && last.Direction == direction && Math.Abs(last.ToShare - part.From) <= ProofAccuracy.Rounding)
                {
                    last = last with { ToShare = part.To };
                    passes[^1] = last;
                    continue;
                }

                last = new EdgePass(index, loop, edge, part.From, part.To, bottom, top, direction, line);
                passes.Add(last);
            }
        }
    }

    /// <summary>Tries to settle a stretch. Line 0: it is not cut to within twice the tolerance, so it has no direction.</summary>
    private bool TryDirection(in PathPart part, PartTree cover, int hint, double there, out CutDirection direction, out int line)
    {
        direction = CutDirection.Conventional;
        line = 0;
        double finished = 2 * target.Tolerance;
        double half = part.Length / 2;
        bool isShort = half <= ProofAccuracy.ShortestStretch / 2;
        if (there - (isShort ? 0 : half) > finished)
        {
            return true;
        }

        PlanePoint middle = part.PointAt(0.5);
        PathPart place = isShort ? PathPart.Line(middle, middle, part.Error, part.Owner, part.From, part.To) : part;
        double limit = isShort ? there : CoverSearch.Bound(part, cover, hint, there, accuracy);
        if (limit > finished)
        {
            return false;
        }

        limit += target.Tolerance;
        near.Clear();
        cover.AddNear(place.Box, limit, near);
        int first = int.MaxValue, firstPart = -1;
        bool hasConventional = false, hasClimb = false, hasWay = false;
        foreach (int i in near)
        {
            ref readonly PathPart other = ref cover.Parts[i];
            if (!(other.Length > 0))
            {
                continue;
            }

            Nearest found = Distances.Between(place, other);
            if (found.Value + cover.Offset(i) > limit)
            {
                continue;
            }

            hasWay = true;

            // What merely comes up to the edge or leaves it did not cut it.
            double along = part.DirectionAt(isShort ? middle : found.OnFirst).Dot(other.DirectionAt(found.OnSecond));
            if (Math.Abs(along) < ProofAccuracy.CosineOfPassing)
            {
                continue;
            }

            bool isAlong = along > 0;
            hasConventional |= isAlong;
            hasClimb |= !isAlong;
            if (other.Owner < first)
            {
                (first, firstPart) = (other.Owner, i);
                direction = isAlong ? CutDirection.Conventional : CutDirection.Climb;
            }
        }

        line = first < int.MaxValue ? cuts.LineOf(first) : 0;

        // Where only bits that went straight down reach, as in a drilled hole, no shorter stretch has a direction either.
        return isShort || !hasWay || hasConventional != hasClimb || (hasConventional && FinishesAll(part, cover, firstPart));
    }

    /// <summary>
    /// Whether one motion alone brought all of a stretch to within the tolerance of where it ends up: at its farthest it is nearer than the nearest of all near ones with the tolerance added.
    /// </summary>
    private bool FinishesAll(in PathPart part, PartTree cover, int index)
    {
        double nearest = double.PositiveInfinity;
        foreach (int i in near)
        {
            nearest = Math.Min(nearest, Distances.Between(part, cover.Parts[i]).Value + cover.Offset(i));
        }

        double there = Distances.Between(part.PointAt(0.5), cover.Parts[index], out _) + cover.Offset(index);
        return CoverSearch.Bound(part, cover, index, there, accuracy) <= nearest + target.Tolerance;
    }
}
