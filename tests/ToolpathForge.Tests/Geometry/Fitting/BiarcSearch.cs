using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Fitting;

/// <summary>
/// Looks for the best biarc over a span of the quarter ellipse by trying joints over the whole range there is, on the curve and off it, and measuring
/// by plain sampling. Shares nothing with the fit but points and segments.
/// </summary>
internal sealed class BiarcSearch(double a, double b)
{
    private const int Samples = 32;

    private Point2 At(double t) => new(a * Math.Cos(t), b * Math.Sin(t));

    private Point2 Direction(double t) => new Point2(-a * Math.Sin(t), b * Math.Cos(t)).Unit();

    public double LeastDeviation(double from, double to)
    {
        double half = Biarc.AngleBetween(Direction(from), Direction(to)) / 2;
        double best = double.PositiveInfinity;
        int at = 0;
        const int Joints = 24;
        for (int i = 1; i < Joints; i++)
        {
            double deviation = Deviation(from, to, half * i / Joints);
            (best, at) = deviation < best ? (deviation, i) : (best, at);
        }

        double low = half * (at - 1) / Joints, high = half * (at + 1) / Joints;
        for (int i = 0; i < 20; i++)
        {
            double x = low + (0.382 * (high - low)), y = low + (0.618 * (high - low));
            (low, high) = Deviation(from, to, x) < Deviation(from, to, y) ? (low, y) : (x, high);
        }

        return Math.Min(best, Deviation(from, to, (low + high) / 2));
    }

    // The first arc sweeps twice the angle given; the rest of the turn is the second's.
    private double Deviation(double from, double to, double firstHalf)
    {
        Point2 leaving = Direction(from), arriving = Direction(to);
        double half = Biarc.AngleBetween(leaving, arriving) / 2;
        Point2 firstChord = leaving.Rotated(firstHalf), secondChord = leaving.Rotated(firstHalf + half);
        Point2 way = At(to) - At(from);
        double sine = firstChord.Cross(secondChord);
        double first = way.Cross(secondChord) / sine, second = firstChord.Cross(way) / sine;
        if (!(first > 0 && second > 0))
        {
            return double.PositiveInfinity;
        }

        Point2 meet = At(from) + (firstChord * first);
        var one = new Segment(At(from), meet, Math.Tan(firstHalf / 2));
        var two = new Segment(meet, At(to), Math.Tan((half - firstHalf) / 2));
        double worst = 0;
        for (int i = 1; i < Samples; i++)
        {
            Point2 p = At(from + ((to - from) * i / Samples));
            worst = Math.Max(worst, Math.Min(one.Distance(p), two.Distance(p)));
        }

        return worst;
    }
}
