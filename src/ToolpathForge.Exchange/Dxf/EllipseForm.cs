using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>
/// An ellipse as the format wants it: the longer semi-axis relative to the centre, the shorter one to its left as a share of it, parameters in radians,
/// always counter-clockwise, the second greater than the first.
/// </summary>
/// <param name="Center">The centre, mm.</param>
/// <param name="Major">The longer semi-axis, mm.</param>
/// <param name="Ratio">Shorter by longer semi-axis, in (0, 1].</param>
/// <param name="Start">First parameter, in [0, π) unless the piece spans more than half a turn, then in [0, 2π).</param>
/// <param name="End">Second parameter; at most 2π where the piece spans no more than half a turn, or is whole.</param>
internal readonly record struct EllipseForm(Point2 Center, Point2 Major, double Ratio, double Start, double End)
{
    private const double Turn = 2 * Math.PI;

    /// <summary>Ratios below this collapse to a line in readers of the format.</summary>
    private const double LeastRatio = 1e-6;

    internal static EllipseForm Of(EllipseCurve curve)
    {
        Point2 major = curve.Major;
        Point2 minor = curve.Minor;
        double start = curve.StartParameter;
        double sweep = curve.Sweep;
        if (minor.Length > major.Length)
        {
            // M cos u + m sin u = m cos(u - π/2) + (-M) sin(u - π/2).
            (major, minor) = (minor, -major);
            start -= Math.PI / 2;
        }

        if (major.Cross(minor) < 0)
        {
            // The minor axis lies to the right: with v = -u it lies to the left and the sense turns round.
            start = -start;
            sweep = -sweep;
        }

        if (sweep < 0)
        {
            start += sweep;
            sweep = -sweep;
        }

        double ratio = minor.Length / major.Length;
        if (!(ratio >= LeastRatio))
        {
            throw new ArgumentException("An ellipse whose shorter axis is less than a millionth of its longer one is a line.", nameof(curve));
        }

        if (sweep >= Turn - Accuracy.SameDirection)
        {
            return new EllipseForm(curve.Center, major, ratio, 0, Turn);
        }

        start -= Math.Floor(start / Turn) * Turn;
        if (start >= Math.PI && start + sweep > Turn)
        {
            // Seen from the other end of the axis the piece does not run across the parameter's zero.
            major = -major;
            start -= Math.PI;
        }

        return new EllipseForm(curve.Center, major, Math.Min(1, ratio), start, start + sweep);
    }
}
