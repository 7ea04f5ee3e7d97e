namespace ToolpathForge.Geometry;

/// <summary>
/// One polynomial or rational piece of a spline, u from 0 to 1: point = (X, Y)/W. W is of degree 0 for a polynomial piece and of the degree of X and Y otherwise;
/// its coefficients are more than 0, so the piece stays within the hull of its poles.
/// </summary>
internal sealed class BezierPiece(Bernstein numeratorX, Bernstein numeratorY, Bernstein denominator)
{
    /// <summary>A derivative, or a way to the next pole, shorter than this share of the piece's size has no direction of its own.</summary>
    private const double NoSpeed = 1e-9;

    private readonly Bernstein _dx = numeratorX.Derivative();
    private readonly Bernstein _dy = numeratorY.Derivative();
    private readonly Bernstein _dw = denominator.Derivative();

    public Bernstein X { get; } = numeratorX;

    public Bernstein Y { get; } = numeratorY;

    public Bernstein W { get; } = denominator;

    public bool IsRational => W.Degree > 0;

    /// <summary>Largest distance from the first pole to another, mm.</summary>
    public double Size
    {
        get
        {
            double size = 0;
            for (int i = 1; i <= X.Degree; i++)
            {
                size = Math.Max(size, Pole(i).DistanceTo(Pole(0)));
            }

            return size;
        }
    }

    public Point2 Pole(int i)
    {
        double w = W[IsRational ? i : 0];
        return new Point2(X[i] / w, Y[i] / w);
    }

    public Point2 PointAt(double u)
    {
        if (u is <= 0 or >= 1)
        {
            // The ends come out exactly as they were given.
            return Pole(u <= 0 ? 0 : X.Degree);
        }

        double w = W.At(u);
        return new Point2(X.At(u) / w, Y.At(u) / w);
    }

    public Point2 FirstDerivative(double u)
    {
        Point2 p = PointAt(u);
        double w = W.At(u);
        double w1 = _dw.At(u);
        return new Point2((_dx.At(u) - (p.X * w1)) / w, (_dy.At(u) - (p.Y * w1)) / w);
    }

    public Point2 SecondDerivative(double u)
    {
        Point2 p = PointAt(u);
        Point2 first = FirstDerivative(u);
        double w = W.At(u);
        double w1 = _dw.At(u);
        double w2 = _dw.Derivative().At(u);
        return new Point2(
            (_dx.Derivative().At(u) - (2 * first.X * w1) - (p.X * w2)) / w,
            (_dy.Derivative().At(u) - (2 * first.Y * w1) - (p.Y * w2)) / w);
    }

    /// <summary>The part between two parameters, stretched to 0..1.</summary>
    public BezierPiece Part(double from, double to) =>
        from <= 0 && to >= 1 ? this : new BezierPiece(X.Part(from, to), Y.Part(from, to), IsRational ? W.Part(from, to) : W);

    /// <summary>
    /// Unit direction of travel. Where the piece stands still: the direction in which it leaves that place, or at its end the one in which it arrives.
    /// Zero for a piece that is a point.
    /// </summary>
    public Point2 DirectionAt(double u)
    {
        double least = NoSpeed * Size;
        Point2 first = FirstDerivative(u);
        if (first.Length > least)
        {
            return first.Unit();
        }

        // The tangent at an end runs to the first pole that lies apart from it.
        bool arriving = u >= 1;
        BezierPiece rest = arriving ? this : Part(u, 1);
        Point2 at = PointAt(u);
        for (int i = 1; i <= X.Degree; i++)
        {
            Point2 way = arriving ? at - rest.Pole(X.Degree - i) : rest.Pole(i) - at;
            if (way.Length > least)
            {
                return way.Unit();
            }
        }

        return default;
    }

    /// <summary>The piece in other coordinates: measured from a point, turned so that a direction becomes the X axis.</summary>
    public (Bernstein Along, Bernstein Across) SeenFrom(Point2 origin, Point2 direction)
    {
        Bernstein u = X - (origin.X * W);
        Bernstein v = Y - (origin.Y * W);
        return ((direction.X * u) + (direction.Y * v), (direction.X * v) - (direction.Y * u));
    }
}
