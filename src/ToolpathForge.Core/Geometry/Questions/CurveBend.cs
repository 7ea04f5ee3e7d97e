namespace ToolpathForge.Geometry;

/// <summary>The place at which an exact curve bends most, hollow seen from one side.</summary>
/// <param name="Radius">mm, more than 0.</param>
/// <param name="At">Where, mm.</param>
public readonly record struct CurveBend(double Radius, Point2 At)
{
    /// <summary>Curvature below this is none, 1/mm: nothing that is cut bends so little.</summary>
    private const double NoCurvature = 1e-9;

    /// <summary>A spline that anywhere moves slower than this share of its greatest speed stands still there: its curvature is without bound, or rounding.</summary>
    private const double StandsStill = 1e-4;

    /// <summary>
    /// The tightest bend of a curve that is hollow seen from a side. Null when it is hollow nowhere, and for a spline that stands still somewhere (a handle of no length): its
    /// curvature grows there beyond all bounds over a length that nobody could cut, so that the radius says nothing.
    /// </summary>
    /// <param name="curve">Any curve.</param>
    /// <param name="bitSide">The side the bit is on, seen in the direction of travel.</param>
    public static CurveBend? Tightest(Curve curve, Side bitSide)
    {
        switch (curve)
        {
            case ArcCurve arc:
                return Of(arc, [0.5], bitSide);
            case EllipseCurve ellipse:
                return Of(ellipse, AxisEnds(ellipse), bitSide);
            case SplineCurve spline:
                CurveBend? tightest = null;
                foreach (BezierPiece piece in spline.Pieces)
                {
                    (CurveBend? bend, bool still) = Of(piece, bitSide);
                    if (still)
                    {
                        return null;
                    }

                    tightest = Tighter(tightest, bend);
                }

                return tightest;
            default:
                return null;
        }
    }

    /// <summary>The tighter of two; the first of equals.</summary>
    internal static CurveBend? Tighter(CurveBend? a, CurveBend? b) => a is not { } known || (b is { } other && other.Radius < known.Radius) ? b : a;

    private static CurveBend? Of(Curve curve, IEnumerable<double> places, Side bitSide)
    {
        CurveBend? tightest = null;
        foreach (double t in places)
        {
            tightest = Tighter(tightest, Hollow(curve.CurvatureAt(t), curve.PointAt(t), bitSide));
        }

        return tightest;
    }

    private static CurveBend? Hollow(double curvature, Point2 at, Side bitSide)
    {
        double hollow = bitSide == Side.Left ? curvature : -curvature;
        return hollow > NoCurvature && double.IsFinite(hollow) ? new CurveBend(1 / hollow, at) : null;
    }

    /// <summary>
    /// The curvature of an ellipse is greatest and least at the ends of its axes and runs one way between; so it is enough to look there and at the ends of the piece.
    /// </summary>
    private static IEnumerable<double> AxisEnds(EllipseCurve ellipse)
    {
        yield return 0;
        yield return 1;
        const double Quarter = Math.PI / 2;
        double low = Math.Min(ellipse.StartParameter, ellipse.StartParameter + ellipse.Sweep);
        double next = (Math.Floor(low / Quarter) + 1) * Quarter;
        for (int i = 0; i < 4; i++)
        {
            double t = (next + (i * Quarter) - ellipse.StartParameter) / ellipse.Sweep;
            if (t is > 0 and < 1)
            {
                yield return t;
            }
        }
    }

    // With P = (X, Y) over W, A = P'W - PW' and D the determinant of (X, Y, W), its first and its second derivatives, the curvature is W³D/|A|³; its extremes are where
    // (3W'D + WD')|A|² - 3WD(A·A') is 0. A polynomial piece is the case of W = 1.
    private static (CurveBend? Bend, bool Still) Of(BezierPiece piece, Side bitSide)
    {
        (Bernstein x, Bernstein y) = piece.SeenFrom(piece.Pole(0), new Point2(1, 0));
        Bernstein w = piece.W;
        (Bernstein x1, Bernstein y1, Bernstein w1) = (x.Derivative(), y.Derivative(), w.Derivative());
        (Bernstein x2, Bernstein y2, Bernstein w2) = (x1.Derivative(), y1.Derivative(), w1.Derivative());
        Bernstein d = (x * ((y1 * w2) - (w1 * y2))) - (y * ((x1 * w2) - (w1 * x2))) + (w * ((x1 * y2) - (y1 * x2)));
        Bernstein ax = (x1 * w) - (x * w1);
        Bernstein ay = (y1 * w) - (y * w1);
        Bernstein speed = (ax * ax) + (ay * ay);
        double most = speed.Magnitude;
        if (!speed.IsAbove(StandsStill * StandsStill * most, 24))
        {
            return (null, true);
        }

        Bernstein change = (((3 * (w1 * d)) + (w * d.Derivative())) * speed) - (3 * (w * d * ((ax * ax.Derivative()) + (ay * ay.Derivative()))));
        CurveBend? tightest = null;
        foreach (double u in (IEnumerable<double>)[0, 1, .. change.Roots(1e-13 * change.Magnitude)])
        {
            double a = Math.Sqrt(speed.At(u));
            double curvature = Math.Pow(w.At(u) / a, 3) * d.At(u);
            tightest = Tighter(tightest, Hollow(curvature, piece.PointAt(u), bitSide));
        }

        return (tightest, false);
    }
}
