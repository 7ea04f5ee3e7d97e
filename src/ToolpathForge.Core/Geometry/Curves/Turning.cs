namespace ToolpathForge.Geometry;

/// <summary>Sine and cosine that are exact at quarter turns, so that an outline's corners fall on whole numbers where they should.</summary>
internal static class Turning
{
    /// <summary>
    /// A cosine smaller than this is a zero that rounding has spoilt: cos(π/2) comes out as 6e-17, and two roundings of a parameter near 2π make it 9e-16.
    /// </summary>
    private const double RoundedZero = 2e-15;

    public static (double Sin, double Cos) SinCos(double radians)
    {
        (double sin, double cos) = Math.SinCos(radians);
        if (Math.Abs(cos) < RoundedZero)
        {
            return (Math.Sign(sin), 0);
        }

        return Math.Abs(sin) < RoundedZero ? (0, Math.Sign(cos)) : (sin, cos);
    }

    public static Point2 Direction(double radians)
    {
        (double sin, double cos) = SinCos(radians);
        return new Point2(cos, sin);
    }
}
