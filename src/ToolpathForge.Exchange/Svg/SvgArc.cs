using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Svg;

/// <summary>Elliptical arcs of path data, from their ends to their centres (SVG 1.1, appendix F.6, "Elliptical arc implementation notes").</summary>
internal static class SvgArc
{
    /// <summary>The arc; a line where a radius is 0; null where it ends where it begins, which draws nothing (F.6.2).</summary>
    /// <param name="from">Where it begins.</param>
    /// <param name="rx">Radius along its own X axis; its sign is dropped (F.6.6).</param>
    /// <param name="ry">Radius along its own Y axis; its sign is dropped.</param>
    /// <param name="turn">From the X axis to its own, degrees.</param>
    /// <param name="large">Whether it is the one of more than half a turn.</param>
    /// <param name="sweep">Whether its angle grows, from X to Y.</param>
    /// <param name="to">Where it ends.</param>
    internal static SvgSegment? Of(Point2 from, double rx, double ry, double turn, bool large, bool sweep, Point2 to)
    {
        if (from == to)
        {
            return null;
        }

        (rx, ry) = (Math.Abs(rx), Math.Abs(ry));
        if (rx == 0 || ry == 0)
        {
            return SvgSegment.Line(from, to);
        }

        // A circle looks the same from everywhere.
        (double sin, double cos) = rx == ry ? (0, 1) : Math.SinCos(turn % 360 * Math.PI / 180);

        // F.6.5.1, with both axes scaled to 1: half the chord in the frame of the unit circle.
        Point2 half = (from - to) / 2;
        double x = ((cos * half.X) + (sin * half.Y)) / rx, y = ((cos * half.Y) - (sin * half.X)) / ry;
        double size = (x * x) + (y * y);
        if (size > 1)
        {
            // F.6.6.3: radii that do not reach grow together until they just do.
            double grow = Math.Sqrt(size);
            (rx, ry, x, y, size) = (rx * grow, ry * grow, x / grow, y / grow, 1);
        }

        if (!(size > 0))
        {
            // So small against its radii that their ratio is 0: the short way is straight, the long way comes from farther away than anything.
            return SvgSegment.Line(from, large ? new Point2(double.PositiveInfinity, double.PositiveInfinity) : to);
        }

        // F.6.5.2: the centre lies beside the middle of the chord, on the side that the flags say.
        double aside = Math.Sqrt((1 - size) / size) * (large == sweep ? -1 : 1);
        double cx = aside * y, cy = -aside * x;
        double start = Math.Atan2(y - cy, x - cx), end = Math.Atan2(-y - cy, -x - cx);
        double span = end - start;
        if (sweep && span <= 0)
        {
            span += 2 * Math.PI;
        }
        else if (!sweep && span >= 0)
        {
            span -= 2 * Math.PI;
        }

        Point2 major = new Point2(cos, sin) * rx, minor = new Point2(-sin, cos) * ry;
        return SvgSegment.Round(from.Towards(to, 0.5) + (major * cx) + (minor * cy), major, minor, start, span);
    }
}
