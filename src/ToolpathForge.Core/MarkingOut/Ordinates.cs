using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;

namespace ToolpathForge.MarkingOut;

/// <summary>Where a curve stands above one place of the board's lower edge.</summary>
/// <param name="Along">From where the curve begins, towards the tip, mm.</param>
/// <param name="Heights">Square up from the lower edge to the curve, mm, ascending; several where the curve passes the place more than once.</param>
/// <param name="IsCorner">Whether parts of the curve meet here, or it begins or ends.</param>
public sealed record Ordinate(double Along, ImmutableArray<double> Heights, bool IsCorner);

/// <summary>
/// The curve as a row of heights: marked square up from the lower edge and joined along a bent batten. Taken from the exact curve, not from its fit.
/// </summary>
public static class Ordinates
{
    /// <summary>The least step, mm: nearer than this, pencil marks run into each other (common practice).</summary>
    public const double LeastStep = 3;

    /// <summary>Places nearer than this are one, mm.</summary>
    private const double SamePlace = 1e-6;

    private static readonly ImmutableArray<double> s_inchSteps = [.. ((double[])[0.25, 0.5, 1, 2, 4]).Select(s => s * Length.MillimetresPerInch)];
    private static readonly ImmutableArray<double> s_metricSteps = [5, 10, 20, 25, 50, 100];

    /// <summary>The finest usual step that asks for no more than sixteen heights, mm.</summary>
    /// <param name="run">How far the curve reaches along the board, mm.</param>
    /// <param name="unit">The unit of the rule.</param>
    public static double UsualStep(double run, LengthUnit unit)
    {
        ImmutableArray<double> steps = unit == LengthUnit.Inch ? s_inchSteps : s_metricSteps;
        foreach (double step in steps)
        {
            if (run / step <= 16 + 1e-9)
            {
                return step;
            }
        }

        return steps[^1];
    }

    /// <summary>The heights at whole multiples of a step, and wherever parts of the curve meet.</summary>
    /// <param name="curves">The curve, from the lower edge (Y = 0) on, in order; X towards the tip.</param>
    /// <param name="step">mm, at least <see cref="LeastStep"/>.</param>
    public static ImmutableArray<Ordinate> Of(ImmutableArray<Curve> curves, double step)
    {
        var across = new Point2(1, 0);
        double low = curves.Min(c => CurveExtent.Along(c, across).Low);
        double high = curves.Max(c => CurveExtent.Along(c, across).High);
        Point2[] joints = [curves[0].Start, .. curves.Select(c => c.End)];
        var places = new List<(double Along, bool IsCorner)>();
        foreach (Point2 joint in joints.OrderBy(j => j.X))
        {
            if (places.Count == 0 || joint.X - places[^1].Along > SamePlace)
            {
                places.Add((joint.X, true));
            }
        }

        for (double k = Math.Ceiling((low - SamePlace) / step); k * step <= high + SamePlace; k++)
        {
            double at = k * step;
            if (!places.Exists(p => Math.Abs(p.Along - at) <= SamePlace))
            {
                places.Add((at, false));
            }
        }

        return
        [
            .. places.OrderBy(p => p.Along).Select(p => new Ordinate(
                p.Along,
                Distinct([.. joints.Where(j => Math.Abs(j.X - p.Along) <= SamePlace).Select(j => j.Y), .. curves.SelectMany(c => HeightsAt(c, p.Along))]),
                p.IsCorner)),
        ];
    }

    // Cut where it turns back along X, a curve passes a place once in each piece; a piece straight up passes all its heights at once and is told by its ends.
    private static IEnumerable<double> HeightsAt(Curve curve, double along)
    {
        List<double> turns = CurveExtent.Turns(curve, new Point2(1, 0));
        for (int i = 0; i + 1 < turns.Count; i++)
        {
            double from = turns[i];
            double to = turns[i + 1];
            double a = curve.PointAt(from).X - along;
            double b = curve.PointAt(to).X - along;
            if (Math.Abs(a - b) <= SamePlace || (a > 0 && b > 0) || (a < 0 && b < 0))
            {
                continue;
            }

            bool rises = b > a;
            for (int halving = 0; halving < 60; halving++)
            {
                double middle = (from + to) / 2;
                if (curve.PointAt(middle).X < along == rises)
                {
                    from = middle;
                }
                else
                {
                    to = middle;
                }
            }

            yield return curve.PointAt((from + to) / 2).Y;
        }
    }

    private static ImmutableArray<double> Distinct(IEnumerable<double> heights)
    {
        var distinct = ImmutableArray.CreateBuilder<double>();
        foreach (double height in heights.Order())
        {
            if (distinct.Count == 0 || height - distinct[^1] > 1e-3)
            {
                distinct.Add(height);
            }
        }

        return distinct.ToImmutable();
    }
}
