namespace ToolpathForge.Proof;

/// <summary>
/// A rational cubic Bézier curve by homogeneous control points (x·w, y·w, w). A polynomial in Bernstein form lies between its least and its largest coefficient:
/// every bound here comes from that.
/// </summary>
internal readonly record struct RationalCubic(Weighted A, Weighted B, Weighted C, Weighted D)
{
    private static readonly double[] Binomial3 = [1, 3, 3, 1];
    private static readonly double[] Binomial6 = [1, 6, 15, 20, 15, 6, 1];

    internal PlanePoint Start => A.Point;

    internal PlanePoint End => D.Point;

    internal static RationalCubic From(CubicEdge e) => new(Weighted.Of(e.P0, e.W0), Weighted.Of(e.P1, e.W1), Weighted.Of(e.P2, e.W2), Weighted.Of(e.P3, e.W3));

    /// <summary>Both halves at t = 1/2, by de Casteljau's construction.</summary>
    internal (RationalCubic First, RationalCubic Second) Halves()
    {
        Weighted ab = A.Middle(B), bc = B.Middle(C), cd = C.Middle(D);
        Weighted abc = ab.Middle(bc), bcd = bc.Middle(cd);
        Weighted middle = abc.Middle(bcd);
        return (new(A, ab, abc, middle), new(middle, bcd, cd, D));
    }

    /// <summary>
    /// Whether every tangent's angle to a chord has at least this cosine. The tangents of a rational Bézier curve are positive sums of the differences of its control points;
    /// points that are one but for rounding have no direction between them.
    /// </summary>
    internal bool AreDirectionsWithin(PlanePoint chord, double cosine)
    {
        Span<PlanePoint> points = [A.Point, B.Point, C.Point, D.Point];
        for (int i = 0; i < 4; i++)
        {
            for (int j = i + 1; j < 4; j++)
            {
                PlanePoint arrow = points[j].Minus(points[i]);
                if (arrow.Length > ProofAccuracy.SamePoint && chord.Dot(arrow) < cosine * chord.Length * arrow.Length)
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>Farthest that a control point, and so any point of the curve, is from its start.</summary>
    internal double Span => Math.Max(B.Point.DistanceTo(Start), Math.Max(C.Point.DistanceTo(Start), End.DistanceTo(Start)));

    /// <summary>Farthest that a control point, and so any point of the curve, lies from the line through a point in a direction.</summary>
    internal double FarthestControlFrom(PlanePoint origin, PlanePoint direction) =>
        Math.Max(Math.Abs(direction.Cross(B.Point.Minus(origin))), Math.Abs(direction.Cross(C.Point.Minus(origin))));

    /// <summary>
    /// Upper bound of |distance² - radius²| to a circle along the curve: |P - c·w|² - r²w², of degree six, by its Bernstein coefficients, over the least w².
    /// </summary>
    internal double LargestPowerOf(PlanePoint center, double radius)
    {
        Span<Weighted> controls = [A, B, C, D];
        Span<double> coefficients = stackalloc double[7];
        double leastWeight = double.PositiveInfinity;
        for (int i = 0; i < 4; i++)
        {
            Weighted a = controls[i].From(center);
            leastWeight = Math.Min(leastWeight, a.W);
            for (int j = 0; j < 4; j++)
            {
                Weighted b = controls[j].From(center);
                coefficients[i + j] += Binomial3[i] * Binomial3[j] * ((a.X * b.X) + (a.Y * b.Y) - (radius * radius * a.W * b.W));
            }
        }

        double largest = 0;
        for (int k = 0; k < 7; k++)
        {
            largest = Math.Max(largest, Math.Abs(coefficients[k]) / Binomial6[k]);
        }

        return largest / (leastWeight * leastWeight);
    }
}

/// <summary>A homogeneous control point.</summary>
internal readonly record struct Weighted(double X, double Y, double W)
{
    internal PlanePoint Point => new(X / W, Y / W);

    internal static Weighted Of(PlanePoint p, double weight) => new(p.X * weight, p.Y * weight, weight);

    internal Weighted Middle(Weighted other) => new((X + other.X) / 2, (Y + other.Y) / 2, (W + other.W) / 2);

    /// <summary>As seen from another origin.</summary>
    internal Weighted From(PlanePoint origin) => new(X - (origin.X * W), Y - (origin.Y * W), W);
}
