namespace ToolpathForge.Geometry;

/// <summary>Where the unbounded lines and full circles that carry segments cross.</summary>
internal static class Carriers
{
    /// <summary>Shares of a segment (between 0 and 1, both left out) where it crosses the line through two points.</summary>
    public static void CrossLine(Segment s, Point2 a, Point2 b, List<double> shares)
    {
        Point2 along = b - a;
        if (s.IsLine)
        {
            Point2 chord = s.End - s.Start;
            double slant = chord.Cross(along);
            if (slant != 0)
            {
                Add((a - s.Start).Cross(along) / slant, shares);
            }

            return;
        }

        Point2 unit = along.Unit();
        Point2 center = s.Center;
        double off = unit.Cross(a - center);
        double half = (s.Radius * s.Radius) - (off * off);
        if (half >= 0)
        {
            Point2 foot = center + (unit.Left * off);
            Point2 reach = unit * Math.Sqrt(half);
            Add(ShareOf(s, center, foot + reach), shares);
            Add(ShareOf(s, center, foot - reach), shares);
        }
    }

    /// <summary>Shares of a segment (between 0 and 1, both left out) where it crosses a circle.</summary>
    public static void CrossCircle(Segment s, Point2 center, double radius, List<double> shares)
    {
        if (s.IsLine)
        {
            Point2 chord = s.End - s.Start;
            double square = chord.LengthSquared;
            Point2 to = center - s.Start;
            double middle = to.Dot(chord) / square;
            double off = to.Cross(chord);
            double half = (radius * radius) - (off * off / square);
            if (half >= 0)
            {
                double reach = Math.Sqrt(half / square);
                Add(middle - reach, shares);
                Add(middle + reach, shares);
            }

            return;
        }

        Point2 own = s.Center;
        Point2 between = center - own;
        double d = between.Length;
        if (d == 0)
        {
            return;
        }

        double r = s.Radius;
        double along = ((d * d) + (r * r) - (radius * radius)) / (2 * d);
        double rest = (r * r) - (along * along);
        if (rest >= 0)
        {
            Point2 unit = between / d;
            Point2 side = unit.Left * Math.Sqrt(rest);
            Add(ShareOf(s, own, own + (unit * along) + side), shares);
            Add(ShareOf(s, own, own + (unit * along) - side), shares);
        }
    }

    private static double ShareOf(Segment arc, Point2 center, Point2 p)
    {
        double sweep = arc.Sweep;
        Point2 from = arc.Start - center;
        Point2 to = p - center;
        double angle = Math.Atan2(from.Cross(to), from.Dot(to));
        double share = angle / sweep;
        return share < 0 ? share + (2 * Math.PI / Math.Abs(sweep)) : share;
    }

    private static void Add(double share, List<double> shares)
    {
        if (share > 0 && share < 1)
        {
            shares.Add(share);
        }
    }
}
