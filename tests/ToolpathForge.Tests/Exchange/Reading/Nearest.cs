using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Distance from a point to an exact curve, found by looking everywhere and then closely.</summary>
internal static class Nearest
{
    internal static double Distance(Curve curve, Point2 p, int looks = 240)
    {
        double[] looked = [.. Enumerable.Range(0, looks + 1).Select(i => curve.PointAt((double)i / looks).DistanceTo(p))];
        double best = double.PositiveInfinity;
        for (int i = 0; i <= looks; i++)
        {
            // Every place that is nearer than its neighbours: where a curve turns on the spot, the nearest look need not be beside the nearest point.
            if ((i == 0 || looked[i] <= looked[i - 1]) && (i == looks || looked[i] <= looked[i + 1]))
            {
                best = Math.Min(best, Closely(curve, p, Math.Max(0, (i - 1.0) / looks), Math.Min(1, (i + 1.0) / looks)));
            }
        }

        return best;
    }

    // Thirds of the two steps around a place.
    private static double Closely(Curve curve, Point2 p, double low, double high)
    {
        for (int i = 0; i < 90; i++)
        {
            double a = low + ((high - low) / 3), b = high - ((high - low) / 3);
            (low, high) = curve.PointAt(a).DistanceTo(p) < curve.PointAt(b).DistanceTo(p) ? (low, b) : (a, high);
        }

        return curve.PointAt((low + high) / 2).DistanceTo(p);
    }
}
