namespace ToolpathForge.Geometry;

/// <summary>
/// The root of a function between two ends where it has opposite signs. Stops on the width of the bracket alone, because what is wanted is a place;
/// a solver that also wants the function's value small never ends where the function is steep.
/// </summary>
internal static class RootFinder
{
    private const int MostSteps = 200;

    /// <summary>A bracket narrower than this share of its place holds no further double.</summary>
    private const double RelativeRounding = 4.5e-16;

    /// <summary>Chandrupatla's method: inverse quadratic steps where they are safe, halving elsewhere; never leaves the bracket.</summary>
    /// <param name="f">A continuous function.</param>
    /// <param name="low">One end.</param>
    /// <param name="atLow">Value there.</param>
    /// <param name="high">The other end.</param>
    /// <param name="atHigh">Value there, of the opposite sign (or 0).</param>
    /// <param name="width">The bracket is narrowed to about this.</param>
    public static double Find(Func<double, double> f, double low, double atLow, double high, double atHigh, double width)
    {
        double a = high, fa = atHigh, b = low, fb = atLow, share = 0.5;
        for (int step = 0; step < MostSteps; step++)
        {
            double x = a + (share * (b - a));
            double fx = f(x);
            double c, fc;
            if (Math.Sign(fx) == Math.Sign(fa))
            {
                (c, fc) = (a, fa);
            }
            else
            {
                (c, fc) = (b, fb);
                (b, fb) = (a, fa);
            }

            (a, fa) = (x, fx);
            double best = Math.Abs(fa) < Math.Abs(fb) ? a : b;
            double span = Math.Abs(b - a);
            double smallest = (RelativeRounding * Math.Abs(best)) + (0.5 * width);
            if (fa == 0 || smallest > 0.5 * span)
            {
                return fa == 0 ? a : best;
            }

            double xi = (a - b) / (c - b);
            double phi = (fa - fb) / (fc - fb);
            bool smooth = (phi * phi) < xi && ((1 - phi) * (1 - phi)) < 1 - xi;
            share = smooth
                ? (fa / (fb - fa) * fc / (fb - fc)) + ((c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb))
                : 0.5;
            double least = smallest / span;
            share = Math.Clamp(share, least, 1 - least);
        }

        return Math.Abs(fa) < Math.Abs(fb) ? a : b;
    }
}
