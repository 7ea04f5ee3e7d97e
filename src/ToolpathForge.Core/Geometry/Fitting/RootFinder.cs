namespace ToolpathForge.Geometry;

/// <summary>
/// The root of a function between two ends where it has opposite signs. Stops on the width of the bracket alone, because what is wanted is a place;
/// a solver that also wants the function's value small never ends where the function is steep.
/// </summary>
internal static class RootFinder
{
    private const int MostSteps = 200;

    /// <summary>A secant step of so many times the width asked for that does not improve is rounding.</summary>
    private const double SettledSteps = 1000;

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

    /// <summary>
    /// The secant method from a good guess, for a function that is all but straight. Null where it does not settle: then the bracket decides.
    /// </summary>
    /// <param name="f">The function; may be infinite somewhere.</param>
    /// <param name="guess">A place near the root.</param>
    /// <param name="slope">About the function's slope there.</param>
    /// <param name="low">The root is looked for above this.</param>
    /// <param name="high">And not above this.</param>
    /// <param name="width">Settled when a step is shorter.</param>
    public static double? Near(Func<double, double> f, double guess, double slope, double low, double high, double width)
    {
        double x = guess;
        double fx = f(x);
        for (int step = 0; step < 12; step++)
        {
            double next = x - (fx / slope);
            if (!(next > low && next <= high))
            {
                return null;
            }

            if (Math.Abs(next - x) <= width)
            {
                return next;
            }

            double fnext = f(next);
            if (fnext == 0 || (Math.Abs(fnext) >= Math.Abs(fx) && Math.Abs(next - x) <= SettledSteps * width))
            {
                // Rounding of the function itself is all that is left.
                return fnext == 0 ? next : x;
            }

            if (!double.IsFinite(fnext) || fnext == fx || Math.Abs(fnext) > Math.Abs(fx))
            {
                return null;
            }

            slope = (fnext - fx) / (next - x);
            (x, fx) = (next, fnext);
        }

        return null;
    }
}
