using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>A stretch of a contour that a round bit cannot touch: a notch, a hollow tighter than the bit, a narrow slot.</summary>
/// <param name="Contour">Which contour of those given, from 0.</param>
/// <param name="At">The point of the stretch that keeps the most material in front of it, mm.</param>
/// <param name="Left">
/// How much stays there, mm: from <paramref name="At"/> to the nearer of the two places where the bit last touches. Never too small; too large only where
/// a nook opposite lets the bit come nearer than from either end. Infinite when the bit touches nowhere on the contour.
/// </param>
/// <param name="From">Where the stretch begins, along the contour.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Length">Length of contour that stays untouched, mm.</param>
public sealed record Unreached(int Contour, Point2 At, double Left, Point2 From, Point2 To, double Length);

/// <summary>Where a round bit cannot reach, and how much it leaves.</summary>
public static class Reach
{
    /// <summary>What a bit leaves of one contour.</summary>
    /// <param name="contour">One that does not cross itself. An open contour is taken to end in nothing.</param>
    /// <param name="bitRadius">More than 0, mm.</param>
    /// <param name="bitSide">The side the bit is on: the right of a counter-clockwise outline or a clockwise hole.</param>
    /// <param name="leastLeft">Less than this is not told, mm.</param>
    public static ImmutableArray<Unreached> Of(Contour contour, double bitRadius, Side bitSide, double leastLeft = ArcFit.FinestTolerance) =>
        Of([contour], bitRadius, bitSide, leastLeft);

    /// <summary>What a bit leaves of several contours that are in each other's way: an outline with its holes, pieces side by side.</summary>
    /// <param name="contours">Contours that cross neither themselves nor each other, all with the bit on the same side.</param>
    /// <param name="bitRadius">More than 0, mm.</param>
    /// <param name="bitSide">The side the bit is on.</param>
    /// <param name="leastLeft">Less than this is not told, mm.</param>
    /// <returns>Contour by contour, in the order of travel.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A radius that is not more than 0.</exception>
    public static ImmutableArray<Unreached> Of(IReadOnlyList<Contour> contours, double bitRadius, Side bitSide, double leastLeft = ArcFit.FinestTolerance)
    {
        if (!(bitRadius > Accuracy.SamePoint && double.IsFinite(bitRadius)))
        {
            throw new ArgumentOutOfRangeException(nameof(bitRadius), bitRadius, "A bit has a radius.");
        }

        ImmutableArray<Unreached>.Builder found = ImmutableArray.CreateBuilder<Unreached>();
        foreach (IGrouping<int, ContactStretch> own in RollingContact.Roll(contours, bitRadius, bitSide).GroupBy(s => s.Contour))
        {
            ContactStretch[] stretches = [.. own];
            int firstTouch = Array.FindIndex(stretches, s => s.Touches);
            bool closed = contours[own.Key].IsClosed;

            // A closed contour is read from a touch on, so that no stretch is torn apart at its first vertex.
            int start = closed && firstTouch > 0 ? firstTouch : 0;
            var run = new List<ContactStretch>();
            ContactStretch? before = null;
            for (int k = 0; k < stretches.Length; k++)
            {
                ContactStretch s = stretches[(start + k) % stretches.Length];
                if (!s.Touches)
                {
                    run.Add(s);
                    continue;
                }

                Tell(run, before?.Last, s.First, bitRadius, leastLeft, found);
                run.Clear();
                before = s;
            }

            Tell(run, before?.Last, closed && firstTouch >= 0 ? stretches[start].First : null, bitRadius, leastLeft, found);
        }

        return found.ToImmutable();
    }

    private static void Tell(List<ContactStretch> run, Point2? before, Point2? after, double radius, double leastLeft, ImmutableArray<Unreached>.Builder found)
    {
        double length = run.Sum(s => s.Piece.Length);
        if (length <= Accuracy.SamePoint)
        {
            return;
        }

        double Left(Point2 p) => Math.Min(
            before is { } b ? b.DistanceTo(p) : double.PositiveInfinity,
            after is { } a ? a.DistanceTo(p) : double.PositiveInfinity) - radius;

        Point2 at = run[0].Piece.PointAt(0.5);
        double most = Left(at);
        foreach (ContactStretch s in run)
        {
            foreach (Point2 p in Extremes(s.Piece, before ?? after, after ?? before))
            {
                double left = Left(p);
                if (left > most)
                {
                    (most, at) = (left, p);
                }
            }
        }

        if (most >= leastLeft)
        {
            found.Add(new Unreached(run[0].Contour, at, most, run[0].Piece.Start, run[^1].Piece.End, length));
        }
    }

    /// <summary>Every point of a piece at which the distance to the nearer of two points can be greatest.</summary>
    private static IEnumerable<Point2> Extremes(Segment piece, Point2? a, Point2? b)
    {
        yield return piece.Start;
        yield return piece.End;
        if (a is not { } first || b is not { } second || piece.Start == piece.End)
        {
            yield break;
        }

        var shares = new List<double>();
        if (first.DistanceTo(second) > Accuracy.SamePoint)
        {
            Point2 middle = first.Towards(second, 0.5);
            Carriers.CrossLine(piece, middle, middle + (second - first).Left, shares);
        }

        if (!piece.IsLine)
        {
            // The far point of a circle lies on the line through its centre.
            Point2 center = piece.Center;
            foreach (Point2 p in (Point2[])[first, second])
            {
                if (p.DistanceTo(center) > Accuracy.SamePoint)
                {
                    Carriers.CrossLine(piece, p, center, shares);
                }
            }
        }

        foreach (double share in shares)
        {
            yield return piece.PointAt(share);
        }
    }
}
