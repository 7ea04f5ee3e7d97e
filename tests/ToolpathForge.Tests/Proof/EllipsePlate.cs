using ToolpathForge.Proof;

namespace ToolpathForge.Tests.Proof;

/// <summary>
/// A plate whose working edge is a quarter ellipse of 100 x 60 about (0, 0), in the manner of a pattern; the rest is straight: (0, 60), (-40, 60), (-40, -20), (100, -20).
/// Its programs follow the parallel curve x = cos t (a + R b/g), y = sin t (b + R a/g), g² = a² sin² t + b² cos² t.
/// </summary>
internal static class EllipsePlate
{
    internal const double A = 100, B = 60;
    private const double R = HandWritten.R;

    internal static TargetPiece Piece { get; } = new()
    {
        Name = "plate",
        Loops =
        [
            [
                new EllipseEdge(new(0, 0), new(A, 0), new(0, B), 0, Math.PI / 2),
                new LineEdge(new(0, B), new(-40, B)),
                new LineEdge(new(-40, B), new(-40, -20)),
                new LineEdge(new(-40, -20), new(A, -20)),
                new LineEdge(new(A, -20), new(A, 0)),
            ],
        ],
        Bottom = -HandWritten.Thickness,
        Top = 0,
    };

    internal static Target Target(double tolerance = 0.01) => HandWritten.Target(Piece) with
    {
        Tolerance = tolerance,
        Stock = [TargetStock.Box(-60, -40, 140, 100, -HandWritten.Thickness, 0)],
        Travel = new TargetTravel(new(-80, -60, -20), new(400, 300, 40)),
    };

    internal static PlanePoint OnParallel(double t, double radius = R)
    {
        (double sin, double cos) = Math.SinCos(t);
        double g = Math.Sqrt((A * A * sin * sin) + (B * B * cos * cos));
        return new(cos * (A + (radius * B / g)), sin * (B + (radius * A / g)));
    }

    /// <summary>Counter-clockwise round the outside in two depths, the ellipse in arcs or chords at equal steps of t.</summary>
    /// <param name="arcs">How many arcs; 0 for chords.</param>
    /// <param name="chords">How many chords.</param>
    /// <param name="decimals">Decimals written.</param>
    /// <param name="nudge">Moves every point on the ellipse: amplitude and seed.</param>
    internal static HandWritten Program(int arcs, int chords = 0, int decimals = 4, (double Amplitude, int Seed) nudge = default)
    {
        var p = new HandWritten { Decimals = decimals };
        var random = new Random(nudge.Seed);
        PlanePoint Nudged(double t)
        {
            PlanePoint q = OnParallel(t);
            return new(q.X + (nudge.Amplitude * ((2 * random.NextDouble()) - 1)), q.Y + (nudge.Amplitude * ((2 * random.NextDouble()) - 1)));
        }

        p.Header().Rapid(-40, -20 - R).RapidZ(1);
        p.Line(-40, -20 - R, 0, 300);
        foreach (double depth in (double[])[-3, HandWritten.Deep])
        {
            p.Line(A, -20 - R, depth, 1200);
            p.Arc(false, A + R, -20, A, -20);
            p.Line(A + R, 0);
            int n = Math.Max(arcs, chords);
            PlanePoint last = OnParallel(0);
            for (int i = 1; i <= n; i++)
            {
                double t = Math.PI / 2 * i / n;
                PlanePoint next = i == n ? OnParallel(t) : Nudged(t);
                if (arcs == 0)
                {
                    p.Line(next.X, next.Y);
                    continue;
                }

                ArcThrough(p, last, OnParallel(t - (Math.PI / 4 / n)), next);
                last = new(p.Round(next.X), p.Round(next.Y));
            }

            p.Line(-40, B + R);
            p.Arc(false, -40 - R, B, -40, B);
            p.Line(-40 - R, -20);
            p.Arc(false, -40, -20 - R, -40, -20);
        }

        p.Line(A, -20 - R);
        return p.Footer();
    }

    /// <summary>An arc between written ends, its centre on their bisector as near as the middle asks.</summary>
    private static void ArcThrough(HandWritten p, PlanePoint start, PlanePoint middle, PlanePoint end)
    {
        var to = new PlanePoint(p.Round(end.X), p.Round(end.Y));
        PlanePoint u = start.Minus(middle), v = to.Minus(middle);
        double twice = 2 * u.Cross(v);
        var center = middle.Plus(new(((v.Y * u.Dot(u)) - (u.Y * v.Dot(v))) / twice, ((u.X * v.Dot(v)) - (v.X * u.Dot(u))) / twice));
        p.Arc(false, to.X, to.Y, center.X, center.Y);
    }

    /// <summary>Distance to the plate's edge, by the tests' own means.</summary>
    internal static double DistanceToEdge(PlanePoint p)
    {
        double best = p.X >= 0 && p.Y >= 0 ? EllipseOracle.Distance(A, B, p) : double.PositiveInfinity;
        foreach (LineEdge line in Piece.Loops[0].OfType<LineEdge>())
        {
            PlanePoint along = line.To.Minus(line.From);
            double t = Math.Clamp(p.Minus(line.From).Dot(along) / along.Dot(along), 0, 1);
            best = Math.Min(best, p.DistanceTo(line.From.Plus(along.Times(t))));
        }

        return best;
    }

    internal static bool Holds(PlanePoint p) =>
        p.X > -40 && p.Y > -20 && p.X < A && p.Y < B && (p.X <= 0 || p.Y <= 0 || (p.X * p.X / (A * A)) + (p.Y * p.Y / (B * B)) < 1);
}
