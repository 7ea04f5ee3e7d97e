using MathNet.Numerics.LinearAlgebra;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Fitting;

/// <summary>
/// The yardstick: the least deviation that any chain of n tangent arcs can have over the quarter ellipse, its ends and end tangents held to the curve's.
/// The best chain departs equally far at every one of its 2n - 2 extremes, in turn to either side; that, and the end point, are 2n equations for n curvatures,
/// n - 1 sweeps (the last is what is left of the quarter turn) and the deviation itself, solved by Newton's method.
/// </summary>
internal sealed class FewestArcs(double a, double b, int n)
{
    private const double Quarter = Math.PI / 2;

    /// <summary>∫ of the cube root of the change of curvature along the length: what biarcs and arcs are counted by.</summary>
    public static double Measure(double a, double b) => MeasureTo(a, b, 40_000)[^1];

    public double LeastDeviation()
    {
        double[] x = Guess();
        for (int round = 0; round < 60; round++)
        {
            double[] f = Equations(x);
            double size = Size(f);
            if (size < 1e-11)
            {
                return Math.Abs(x[^1]);
            }

            Vector<double> step = Slopes(x, f).Solve(Vector<double>.Build.Dense(f));
            double share = 1;
            double[] next = x;
            while (share > 1e-4 && !(Size(Equations(next = [.. x.Select((v, i) => v - (share * step[i]))])) < size))
            {
                share /= 2;
            }

            x = next;
        }

        throw new InvalidOperationException($"No chain of {n} arcs found for {a} x {b}.");
    }

    private static double Size(double[] f) => Math.Sqrt(f.Sum(v => v * v));

    private static double[] MeasureTo(double a, double b, int steps)
    {
        var sum = new double[steps + 1];
        for (int i = 0; i < steps; i++)
        {
            // Substituted t = s²(3 - 2s)·π/2, because the cube root is steep at both ends.
            double s = (i + 0.5) / steps;
            double t = s * s * (3 - (2 * s)) * Quarter;
            double w = Math.Sqrt(Math.Pow(a * Math.Sin(t), 2) + Math.Pow(b * Math.Cos(t), 2));
            sum[i + 1] = sum[i] + (Math.Cbrt(3 * a * b * ((a * a) - (b * b)) * Math.Sin(t) * Math.Cos(t)) / w * 6 * s * (1 - s) * Quarter / steps);
        }

        return sum;
    }

    private Point2 At(double t) => new(a * Math.Cos(t), b * Math.Sin(t));

    private Point2 Slope(double t) => new(-a * Math.Sin(t), b * Math.Cos(t));

    // Inner arcs take equal shares of the measure, the two end arcs less: the ends are held.
    private double[] Guess()
    {
        double[] measure = MeasureTo(a, b, 4000);
        double endShare = 1 - (0.635 / 2);
        var node = new double[n + 1];
        node[n] = Quarter;
        for (int i = 1; i < n; i++)
        {
            double s = Array.FindIndex(measure, m => m >= measure[^1] * (i - 1 + endShare) / (n - 0.635)) / 4000.0;
            node[i] = s * s * (3 - (2 * s)) * Quarter;
        }

        var x = new double[2 * n];
        for (int i = 0; i < n; i++)
        {
            double length = Enumerable.Range(0, 400).Sum(k => Slope(node[i] + ((node[i + 1] - node[i]) * (k + 0.5) / 400)).Length) * (node[i + 1] - node[i]) / 400;
            double turn = Slope(node[i + 1]).Angle - Slope(node[i]).Angle;
            x[i] = turn / length;
            if (i < n - 1)
            {
                x[n + i] = turn;
            }
        }

        x[^1] = Math.Pow(measure[^1] / (n - 0.635), 3) / (72 * Math.Sqrt(3));
        return x;
    }

    private Matrix<double> Slopes(double[] x, double[] f)
    {
        Matrix<double> slopes = Matrix<double>.Build.Dense(2 * n, 2 * n);
        for (int c = 0; c < 2 * n; c++)
        {
            double[] moved = [.. x];
            double step = (1e-7 * Math.Abs(x[c])) + 1e-13;
            moved[c] += step;
            double[] g = Equations(moved);
            for (int r = 0; r < 2 * n; r++)
            {
                slopes[r, c] = (g[r] - f[r]) / step;
            }
        }

        return slopes;
    }

    private double[] Equations(double[] x)
    {
        var equations = new List<double>();
        Point2 at = At(0);
        double heading = Quarter;
        double from = 0;
        for (int i = 0; i < n; i++)
        {
            double turn = i < n - 1 ? x[n + i] : Math.PI - heading;
            Point2 center = at + (Point2.Direction(heading).Left / x[i]);
            heading += turn;
            at = center - (Point2.Direction(heading).Left / x[i]);
            double to = i < n - 1 ? Bisected(t => (At(t) - at).Dot(Point2.Direction(heading)), from, Quarter) : Quarter;
            foreach (double t in Extremes(center, from, to, i == 0 || i == n - 1 ? 1 : 2))
            {
                double side = equations.Count % 2 == 0 ? -1 : 1;
                equations.Add(At(t).DistanceTo(center) - (1 / x[i]) - (side * x[^1]));
            }

            from = to;
        }

        equations.Add(at.X);
        equations.Add(at.Y - b);
        return [.. equations];
    }

    private List<double> Extremes(Point2 center, double from, double to, int wanted)
    {
        const int Looks = 80;
        var found = new List<double>();
        double Change(double t) => (At(t) - center).Dot(Slope(t));
        double inset = 1e-4 * (to - from);
        double before = from + inset;
        for (int i = 1; i <= Looks; i++)
        {
            double t = i < Looks ? from + ((to - from) * i / Looks) : to - inset;
            if (Change(before) * Change(t) < 0)
            {
                found.Add(Bisected(u => Change(u) * Math.Sign(Change(t)), before, t));
            }

            before = t;
        }

        return found.Count == wanted ? found : [.. Enumerable.Range(1, wanted).Select(i => from + ((to - from) * i / (wanted + 1.0)))];
    }

    private static double Bisected(Func<double, double> f, double low, double high)
    {
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = f(middle) < 0 ? (middle, high) : (low, middle);
        }

        return low;
    }
}
