using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>
/// A B-spline, polynomial or rational, of degree 1 to <see cref="HighestDegree"/>; a Bézier curve is the one without inner knots. Immutable.
/// <para>Its parameter t runs evenly over the knots from the first to the last that bear the curve.</para>
/// </summary>
public sealed record SplineCurve : Curve
{
    /// <summary>The highest degree that is taken: what drawings hold is 3, rarely 5.</summary>
    public const int HighestDegree = 7;

    /// <summary>Weights farther apart than this are refused: the curve would be a point for most of its parameters.</summary>
    public const double LargestWeightRatio = 1e6;

    private readonly ImmutableArray<BezierPiece> _pieces;
    private readonly ImmutableArray<double> _breaks;

    private SplineCurve(int degree, ImmutableArray<Point2> poles, ImmutableArray<double> weights, ImmutableArray<double> knots)
    {
        Degree = degree;
        Poles = poles;
        Weights = weights;
        Knots = knots;
        (_pieces, _breaks) = BezierPieces.Of(degree, poles, weights, knots);
    }

    /// <summary>The degree.</summary>
    public int Degree { get; }

    /// <summary>The control points.</summary>
    public ImmutableArray<Point2> Poles { get; }

    /// <summary>One weight for each control point; empty when all count alike.</summary>
    public ImmutableArray<double> Weights { get; }

    /// <summary>The knots, as many as control points and degree and one more; they never fall.</summary>
    public ImmutableArray<double> Knots { get; }

    /// <summary>The pieces between distinct knots, in order.</summary>
    internal ImmutableArray<BezierPiece> Pieces => _pieces;

    /// <summary>A Bézier curve of degree one less than the number of its control points.</summary>
    /// <param name="poles">2 to 8 control points.</param>
    public static SplineCurve Bezier(params ReadOnlySpan<Point2> poles) => RationalBezier(poles, []);

    /// <summary>A rational Bézier curve.</summary>
    /// <param name="poles">2 to 8 control points.</param>
    /// <param name="weights">One for each, more than 0; or none.</param>
    public static SplineCurve RationalBezier(ReadOnlySpan<Point2> poles, ReadOnlySpan<double> weights)
    {
        int degree = poles.Length - 1;
        ImmutableArray<double> knots = [.. Enumerable.Repeat(0.0, degree + 1), .. Enumerable.Repeat(1.0, degree + 1)];
        return BSpline(degree, poles, knots.AsSpan(), weights);
    }

    /// <summary>A B-spline.</summary>
    /// <param name="degree">1 to <see cref="HighestDegree"/>.</param>
    /// <param name="poles">At least one more than the degree; finite, within <see cref="Accuracy.LargestCoordinate"/>.</param>
    /// <param name="knots">poles + degree + 1 of them, finite, never falling; no inner knot more often than the degree (the curve would have a gap).</param>
    /// <param name="weights">One for each control point, more than 0, within <see cref="LargestWeightRatio"/> of each other; or none.</param>
    /// <exception cref="ArgumentException">What is given is none of this; the message says where.</exception>
    public static SplineCurve BSpline(int degree, ReadOnlySpan<Point2> poles, ReadOnlySpan<double> knots, ReadOnlySpan<double> weights = default)
    {
        SplineChecks.Check(degree, poles, knots, weights);
        bool plain = weights.IndexOfAnyExcept(weights.Length > 0 ? weights[0] : 1) < 0;
        return new SplineCurve(degree, [.. poles], plain ? [] : [.. weights], [.. knots]);
    }

    /// <inheritdoc/>
    public override double Length => _pieces.Sum(p => ArcLength.Between(p.FirstDerivative, 0, 1));

    /// <inheritdoc/>
    public override Point2 PointAt(double t)
    {
        (BezierPiece piece, double u, _) = At(t);
        return piece.PointAt(u);
    }

    /// <inheritdoc/>
    public override Point2 FirstDerivative(double t)
    {
        (BezierPiece piece, double u, double span) = At(t);
        return piece.FirstDerivative(u) / span;
    }

    /// <inheritdoc/>
    public override Point2 SecondDerivative(double t)
    {
        (BezierPiece piece, double u, double span) = At(t);
        return piece.SecondDerivative(u) / (span * span);
    }

    /// <summary>Unit direction of travel. Where the curve stands still: the direction in which it leaves the place, or at its end that in which it arrives.</summary>
    /// <inheritdoc/>
    public override Point2 DirectionAt(double t)
    {
        (BezierPiece piece, double u, _) = At(t);
        return piece.DirectionAt(u);
    }

    /// <inheritdoc/>
    public override Curve Reversed() => new SplineCurve(
        Degree, [.. Poles.Reverse()], [.. Weights.Reverse()], [.. Knots.Reverse().Select(k => Knots[0] + Knots[^1] - k)]);

    /// <inheritdoc/>
    public override Curve Placed(Placement placement) => new SplineCurve(Degree, [.. Poles.Select(placement.Apply)], Weights, Knots);

    /// <summary>Degree, control points, weights and knots with every digit.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"degree {Degree}, poles {string.Join(' ', Poles)}, weights {Written(Weights)}, knots {Written(Knots)}");

    private static string Written(ImmutableArray<double> numbers) =>
        string.Join(' ', numbers.Select(n => n.ToString(System.Globalization.CultureInfo.InvariantCulture)));

    /// <summary>What lies between two parameters, as Bézier curves between the knots.</summary>
    /// <param name="from">0 to 1.</param>
    /// <param name="to">More than <paramref name="from"/>, at most 1.</param>
    public IEnumerable<SplineCurve> Parts(double from, double to)
    {
        for (int i = 0; i < _pieces.Length; i++)
        {
            double span = _breaks[i + 1] - _breaks[i];
            double low = Math.Max(0, (from - _breaks[i]) / span);
            double high = Math.Min(1, (to - _breaks[i]) / span);
            if (high > low)
            {
                BezierPiece part = _pieces[i].Part(low, high);
                int count = part.X.Degree + 1;
                Point2[] poles = [.. Enumerable.Range(0, count).Select(part.Pole)];
                double[] weights = part.IsRational ? [.. Enumerable.Range(0, count).Select(k => part.W[k])] : [];
                yield return RationalBezier(poles, weights);
            }
        }
    }

    /// <summary>
    /// Parameters within the curve between which the coordinate along an axis only rises or only falls, in order: the knots, and the roots of the
    /// coordinate's derivative, whose sign is that of x'w - xw'.
    /// </summary>
    /// <param name="axis">Unit direction.</param>
    internal IEnumerable<double> TurnsAlong(Point2 axis)
    {
        for (int i = 0; i < _pieces.Length; i++)
        {
            if (i > 0)
            {
                yield return _breaks[i];
            }

            BezierPiece piece = _pieces[i];
            (Bernstein x, _) = piece.SeenFrom(piece.Pole(0), axis);
            Bernstein slope = piece.IsRational ? (x.Derivative() * piece.W) - (x * piece.W.Derivative()) : x.Derivative();
            foreach (double u in slope.Roots(1e-14 * slope.Magnitude).Where(u => u is > 0 and < 1))
            {
                yield return _breaks[i] + (u * (_breaks[i + 1] - _breaks[i]));
            }
        }
    }

    private (BezierPiece Piece, double U, double Span) At(double t)
    {
        int piece = 0;
        while (piece < _pieces.Length - 1 && t >= _breaks[piece + 1])
        {
            piece++;
        }

        double span = _breaks[piece + 1] - _breaks[piece];
        return (_pieces[piece], (t - _breaks[piece]) / span, span);
    }
}
