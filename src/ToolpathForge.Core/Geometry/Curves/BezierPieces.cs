using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>Takes a B-spline apart into Bézier pieces: pole j of the piece over [a, b] is the spline's blossom at a, a, .., b, b with j times b (Ramshaw).</summary>
internal static class BezierPieces
{
    /// <summary>The pieces and, from 0 to 1, where each begins and the last ends.</summary>
    public static (ImmutableArray<BezierPiece> Pieces, ImmutableArray<double> Breaks) Of(
        int degree, ImmutableArray<Point2> poles, ImmutableArray<double> weights, ImmutableArray<double> knots)
    {
        double first = knots[degree];
        double whole = knots[poles.Length] - first;
        ImmutableArray<BezierPiece>.Builder pieces = ImmutableArray.CreateBuilder<BezierPiece>();
        ImmutableArray<double>.Builder breaks = ImmutableArray.CreateBuilder<double>();
        breaks.Add(0);
        for (int span = degree; span < poles.Length; span++)
        {
            double a = knots[span];
            double b = knots[span + 1];
            double end = (b - first) / whole;
            if (end > breaks[^1])
            {
                pieces.Add(Piece(degree, poles, weights, knots, span, a, b));
                breaks.Add(end);
            }
        }

        return (pieces.ToImmutable(), breaks.ToImmutable());
    }

    private static BezierPiece Piece(
        int degree, ImmutableArray<Point2> poles, ImmutableArray<double> weights, ImmutableArray<double> knots, int span, double a, double b)
    {
        bool rational = weights.Length > 0;
        var x = new double[degree + 1];
        var y = new double[degree + 1];
        var w = new double[rational ? degree + 1 : 1];
        w[0] = 1;
        Span<double> dx = stackalloc double[degree + 1];
        Span<double> dy = stackalloc double[degree + 1];
        Span<double> dw = stackalloc double[degree + 1];
        for (int j = 0; j <= degree; j++)
        {
            for (int i = 0; i <= degree; i++)
            {
                int pole = span - degree + i;
                dw[i] = rational ? weights[pole] : 1;
                dx[i] = poles[pole].X * dw[i];
                dy[i] = poles[pole].Y * dw[i];
            }

            for (int r = 1; r <= degree; r++)
            {
                double argument = r <= degree - j ? a : b;
                for (int i = degree; i >= r; i--)
                {
                    double low = knots[span - degree + i];
                    double high = knots[span + 1 + i - r];
                    double share = (argument - low) / (high - low);
                    dx[i] = Between(dx[i - 1], dx[i], share);
                    dy[i] = Between(dy[i - 1], dy[i], share);
                    dw[i] = Between(dw[i - 1], dw[i], share);
                }
            }

            (x[j], y[j]) = (dx[degree], dy[degree]);
            if (rational)
            {
                w[j] = dw[degree];
            }
        }

        return new BezierPiece(new Bernstein(x), new Bernstein(y), new Bernstein(w));
    }

    // Exact at both ends, so that clamped ends are the poles themselves.
    private static double Between(double a, double b, double share) => ((1 - share) * a) + (share * b);
}
