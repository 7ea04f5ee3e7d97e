using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Distance from a point to an exact curve, found by looking everywhere and then closely.</summary>
internal static class Nearest
{
    internal static double Distance(Curve curve, Point2 p, int looks = 240)
    {
        double best = Among(curve, p, 0, 1, looks);

        // Where a curve turns on the spot, a step may hold more of it than its ends show: steps that pass near enough are looked at again, more finely.
        for (int i = 0; i < looks; i++)
        {
            (double from, double to) = ((double)i / looks, (i + 1.0) / looks);
            Point2 a = curve.PointAt(from);
            Point2 b = curve.PointAt(to);
            Point2 middle = curve.PointAt((from + to) / 2);
            if (Math.Min(Math.Min(a.DistanceTo(p), b.DistanceTo(p)), middle.DistanceTo(p)) <= best + (2 * (a.DistanceTo(middle) + middle.DistanceTo(b))))
            {
                best = Math.Min(best, Among(curve, p, from, to, 64));
            }
        }

        return best;
    }

    private static double Among(Curve curve, Point2 p, double from, double to, int looks)
    {
        double At(double i) => from + ((to - from) * i / looks);
        double[] looked = [.. Enumerable.Range(0, looks + 1).Select(i => curve.PointAt(At(i)).DistanceTo(p))];
        double best = double.PositiveInfinity;
        for (int i = 0; i <= looks; i++)
        {
            // Every place that is nearer than its neighbours: where a curve turns on the spot, the nearest look need not be beside the nearest point.
            if ((i == 0 || looked[i] <= looked[i - 1]) && (i == looks || looked[i] <= looked[i + 1]))
            {
                best = Math.Min(best, Closely(curve, p, At(Math.Max(0, i - 1.0)), At(Math.Min(looks, i + 1.0))));
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
