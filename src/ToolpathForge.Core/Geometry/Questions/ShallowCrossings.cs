namespace ToolpathForge.Geometry;

/// <summary>
/// Where a bit's centre on its way beside a contour comes as near as its radius to a segment, if way or segment is an arc so shallow that its centre and radius are too large to reckon
/// with: r² - a² of a circle of a kilometre keeps no digit of a millimetre. The crossing with the chord is taken instead, and then moved onto the arc.
/// </summary>
internal static class ShallowCrossings
{
    /// <summary>Beyond this radius an arc is reckoned with by its chord and its rise, mm: there the square of a radius still resolves a millionth of a square millimetre.</summary>
    private const double Largest = 1e5;

    // Each step squares what is wrong, and the first guess is no further off than the arc rises above its chord.
    private const int Steps = 6;

    /// <summary>Whether an arc is that shallow.</summary>
    internal static bool IsShallow(Segment s) => !s.IsLine && s.Radius > Largest;

    /// <summary>Shares of a path (between 0 and 1, both left out) at which its distance to a segment, or to what carries it, is a radius.</summary>
    /// <param name="path">The way of the centre.</param>
    /// <param name="s">The segment; it or the path is shallow.</param>
    /// <param name="radius">More than 0, mm.</param>
    /// <param name="shares">Takes the shares.</param>
    internal static void Add(Segment path, Segment s, double radius, List<double> shares)
    {
        Segment straight = IsShallow(path) ? path with { Bulge = 0 } : path;
        var guesses = new List<double>();
        foreach (Point2 end in (ReadOnlySpan<Point2>)[s.Start, s.End])
        {
            guesses.Clear();
            Carriers.CrossCircle(straight, end, radius, guesses);
            Move(path, guesses, p => p.DistanceTo(end) - radius, shares);
        }

        foreach (double off in (ReadOnlySpan<double>)[radius, -radius])
        {
            guesses.Clear();
            if (s.IsLine || IsShallow(s))
            {
                Point2 aside = (s.End - s.Start).Unit().Left * off;
                Carriers.CrossLine(straight, s.Start + aside, s.End + aside, guesses);
                Move(path, guesses, p => Above(s, p) - off, shares);
            }
            else
            {
                double beside = Math.Abs(s.Radius + off);
                Carriers.CrossCircle(straight, s.Center, beside, guesses);
                Move(path, guesses, p => p.DistanceTo(s.Center) - beside, shares);
            }
        }
    }

    // How far a point is to the left of a line or a shallow arc. Over its chord the arc is a parabola but for parts of a millionth.
    private static double Above(Segment s, Point2 p)
    {
        Point2 chord = s.End - s.Start;
        Point2 unit = chord.Unit();
        double along = (2 * unit.Dot(p - s.Start) / chord.Length) - 1;

        // An arc with a positive bulge turns left and so rises to the right of its chord.
        double rise = -s.Bulge * chord.Length / 2 * (1 - (along * along));
        return unit.Cross(p - s.Start) - rise;
    }

    private static void Move(Segment path, List<double> guesses, Func<Point2, double> off, List<double> shares)
    {
        foreach (double guess in guesses)
        {
            double before = guess - 1e-4;
            double share = guess;
            double offBefore = off(path.PointAt(before));
            for (int i = 0; i < Steps; i++)
            {
                double here = off(path.PointAt(share));
                if (here == 0 || here == offBefore)
                {
                    break;
                }

                (before, share, offBefore) = (share, share - (here * (share - before) / (here - offBefore)), here);
            }

            if (share is > 0 and < 1)
            {
                shares.Add(share);
            }
        }
    }
}
