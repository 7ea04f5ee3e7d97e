namespace ToolpathForge.Geometry;

/// <summary>
/// Bounds the distance between an arc and the pieces of a spline that it stands for, both ways, by polynomials alone.
/// <para>
/// With q from a point of the circle where its tangent and normal are T and N, k its curvature and F = q·N - k q²/2, the signed distance of q from the circle is
/// 2F/(1 + √(1 - 2kF)): it grows with F. So it is greatest where F' = 0, and those places are isolated as the roots of a polynomial.
/// The radial distance is the distance both ways if the pieces run round the circle's centre in one sense and as far as the arc does, no more and no less;
/// the sense is the sign of another polynomial.
/// </para>
/// </summary>
internal static class ArcProof
{
    /// <summary>Rounding in the coefficients of a product of a few polynomials, as a share of the largest of them.</summary>
    private const double CoefficientNoise = 1e-14;

    /// <summary>Curve and arc end in the same points, so their sweeps about the centre are equal or a whole turn apart, radians.</summary>
    private const double SameSweep = 1;

    /// <summary>The largest distance, mm; infinite where it cannot be vouched for.</summary>
    /// <param name="pieces">What the arc stands for, from one of its ends to the other.</param>
    /// <param name="on">A point of the circle.</param>
    /// <param name="tangent">Unit direction of travel there.</param>
    /// <param name="curvature">Signed, positive to the left, 1/mm.</param>
    /// <param name="sweep">Signed sweep of the arc, radians.</param>
    public static double Deviation(IEnumerable<BezierPiece> pieces, Point2 on, Point2 tangent, double curvature, double sweep)
    {
        double most = 0;
        double swept = 0;
        foreach (BezierPiece piece in pieces)
        {
            (Bernstein along, Bernstein across) = piece.SeenFrom(on, tangent);
            if (!RunsRound(along, across, piece.W, curvature))
            {
                return double.PositiveInfinity;
            }

            swept += SweepOf(along, across, piece.W, curvature);
            most = Math.Max(most, LargestPower(along, across, piece.W, curvature));
        }

        if (Math.Abs(swept - sweep) > SameSweep)
        {
            return double.PositiveInfinity;
        }

        // Inside the circle F is the larger for the same distance.
        return Math.Max(Distance(most, curvature), Distance(-most, curvature));
    }

    private static double Distance(double power, double curvature) =>
        Math.Abs(2 * power / (1 + Math.Sqrt(Math.Max(0, 1 - (2 * curvature * power)))));

    private static double LargestPower(Bernstein along, Bernstein across, Bernstein w, double curvature)
    {
        Bernstein power = (across * w) - (curvature / 2 * ((along * along) + (across * across)));
        Bernstein slope = w.Degree == 0
            ? power.Derivative()
            : (power.Derivative() * w) - (2 * (power * w.Derivative()));
        double noise = CoefficientNoise * slope.Magnitude;
        double most = Math.Max(Math.Abs(power[0]) / (w[0] * w[0]), Math.Abs(power[power.Degree]) / (w[w.Degree] * w[w.Degree]));
        foreach (double u in slope.Roots(noise))
        {
            double weight = w.At(u);
            most = Math.Max(most, Math.Abs(power.At(u)) / (weight * weight));
        }

        return most;
    }

    private static bool RunsRound(Bernstein along, Bernstein across, Bernstein w, double curvature)
    {
        Bernstein goingAlong = along.Derivative();
        Bernstein goingAcross = across.Derivative();
        if (w.Degree > 0)
        {
            goingAlong = (goingAlong * w) - (along * w.Derivative());
            goingAcross = (goingAcross * w) - (across * w.Derivative());
        }

        Bernstein sense = ((w - (curvature * across)) * goingAlong) + (curvature * (along * goingAcross));
        return sense.IsAbove(-CoefficientNoise * sense.Magnitude);
    }

    private static double SweepOf(Bernstein along, Bernstein across, Bernstein w, double curvature)
    {
        // Towards the centre, times the curvature, so that a straight line does not need one.
        Point2 Inwards(double u)
        {
            double weight = w.At(u);
            return new Point2(-curvature * along.At(u) / weight, 1 - (curvature * across.At(u) / weight));
        }

        Point2 first = Inwards(0), second = Inwards(0.5), third = Inwards(1);
        return Biarc.AngleBetween(first, second) + Biarc.AngleBetween(second, third);
    }
}
