using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Distance from a point to an exact curve, found by looking everywhere and then closely.</summary>
internal static class Nearest
{
    internal static double Distance(Curve curve, Point2 p, int looks = 240)
    {
        double best = double.PositiveInfinity;
        int at = 0;
        for (int i = 0; i <= looks; i++)
        {
            double d = curve.PointAt((double)i / looks).DistanceTo(p);
            if (d < best)
            {
                (best, at) = (d, i);
            }
        }

        // Thirds of the two steps around the best.
        double low = Math.Max(0, (at - 1.0) / looks), high = Math.Min(1, (at + 1.0) / looks);
        for (int i = 0; i < 90; i++)
        {
            double a = low + ((high - low) / 3), b = high - ((high - low) / 3);
            (low, high) = curve.PointAt(a).DistanceTo(p) < curve.PointAt(b).DistanceTo(p) ? (low, b) : (a, high);
        }

        return Math.Min(best, curve.PointAt((low + high) / 2).DistanceTo(p));
    }
}
