using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>
/// A spline with numbers that twelve decimals hold well. Stretching or shifting all knots alike leaves the curve as it is, and so does multiplying all weights by one number
/// (both only say how fast a point runs along it).
/// </summary>
/// <param name="Degree">1 to <see cref="SplineCurve.HighestDegree"/>.</param>
/// <param name="Poles">Control points, mm.</param>
/// <param name="Knots">As many as control points and degree and one more; neighbours are equal or at least <see cref="LeastSpan"/> apart.</param>
/// <param name="Weights">One for each control point; empty when all count alike.</param>
internal readonly record struct SplineForm(int Degree, ImmutableArray<Point2> Poles, ImmutableArray<double> Knots, ImmutableArray<double> Weights)
{
    /// <summary>The distance to which knots are stretched where they are out of the ordinary: its last digit that a double holds is the twelfth decimal.</summary>
    private const double Stretched = 1000;

    /// <summary>Knots up to here are as near to the twelfth decimal as coordinates are.</summary>
    private const double LargestPlainKnot = 1e4;

    /// <summary>
    /// Knots nearer than this would lose digits that tell the shape. A point of the curve moves with a knot by at most degree times the way between two control points over the
    /// distance of knots: for degree 7 and a metre that is 3.5e-7 mm at this distance.
    /// </summary>
    private const double LeastSpan = 0.01;

    /// <summary>Weights below this are multiplied up.</summary>
    private const double LeastPlainWeight = 0.1;

    /// <summary>Weights above this have digits that no double holds with twelve decimals, and are divided down.</summary>
    private const double LargestPlainWeight = 1e4;

    /// <summary>
    /// The spline as it is to be written. One whose knots lie too unevenly even when stretched comes as its pieces between knots, which have no inner ones.
    /// </summary>
    internal static IEnumerable<SplineForm> Of(SplineCurve curve)
    {
        ImmutableArray<double> knots = curve.Knots;
        if (!IsPlain(knots))
        {
            (double first, double whole) = (knots[0], knots[^1] - knots[0]);
            knots = [.. knots.Select(k => (k - first) / whole * Stretched)];
        }

        return IsPlain(knots)
            ? [new SplineForm(curve.Degree, curve.Poles, knots, Plain(curve.Weights))]
            : curve.Parts(0, 1).Select(part => new SplineForm(part.Degree, part.Poles, part.Knots, Plain(part.Weights)));
    }

    // Written so that what is not a number is not plain: the distance of two huge knots may be infinite.
    private static bool IsPlain(ImmutableArray<double> knots)
    {
        for (int i = 0; i < knots.Length; i++)
        {
            bool apart = i == 0 || knots[i] == knots[i - 1] || knots[i] - knots[i - 1] >= LeastSpan;
            if (!(Math.Abs(knots[i]) <= LargestPlainKnot && apart))
            {
                return false;
            }
        }

        return true;
    }

    private static ImmutableArray<double> Plain(ImmutableArray<double> weights)
    {
        if (weights.IsEmpty || (weights.Min() >= LeastPlainWeight && weights.Max() <= LargestPlainWeight))
        {
            return weights;
        }

        double least = weights.Min();
        return [.. weights.Select(w => w / least)];
    }
}
