namespace ToolpathForge.Geometry;

/// <summary>Two arcs over a span of a curve, tangent to each other where they meet and to the curve at both ends.</summary>
/// <param name="From">Parameter of the curve where it begins.</param>
/// <param name="To">Parameter of the curve where it ends.</param>
/// <param name="Meet">Where the arcs meet.</param>
/// <param name="FirstBulge">Bulge of the arc to <paramref name="Meet"/>.</param>
/// <param name="SecondBulge">Bulge of the arc from there.</param>
/// <param name="Deviation">Largest distance between the span and the arcs, both ways, mm.</param>
internal readonly record struct Biarc(double From, double To, Point2 Meet, double FirstBulge, double SecondBulge, double Deviation)
{
    /// <summary>
    /// Where the tangents of two arcs agree within this at both ends of a span (radians), the span is a circle as far as doubles can tell, and any joint will do.
    /// </summary>
    private const double CircleAlready = 1e-12;

    /// <summary>Rounding of a chord's direction: this times the coordinates over the chord, radians.</summary>
    private const double DirectionRounding = 1e-15;

    /// <summary>Angle from one vector to another, radians in (-π, π].</summary>
    public static double AngleBetween(Point2 a, Point2 b) => Math.Atan2(a.Cross(b), a.Dot(b));

    /// <summary>What cannot be told from agreeing tangents over a chord, radians.</summary>
    public static double DirectionNoise(Point2 start, Point2 end) =>
        CircleAlready + (DirectionRounding * (start.Length + end.Length) / start.DistanceTo(end));

    public static double CurvatureOf(double bulge, Point2 a, Point2 b) => 4 * bulge / ((1 + (bulge * bulge)) * a.DistanceTo(b));
}
