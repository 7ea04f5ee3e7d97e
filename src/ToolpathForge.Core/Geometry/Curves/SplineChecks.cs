namespace ToolpathForge.Geometry;

/// <summary>What is asked of the numbers of a spline before one is made of them.</summary>
internal static class SplineChecks
{
    public static void Check(int degree, ReadOnlySpan<Point2> poles, ReadOnlySpan<double> knots, ReadOnlySpan<double> weights)
    {
        if (degree is < 1 or > SplineCurve.HighestDegree)
        {
            throw new ArgumentException(FormattableString.Invariant($"A spline of degree {degree} is not taken: 1 to {SplineCurve.HighestDegree}."), nameof(degree));
        }

        if (poles.Length < degree + 1)
        {
            throw new ArgumentException(FormattableString.Invariant($"Degree {degree} needs at least {degree + 1} control points."), nameof(poles));
        }

        foreach (Point2 p in poles)
        {
            // Written so that NaN is refused as well.
            if (!(Math.Abs(p.X) <= Accuracy.LargestCoordinate && Math.Abs(p.Y) <= Accuracy.LargestCoordinate))
            {
                throw new ArgumentException(FormattableString.Invariant($"Control point {p} is not usable."), nameof(poles));
            }
        }

        CheckWeights(poles.Length, weights);
        CheckKnots(degree, poles.Length, knots);
    }

    private static void CheckWeights(int poles, ReadOnlySpan<double> weights)
    {
        if (weights.Length == 0)
        {
            return;
        }

        if (weights.Length != poles)
        {
            throw new ArgumentException("There must be one weight for each control point, or none.", nameof(weights));
        }

        double least = double.PositiveInfinity, most = 0;
        foreach (double w in weights)
        {
            if (!(w > 0 && double.IsFinite(w)))
            {
                throw new ArgumentException(FormattableString.Invariant($"A weight of {w} is not usable: weights are more than 0."), nameof(weights));
            }

            (least, most) = (Math.Min(least, w), Math.Max(most, w));
        }

        if (most > least * SplineCurve.LargestWeightRatio)
        {
            throw new ArgumentException("The weights are too far apart.", nameof(weights));
        }
    }

    private static void CheckKnots(int degree, int poles, ReadOnlySpan<double> knots)
    {
        if (knots.Length != poles + degree + 1)
        {
            throw new ArgumentException(FormattableString.Invariant($"{poles} control points of degree {degree} need {poles + degree + 1} knots; there are {knots.Length}."), nameof(knots));
        }

        for (int i = 0; i < knots.Length; i++)
        {
            if (!double.IsFinite(knots[i]) || (i > 0 && knots[i] < knots[i - 1]))
            {
                throw new ArgumentException(FormattableString.Invariant($"Knot {i} is not a number, or less than the one before."), nameof(knots));
            }
        }

        double first = knots[degree], last = knots[poles];
        if (!(first < last))
        {
            throw new ArgumentException("The knots leave no curve.", nameof(knots));
        }

        // Knots i to i + degree equal within the curve: the point before them and the point after are not one.
        for (int i = 1; i + degree < knots.Length - 1; i++)
        {
            if (knots[i] == knots[i + degree] && knots[i] > first && knots[i] < last)
            {
                throw new ArgumentException(FormattableString.Invariant($"Knot {knots[i]} stands there too often: the curve has a gap."), nameof(knots));
            }
        }
    }
}
