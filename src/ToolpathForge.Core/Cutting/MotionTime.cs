using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>
/// How long a program runs. A machine speeds up and slows down at its acceleration, takes a corner at the speed at which it may cut it short by
/// a small distance, and an arc no faster than its acceleration bends the path: v = √(aR). The corner's speed is that of the arc which departs
/// from it by the junction distance, v = √(aδs/(1-s)) with s the sine of half the inside angle. One pass forwards and one back hold every
/// speed to what the neighbours allow.
/// </summary>
internal static class MotionTime
{
    /// <summary>How far a machine of this class may cut a corner short, mm: common practice.</summary>
    internal const double Junction = 0.01;

    /// <summary>One straight or curved stretch.</summary>
    /// <param name="Length">mm.</param>
    /// <param name="Feed">mm/s.</param>
    /// <param name="Radius">mm; infinite for a straight.</param>
    /// <param name="Start">Unit direction at its start, in space.</param>
    /// <param name="End">Unit direction at its end.</param>
    internal readonly record struct Stretch(double Length, double Feed, double Radius, Point3 Start, Point3 End);

    /// <summary>Seconds for a toolpath.</summary>
    /// <param name="path">The moves.</param>
    /// <param name="acceleration">mm/s².</param>
    /// <param name="rapid">Feed of rapids, mm/min.</param>
    internal static double Seconds(Toolpath path, double acceleration, double rapid)
    {
        var stretches = new List<Stretch>(path.Moves.Length);
        Point3 at = path.Moves.Length > 0 ? path.Moves[0].End : default;
        foreach (Move move in path.Moves.Skip(1))
        {
            var flat = new Segment(at.Flat, move.End.Flat, move.Bulge);
            double dz = move.End.Z - at.Z;
            double plane = flat.Length;
            double length = double.Hypot(plane, dz);
            if (length > 1e-9)
            {
                double feed = (move.Kind == MoveKind.Rapid ? rapid : move.Feed) / 60;
                stretches.Add(new Stretch(length, feed, flat.Radius, Direction(flat, 0, plane, dz), Direction(flat, 1, plane, dz)));
            }

            at = move.End;
        }

        return Seconds(stretches, acceleration);
    }

    /// <summary>Seconds for a chain of stretches that begins and ends at rest.</summary>
    internal static double Seconds(IReadOnlyList<Stretch> stretches, double acceleration)
    {
        int n = stretches.Count;
        double[] joints = new double[n + 1];
        for (int i = 1; i < n; i++)
        {
            joints[i] = Math.Min(JointSpeed(stretches[i - 1].End, stretches[i].Start, acceleration), Math.Min(Top(stretches[i - 1], acceleration), Top(stretches[i], acceleration)));
        }

        for (int i = 1; i <= n; i++)
        {
            joints[i] = Math.Min(joints[i], Math.Sqrt((joints[i - 1] * joints[i - 1]) + (2 * acceleration * stretches[i - 1].Length)));
        }

        for (int i = n - 1; i >= 0; i--)
        {
            joints[i] = Math.Min(joints[i], Math.Sqrt((joints[i + 1] * joints[i + 1]) + (2 * acceleration * stretches[i].Length)));
        }

        double seconds = 0;
        for (int i = 0; i < n; i++)
        {
            double v0 = joints[i];
            double v1 = joints[i + 1];
            double length = stretches[i].Length;
            double top = Math.Min(Top(stretches[i], acceleration), Math.Sqrt((((v0 * v0) + (v1 * v1)) / 2) + (acceleration * length)));
            double ramps = ((2 * top * top) - (v0 * v0) - (v1 * v1)) / (2 * acceleration);
            seconds += (((2 * top) - v0 - v1) / acceleration) + (Math.Max(0, length - ramps) / top);
        }

        return seconds;
    }

    /// <summary>Speed through a corner, mm/s.</summary>
    internal static double JointSpeed(Point3 arriving, Point3 leaving, double acceleration)
    {
        double cosTurn = Math.Clamp((arriving.X * leaving.X) + (arriving.Y * leaving.Y) + (arriving.Z * leaving.Z), -1, 1);

        // Inside angle θ = π - turn, so sin(θ/2) = cos(turn/2).
        double s = Math.Sqrt((1 + cosTurn) / 2);
        return s > 1 - 1e-12 ? double.PositiveInfinity : Math.Sqrt(acceleration * Junction * s / (1 - s));
    }

    private static double Top(Stretch stretch, double acceleration) =>
        Math.Min(stretch.Feed, double.IsInfinity(stretch.Radius) ? double.PositiveInfinity : Math.Sqrt(acceleration * stretch.Radius));

    private static Point3 Direction(Segment flat, double share, double plane, double dz)
    {
        double length = double.Hypot(plane, dz);
        Point2 d = plane > 0 ? flat.DirectionAt(share) * (plane / length) : default;
        return new Point3(d, dz / length);
    }
}
