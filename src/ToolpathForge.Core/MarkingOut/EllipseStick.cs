using ToolpathForge.Geometry;

namespace ToolpathForge.MarkingOut;

/// <summary>Where the pencil of an ellipse stick is, with the guides that hold it there.</summary>
/// <param name="Pencil">On the ellipse, mm.</param>
/// <param name="OnLong">The guide that runs on the longer axis.</param>
/// <param name="OnShort">The guide that runs on the shorter axis.</param>
public readonly record struct StickPlace(Point2 Pencil, Point2 OnLong, Point2 OnShort)
{
    /// <summary>Where the stick begins and ends: past its outermost marks by what it is held by, mm.</summary>
    public (Point2 From, Point2 To) Ends
    {
        get
        {
            Point2 zero = OnShort;
            Point2 along = (OnLong - OnShort).Unit();
            double[] marks = [0, (OnLong - zero).Dot(along), (Pencil - zero).Dot(along)];
            return (zero + (along * (marks.Min() - EllipseStick.Hold)), zero + (along * (marks.Max() + EllipseStick.Hold)));
        }
    }
}

/// <summary>
/// How a stick with two guides and a pencil draws a piece of an ellipse: the guide on the shorter axis is the longer semi-axis away from the pencil, the guide on
/// the longer axis the shorter one. The pencil is either between the guides or beyond both (Cundy and Rollett, Mathematical Models; common practice as the trammel).
/// </summary>
/// <param name="Curve">The exact piece, X from where the profile begins towards the tip, Y up from the lower edge.</param>
/// <param name="LongAxis">The longer semi-axis as a vector, mm.</param>
/// <param name="ShortAxis">The shorter one, square to it.</param>
public sealed record EllipseStick(EllipseCurve Curve, Point2 LongAxis, Point2 ShortAxis)
{
    /// <summary>How far a stick goes on past its outermost marks, mm, so that it can be held: an inch (common practice).</summary>
    public const double Hold = 25.4;

    /// <summary>Where the axes cross, mm.</summary>
    public Point2 Center => Curve.Center;

    /// <summary>From the pencil to the guide on the shorter axis, mm: the longer semi-axis.</summary>
    public double Long => LongAxis.Length;

    /// <summary>From the pencil to the guide on the longer axis, mm: the shorter semi-axis.</summary>
    public double Short => ShortAxis.Length;

    /// <summary>Least length of the stick with the pencil between the guides, mm.</summary>
    public double LengthBetween => Long + Short + (2 * Hold);

    /// <summary>Least length of the stick with the pencil beyond the guides, mm.</summary>
    public double LengthBeyond => Long + (2 * Hold);

    /// <summary>From guide to guide, mm.</summary>
    /// <param name="between">Whether the pencil is between them.</param>
    public double GuidesApart(bool between) => between ? Long + Short : Long - Short;

    /// <summary>The stick for a piece of an ellipse.</summary>
    /// <param name="curve">The piece.</param>
    public static EllipseStick Of(EllipseCurve curve)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return curve.Major.Length >= curve.Minor.Length ? new(curve, curve.Major, curve.Minor) : new(curve, curve.Minor, curve.Major);
    }

    /// <summary>
    /// Where stick and pencil are at one point of the piece. With P = C + L·c + S·s the guides are at C + L/a·(a ± b)·c and C + S/b·(b ± a)·s: both at the
    /// distances of their marks from P, and in line with it.
    /// </summary>
    /// <param name="t">Parameter of the curve, 0 to 1.</param>
    /// <param name="between">Whether the pencil is between the guides.</param>
    public StickPlace At(double t, bool between)
    {
        Point2 pencil = Curve.PointAt(t);
        double alongLong = (pencil - Center).Dot(LongAxis) / (Long * Long);
        double alongShort = (pencil - Center).Dot(ShortAxis) / (Short * Short);
        double onLong = between ? Long + Short : Long - Short;
        double onShort = between ? Short + Long : Short - Long;
        return new StickPlace(
            pencil,
            Center + (LongAxis.Unit() * (onLong * alongLong)),
            Center + (ShortAxis.Unit() * (onShort * alongShort)));
    }
}
