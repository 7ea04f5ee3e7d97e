using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Reading;

/// <summary>
/// The open lines of a drawing as the exact curves that were drawn. Cleaning works on lines and arcs, to which it fits everything else; a line that will be scaled needs
/// the curves themselves, or the error of the fit is scaled with it.
/// </summary>
public static class OpenLines
{
    /// <summary>Lengths of the exact and the cleaned line may differ by this share before they are taken for two different lines.</summary>
    private const double SameLength = 1e-3;

    /// <summary>
    /// Of more open lines than this none is looked for: a job takes one, and a block that is put in many times bears one number, so that each line would be looked for among all.
    /// </summary>
    private const int MostLines = 16;

    /// <summary>One for each open contour, in the order of <see cref="CleanOutlines.Open"/>. Where there are many, or curves were left out or lie on one another so that no single way leads along them, the cleaned lines and arcs stand for them.</summary>
    /// <param name="trace">A drawing as traced.</param>
    /// <param name="layer">The layer that it was traced with.</param>
    /// <param name="gap">The gap that it was traced with, mm; null for the usual.</param>
    public static ImmutableArray<Outline> Of(DrawingTrace trace, string? layer, double? gap)
    {
        ArgumentNullException.ThrowIfNull(trace);
        if (trace.Outlines.Open.Length > MostLines)
        {
            return [.. trace.Outlines.Open.Select(o => ContourCurves.Of(o.Contour))];
        }

        ILookup<int, DrawnEntity> byOrder = trace.Drawing.Entities.Where(e => layer is null || e.Layer == layer).ToLookup(e => e.Order);
        double widest = Math.Clamp(gap ?? CleaningOptions.UsualGap, ContourCleaner.SameEnd, CleaningOptions.WidestGap);
        return
        [
            .. trace.Outlines.Open.Select(open =>
            {
                Curve[] curves = [.. open.Sources.SelectMany(s => byOrder[s]).SelectMany(e => e.Path.Curves).Where(c => !DrawnCurves.IsNothing(c))];
                return (Array.Exists(curves, c => c is not (LineCurve or ArcCurve)) ? Along(open.Contour, curves, widest) : null) ?? ContourCurves.Of(open.Contour);
            }),
        ];
    }

    // Hand over hand: from where the contour begins, whichever curve has an end nearest to where the one before ended.
    private static Outline? Along(Contour contour, Curve[] curves, double gap)
    {
        var ends = new EndGrid(curves, gap);
        var row = new List<Curve>(curves.Length);
        Point2 at = contour.Vertices[0].Point;
        while (ends.TakeNearest(at) is { } next)
        {
            row.Add(next);
            at = next.End;
        }

        double length = row.Sum(c => c.Length);
        return row.Count > 0 && at.DistanceTo(contour.Vertices[^1].Point) <= gap && Math.Abs(length - contour.Length) <= (contour.Length * SameLength) + (gap * row.Count)
            ? Joined(row)
            : null;
    }

    // As the cleaner does: up to the usual gap both ends go to their middle, each curve turned and scaled to its new ends; a wider one is bridged by a line.
    // Null where a curve cannot be brought to its new ends without harm.
    private static Outline? Joined(List<Curve> row)
    {
        var joined = ImmutableArray.CreateBuilder<Curve>(row.Count);
        Point2 start = row[0].Start;
        for (int i = 0; i < row.Count; i++)
        {
            Point2 end = row[i].End;
            Point2 next = i + 1 < row.Count ? row[i + 1].Start : end;
            double apart = end.DistanceTo(next);
            Point2 to = apart > Accuracy.SamePoint && apart <= CleaningOptions.UsualGap ? end.Towards(next, 0.5) : end;
            if (Between(row[i], start, to) is not { } brought)
            {
                return null;
            }

            joined.Add(brought);
            if (apart > CleaningOptions.UsualGap)
            {
                joined.Add(new LineCurve(to, next));
            }

            start = apart > CleaningOptions.UsualGap || apart <= Accuracy.SamePoint ? next : to;
        }

        return new Outline(joined.ToImmutable(), false);
    }

    private static Curve? Between(Curve curve, Point2 start, Point2 end)
    {
        Point2 was = curve.End - curve.Start;
        Point2 becomes = end - start;
        if (curve.Start.DistanceTo(start) <= Accuracy.SamePoint && curve.End.DistanceTo(end) <= Accuracy.SamePoint)
        {
            return curve;
        }

        // Ends as near to each other as they are moved: the rest of the curve would go anywhere.
        if (was.Length <= 2 * CleaningOptions.UsualGap)
        {
            return null;
        }

        // Turn and scale as one complex factor.
        var turn = new Point2(was.Dot(becomes) / was.LengthSquared, was.Cross(becomes) / was.LengthSquared);
        var map = new Affine(turn, turn.Left, default);
        map = map with { Zero = start - map.Vector(curve.Start) };
        return curve is not SplineCurve spline || spline.Poles.All(p => DrawnCurves.IsWithinReach(map.Point(p))) ? map.Map(curve) : null;
    }

    /// <summary>The ends of curves by the square of a grid in which they lie, so that the nearest is found without looking at all.</summary>
    private sealed class EndGrid
    {
        private readonly Dictionary<(long, long), List<int>> _squares = [];
        private readonly Curve?[] _curves;
        private readonly double _gap;

        internal EndGrid(Curve[] curves, double gap)
        {
            _gap = gap;
            _curves = new Curve?[curves.Length];
            var middles = new HashSet<(long, long, long, long)>();
            for (int i = 0; i < curves.Length; i++)
            {
                // What is drawn twice is walked once.
                Point2 middle = curves[i].PointAt(0.5);
                Point2 ends = curves[i].Start + curves[i].End;
                if (!middles.Add((Step(middle.X), Step(middle.Y), Step(ends.X), Step(ends.Y))))
                {
                    continue;
                }

                _curves[i] = curves[i];
                Put(curves[i].Start, i);
                Put(curves[i].End, i);
            }
        }

        /// <summary>The curve with an end nearest to a place, within the gap, walked from that end; null when there is none. It is gone from the grid then.</summary>
        internal Curve? TakeNearest(Point2 at)
        {
            (int best, double least) = (-1, _gap);
            (long x, long y) = Square(at);
            for (long i = x - 1; i <= x + 1; i++)
            {
                for (long j = y - 1; j <= y + 1; j++)
                {
                    foreach (int k in _squares.GetValueOrDefault((i, j), []))
                    {
                        if (_curves[k] is { } curve && Math.Min(curve.Start.DistanceTo(at), curve.End.DistanceTo(at)) is var d && (d < least || (d == least && best < 0)))
                        {
                            (best, least) = (k, d);
                        }
                    }
                }
            }

            if (best < 0)
            {
                return null;
            }

            Curve taken = _curves[best]!;
            _curves[best] = null;
            return taken.Start.DistanceTo(at) <= taken.End.DistanceTo(at) ? taken : taken.Reversed();
        }

        private static long Step(double value) => (long)Math.Round(value / ContourCleaner.SameEnd);

        private void Put(Point2 end, int curve)
        {
            (long, long) square = Square(end);
            if (!_squares.TryGetValue(square, out List<int>? there))
            {
                _squares.Add(square, there = []);
            }

            there.Add(curve);
        }

        private (long X, long Y) Square(Point2 p) => ((long)Math.Floor(p.X / _gap), (long)Math.Floor(p.Y / _gap));
    }
}
