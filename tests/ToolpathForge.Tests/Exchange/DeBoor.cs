using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Exchange;

/// <summary>
/// Points of a B-spline by de Boor's recursion (C. de Boor, "On calculating with B-splines", 1972), weights as a third coordinate: another way than the pieces between knots
/// that the product works with, and written from the formula alone.
/// </summary>
internal static class DeBoor
{
    /// <summary>The point at a share of the knots that bear the curve.</summary>
    internal static Point2 PointAt(SplineCurve spline, double share)
    {
        (int p, int n) = (spline.Degree, spline.Poles.Length);
        double[] u = [.. spline.Knots];
        double x = u[p] + ((u[n] - u[p]) * share);

        // The span that holds x; at the far end the last one that is not empty.
        int k = p;
        for (int i = p; i < n; i++)
        {
            if (u[i] < u[i + 1] && u[i] <= x)
            {
                k = i;
            }
        }

        var d = new (double X, double Y, double W)[p + 1];
        for (int j = 0; j <= p; j++)
        {
            double w = spline.Weights.IsEmpty ? 1 : spline.Weights[k - p + j];
            Point2 pole = spline.Poles[k - p + j];
            d[j] = (pole.X * w, pole.Y * w, w);
        }

        for (int r = 1; r <= p; r++)
        {
            for (int j = p; j >= r; j--)
            {
                int i = k - p + j;
                double a = (x - u[i]) / (u[i + p - r + 1] - u[i]);
                d[j] = (((1 - a) * d[j - 1].X) + (a * d[j].X), ((1 - a) * d[j - 1].Y) + (a * d[j].Y), ((1 - a) * d[j - 1].W) + (a * d[j].W));
            }
        }

        return new Point2(d[p].X / d[p].W, d[p].Y / d[p].W);
    }
}
