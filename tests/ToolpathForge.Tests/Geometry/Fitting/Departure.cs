using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Fitting;

/// <summary>Measures, by plain dense sampling and apart from the code under test, how far a fitted contour and the exact curves lie from each other.</summary>
internal static class Departure
{
    /// <summary>Largest distance seen from points of the exact curves to the contour.</summary>
    public static double OfCurves(Outline outline, Contour contour, int samplesPerCurve)
    {
        double worst = 0;
        foreach (Curve curve in outline.Curves)
        {
            for (int i = 0; i <= samplesPerCurve; i++)
            {
                worst = Math.Max(worst, contour.Distance(curve.PointAt(i / (double)samplesPerCurve)));
            }
        }

        return worst;
    }

    /// <summary>Largest distance seen from points of the contour to the exact curves.</summary>
    public static double OfContour(FittedContour fit, Outline outline, int samplesPerSegment)
    {
        double worst = 0;
        Point2[][] looks = [.. outline.Curves.Select(Looks)];
        for (int s = 0; s < fit.Contour.SegmentCount; s++)
        {
            int curve = fit.CurveOf[s];
            for (int i = 0; i <= samplesPerSegment; i++)
            {
                worst = Math.Max(worst, ToCurve(outline.Curves[curve], looks[curve], fit.Contour[s].PointAt(i / (double)samplesPerSegment)));
            }
        }

        return worst;
    }

    public static double ToCurve(Curve curve, Point2 p) => ToCurve(curve, Looks(curve), p);

    private static Point2[] Looks(Curve curve)
    {
        const int Many = 6_000;
        return [.. Enumerable.Range(0, Many + 1).Select(i => curve.PointAt(i / (double)Many))];
    }

    /// <summary>Distance from a point to a curve: many looks, then ever finer about each low of them that may hold the nearest place.</summary>
    private static double ToCurve(Curve curve, Point2[] looks, Point2 p)
    {
        var seen = new double[looks.Length];
        for (int i = 0; i < seen.Length; i++)
        {
            seen[i] = looks[i].DistanceTo(p);
        }

        double nearest = seen.Min();
        double best = nearest;
        double step = 1.0 / (looks.Length - 1);
        for (int i = 0; i < seen.Length; i++)
        {
            bool low = (i == 0 || seen[i] <= seen[i - 1]) && (i == seen.Length - 1 || seen[i] <= seen[i + 1]);
            if (low && seen[i] - looks[i].DistanceTo(looks[i == 0 ? 1 : i - 1]) - looks[i].DistanceTo(looks[i == seen.Length - 1 ? i - 1 : i + 1]) <= nearest)
            {
                best = Math.Min(best, Refined(t => curve.PointAt(t).DistanceTo(p), Math.Max(0, (i - 2) * step), Math.Min(1, (i + 2) * step)));
            }
        }

        return best;
    }

    /// <summary>Largest change of direction between neighbours that stand for one curve, radians.</summary>
    public static double WorstKink(FittedContour fit)
    {
        double worst = 0;
        for (int i = 0; i + 1 < fit.Contour.SegmentCount; i++)
        {
            if (fit.CurveOf[i] == fit.CurveOf[i + 1])
            {
                worst = Math.Max(worst, Math.Abs(Biarc.AngleBetween(fit.Contour[i].EndDirection, fit.Contour[i + 1].StartDirection)));
            }
        }

        return worst;
    }

    // Ever finer grids about the best place: unlike golden section they forgive several lows in one bracket.
    private static double Refined(Func<double, double> f, double low, double high)
    {
        const int Steps = 24;
        double best = double.PositiveInfinity;
        double at = low;
        for (int round = 0; round < 14; round++)
        {
            double step = (high - low) / Steps;
            for (int i = 0; i <= Steps; i++)
            {
                double t = low + (step * i);
                double value = f(t);
                if (value < best)
                {
                    (best, at) = (value, t);
                }
            }

            (low, high) = (Math.Max(low, at - step), Math.Min(high, at + step));
        }

        return best;
    }
}
