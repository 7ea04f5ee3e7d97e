using System.Diagnostics;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;

namespace ToolpathForge.Benchmarks.Ratios;

/// <summary>The whole walk on the sample, and how few moves its curves take.</summary>
internal static class PlanFigures
{
    internal static IEnumerable<Func<Figure>> All()
    {
        yield return WarmPlan;
        yield return () => Moves(0.01, 1.0 / 5);
        yield return () => Moves(0.001, 1.0 / 8);
    }

    private static Figure WarmPlan()
    {
        string text = File.ReadAllText(Sample());
        Job job = JobReader.Read(text, "boathouse.toml", _ => null).Job ?? throw new InvalidOperationException("The sample cannot be read.");
        for (int i = 0; i < 30; i++)
        {
            _ = Planner.Plan(job);
        }

        double[] times = new double[15];
        for (int i = 0; i < times.Length; i++)
        {
            long from = Stopwatch.GetTimestamp();
            Plan plan = Planner.Plan(job);
            times[i] = Stopwatch.GetElapsedTime(from).TotalMilliseconds;
            if (plan.Programs.Length != job.Makes.Length)
            {
                throw new InvalidOperationException("A plan of the sample has lost its programs.");
            }
        }

        Array.Sort(times);
        return new Figure("sample planned and proven, warm", times[times.Length / 2], "ms", "none: the goal is a time", 30, false, $"{job.Makes.Length} programs");
    }

    // A quarter ellipse of 200 by 120: arcs of the fit against the fewest inscribed chords that keep the same distance.
    private static Figure Moves(double tolerance, double goal)
    {
        var curve = new EllipseCurve(default, new Point2(200, 0), new Point2(0, 120), 0, Math.PI / 2);
        int arcs = ArcFit.Fit(new Outline([curve], false), tolerance).Contour.SegmentCount;
        int chords = 0;
        for (double t = 0; t < 1; chords++)
        {
            t = Furthest(curve, t, tolerance);
        }

        return new Figure(
            FormattableString.Invariant($"moves on a curve at {tolerance} mm"), (double)arcs / chords, "x", "fewest inscribed chords", goal, false, FormattableString.Invariant($"{arcs} arcs against {chords} chords"));
    }

    // The longest chord from t whose curve rises no further than the tolerance: a chord's rise is greatest where the curve runs parallel to it.
    private static double Furthest(Curve curve, double t, double tolerance)
    {
        double Rise(double to)
        {
            Point2 a = curve.PointAt(t);
            Point2 along = (curve.PointAt(to) - a).Unit();
            (double low, double high) = (t, to);
            for (int i = 0; i < 60; i++)
            {
                double middle = (low + high) / 2;
                (low, high) = along.Cross(curve.FirstDerivative(middle)) * along.Cross(curve.FirstDerivative(t)) > 0 ? (middle, high) : (low, middle);
            }

            return Math.Abs(along.Cross(curve.PointAt(low) - a));
        }

        if (Rise(1) <= tolerance)
        {
            return 1;
        }

        (double near, double far) = (t, 1);
        for (int i = 0; i < 60; i++)
        {
            double middle = (near + far) / 2;
            (near, far) = Rise(middle) <= tolerance ? (middle, far) : (near, middle);
        }

        return near;
    }

    internal static string Sample()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string path = Path.Combine(folder.FullName, "samples", "boathouse", "boathouse.toml");
            if (File.Exists(path))
            {
                return path;
            }
        }

        throw new FileNotFoundException("The figures are taken inside a checkout.");
    }
}
