using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>
/// Rounds the corner between any two curves. The fillet's centre is where their parallels at its radius meet; the solution is followed from radius 0,
/// where it is the corner itself, by Newton's method on both parameters, so that of several circles which touch both it is the one in the corner.
/// </summary>
internal static class CornerRounding
{
    private const int Steps = 32;

    /// <summary>A step of Newton's method below this is the end of it, mm.</summary>
    private const double Settled = 1e-12;

    /// <summary>A parameter may be beyond its end by this, which is rounding.</summary>
    private const double Rounding = 1e-12;

    /// <summary>Both curves cut back, with the arc between them.</summary>
    /// <param name="Before">What is left of the first curve.</param>
    /// <param name="Fillet">The arc, tangent to both.</param>
    /// <param name="After">What is left of the second curve.</param>
    internal sealed record Rounded(ImmutableArray<Curve> Before, ArcCurve Fillet, ImmutableArray<Curve> After);

    /// <summary>The rounded corner; null when the radius has no room.</summary>
    /// <param name="before">Ends at the corner.</param>
    /// <param name="after">Begins there, in another direction.</param>
    /// <param name="radius">More than 0, mm.</param>
    internal static Rounded? Round(Curve before, Curve after, double radius)
    {
        double side = Math.Sign(before.DirectionAt(1).Cross(after.DirectionAt(0)));
        return Follow(before, after, radius, side) is not (double s, double t) ? null : Build(before, after, radius, side, s, t);
    }

    /// <summary>The largest radius that has room, mm, to a millionth of the one asked for.</summary>
    internal static double Largest(Curve before, Curve after, double refused)
    {
        double least = 0;
        double most = refused;
        for (int i = 0; i < 24; i++)
        {
            double middle = (least + most) / 2;
            (least, most) = Round(before, after, middle) is null ? (least, middle) : (middle, most);
        }

        return least;
    }

    private static (double S, double T)? Follow(Curve before, Curve after, double radius, double side)
    {
        double s = 1;
        double t = 0;
        for (int step = 1; step <= Steps; step++)
        {
            // Beyond the corner there is nothing to cut back: there the parallels of two curves that bend meet, but not those of what was drawn.
            if (Solve(before, after, side * radius * step / Steps, ref s, ref t) is false || s <= 0 || t >= 1 || s > 1 + Rounding || t < -Rounding)
            {
                return null;
            }
        }

        return (Math.Min(s, 1), Math.Max(t, 0));
    }

    // The parallel of a curve moves by v·(1 - dκ) for a step of its parameter, v the first derivative and d its distance to the left.
    private static bool Solve(Curve before, Curve after, double distance, ref double s, ref double t)
    {
        for (int i = 0; i < 40; i++)
        {
            (Point2 p, Point2 v) = Parallel(before, s, distance);
            (Point2 q, Point2 w) = Parallel(after, t, distance);
            Point2 gap = q - p;
            double slant = v.Cross(w);
            bool turnedOver = v.Dot(before.FirstDerivative(s)) <= 0 || w.Dot(after.FirstDerivative(t)) <= 0;
            if (turnedOver || Math.Abs(slant) <= 1e-12 * v.Length * w.Length)
            {
                return false;
            }

            double ds = gap.Cross(w) / slant;
            double dt = gap.Cross(v) / slant;
            s += ds;
            t += dt;
            if (!(s > -1 && s < 2 && t > -1 && t < 2))
            {
                return false;
            }

            if (Math.Abs(ds) * v.Length < Settled && Math.Abs(dt) * w.Length < Settled)
            {
                return true;
            }
        }

        return false;
    }

    private static (Point2 At, Point2 Derivative) Parallel(Curve curve, double t, double distance)
    {
        Point2 v = curve.FirstDerivative(t);
        return (curve.PointAt(t) + (v.Unit().Left * distance), v * (1 - (distance * curve.CurvatureAt(t))));
    }

    private static Rounded? Build(Curve before, Curve after, double radius, double side, double s, double t)
    {
        Point2 arriving = before.DirectionAt(s);
        Point2 leaving = after.DirectionAt(t);
        double turn = Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving));
        if (Math.Sign(turn) != side)
        {
            return null;
        }

        Point2 center = before.PointAt(s) + (arriving.Left * (side * radius));
        double from = (before.PointAt(s) - center).Angle;
        return new Rounded(CurvePart.Of(before, 0, s), new ArcCurve(center, radius, from, turn), CurvePart.Of(after, t, 1));
    }
}
