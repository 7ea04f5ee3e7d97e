using ToolpathForge.Proof;

namespace ToolpathForge.Tests.Proof;

/// <summary>
/// Distance to a whole ellipse x²/a² + y²/b² = 1, the tests' own and made another way than the proof's: the foot of the perpendicular from (u, v), u, v ≥ 0, is
/// (a²u/(t + a²), b²v/(t + b²)) with t the largest root of (au/(t + a²))² + (bv/(t + b²))² = 1, which falls strictly for t > -b² (a ≥ b), so bisection cannot fail,
/// not even at the centre or on the evolute.
/// </summary>
internal static class EllipseOracle
{
    internal static double Distance(double a, double b, PlanePoint p)
    {
        if (a < b)
        {
            return Distance(b, a, new PlanePoint(p.Y, p.X));
        }

        double u = Math.Abs(p.X), v = Math.Abs(p.Y);
        if (v < 1e-12)
        {
            // On the long axis between the centres of curvature of its ends, the foot leaves the axis.
            double limit = (a * a - b * b) / a;
            if (u >= limit)
            {
                return Math.Abs(u - a);
            }

            double x = a * a * u / (a * a - b * b);
            return new PlanePoint(x - u, b * Math.Sqrt(Math.Max(0, 1 - (x * x / (a * a))))).Length;
        }

        // With s = t + b² nothing cancels near the long axis.
        double c2 = (a - b) * (a + b);
        double low = b * v, high = Math.Sqrt((a * a * u * u) + (b * b * v * v));
        for (int i = 0; i < 200 && high > low; i++)
        {
            double s = (low + high) / 2;
            if (s == low || s == high)
            {
                break;
            }

            double x = a * u / (s + c2), y = b * v / s;
            _ = (x * x) + (y * y) > 1 ? low = s : high = s;
        }

        double root = (low + high) / 2;
        return new PlanePoint((a * a * u / (root + c2)) - u, (b * b * v / root) - v).Length;
    }
}
