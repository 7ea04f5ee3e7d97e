namespace ToolpathForge.Geometry;

/// <summary>
/// Two arcs over a span of a spiral (a curve whose curvature rises or falls throughout): they leave and arrive with the curve's own tangents,
/// and their joint lies on the curve, where the tangents of the two arcs agree.
/// </summary>
/// <param name="From">Parameter of the curve where it begins.</param>
/// <param name="Joint">Parameter of the curve where the arcs meet.</param>
/// <param name="To">Parameter of the curve where it ends.</param>
/// <param name="FirstBulge">Bulge of the arc to the joint.</param>
/// <param name="SecondBulge">Bulge of the arc from the joint.</param>
/// <param name="Deviation">Largest distance between the span and the arcs, both ways, mm.</param>
internal readonly record struct Biarc(double From, double Joint, double To, double FirstBulge, double SecondBulge, double Deviation)
{
    /// <summary>Parameters are found to this share of the span: about where rounding of the points takes over.</summary>
    private const double ParameterAccuracy = 1e-15;

    /// <summary>
    /// Where the arcs' tangents agree within this at both ends of the span (radians), the span is a circle as far as doubles can tell, and any joint will do.
    /// </summary>
    private const double CircleAlready = 1e-12;

    /// <summary>Rounding of a chord's direction: this times the coordinates over the chord, radians.</summary>
    private const double DirectionRounding = 1e-15;

    public static Biarc Over(Curve spiral, double from, double to)
    {
        Point2 start = spiral.PointAt(from);
        Point2 end = spiral.PointAt(to);
        Point2 leaving = spiral.DirectionAt(from);
        Point2 arriving = spiral.DirectionAt(to);
        double joint = FindJoint(spiral, from, to, start, end, leaving, arriving);
        Point2 meet = spiral.PointAt(joint);

        // An arc that leaves along a tangent sweeps twice the angle between tangent and chord; its bulge is the tangent of half that angle.
        double first = Math.Tan(AngleBetween(leaving, meet - start) / 2);
        double second = Math.Tan(AngleBetween(end - meet, arriving) / 2);
        double deviation = Math.Max(
            ArcDeviation(spiral, from, joint, start, leaving, CurvatureOf(first, start, meet)),
            ArcDeviation(spiral, to, joint, end, arriving, CurvatureOf(second, meet, end)));
        return new Biarc(from, joint, to, first, second, deviation);
    }

    /// <summary>Angle from one vector to another, radians in (-π, π].</summary>
    public static double AngleBetween(Point2 a, Point2 b) => Math.Atan2(a.Cross(b), a.Dot(b));

    /// <summary>What cannot be told from agreeing tangents over a chord, radians.</summary>
    public static double DirectionNoise(Point2 start, Point2 end) =>
        CircleAlready + (DirectionRounding * (start.Length + end.Length) / start.DistanceTo(end));

    private static double FindJoint(Curve spiral, double from, double to, Point2 start, Point2 end, Point2 leaving, Point2 arriving)
    {
        double turn = AngleBetween(leaving, arriving);

        // The turn of both arcs, less the turn of the curve. At the ends of the span its values are opposite, and it changes sign once between.
        double Excess(double t)
        {
            Point2 p = spiral.PointAt(t);
            return (2 * (AngleBetween(leaving, p - start) + AngleBetween(end - p, arriving))) - turn;
        }

        double atStart = (2 * AngleBetween(end - start, arriving)) - turn;
        double atEnd = (2 * AngleBetween(leaving, end - start)) - turn;
        if (Math.Abs(atStart) < DirectionNoise(start, end) || atStart * atEnd >= 0)
        {
            return (from + to) / 2;
        }

        return RootFinder.Find(Excess, from, atStart, to, atEnd, ParameterAccuracy * (to - from));
    }

    private static double CurvatureOf(double bulge, Point2 a, Point2 b) => 4 * bulge / ((1 + (bulge * bulge)) * a.DistanceTo(b));

    /// <summary>
    /// Largest distance between a spiral and an arc that touches it at one parameter and crosses it at another. A spiral meets a circle at most three
    /// times, the touch counting twice, so the distance has one sign between and exactly one maximum, which is a root.
    /// The radial distance is the two-sided one, because curve and arc fill the same fan seen from the centre.
    /// </summary>
    private static double ArcDeviation(Curve spiral, double touch, double cross, Point2 point, Point2 direction, double curvature)
    {
        Point2 normal = direction.Left;

        // The slope of the power of the curve's point about the circle, divided by the way from the touch, where it has a double zero.
        double Slope(double t)
        {
            Point2 q = spiral.PointAt(t) - point;
            Point2 d = spiral.FirstDerivative(t);
            return (d.Dot(normal) - (curvature * q.Dot(d))) / (t - touch);
        }

        double Distance(double t)
        {
            // Power form: stays exact for arcs that are nearly straight, where centre and radius would cancel.
            Point2 q = spiral.PointAt(t) - point;
            double power = q.Dot(normal) - (curvature * q.LengthSquared / 2);
            double square = 1 - (2 * curvature * power);
            return Math.Abs(2 * power / (1 + Math.Sqrt(Math.Max(0, square))));
        }

        Point2 speed = spiral.FirstDerivative(touch);
        double atTouch = spiral.SecondDerivative(touch).Dot(normal) - (curvature * speed.LengthSquared);
        double atCross = Slope(cross);
        double top = Math.Sign(atTouch) * Math.Sign(atCross) < 0
            ? RootFinder.Find(Slope, touch, atTouch, cross, atCross, 1e-9 * Math.Abs(cross - touch))
            : (touch + cross) / 2;
        return Distance(top);
    }
}
