using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>Turns what a program commands into where the bit truly goes on a machine whose axes are off.</summary>
internal static class TrueMotion
{
    /// <summary>Most that an arc's stand-in may lie from its true image, mm: counted as an error of its radius, so that no bound is lost.</summary>
    private const double Departure = 1e-4;

    /// <summary>The same steps, each motion where it truly goes.</summary>
    internal static GcodeProgram Of(GcodeProgram program, TargetAxes axes)
    {
        var steps = ImmutableArray.CreateBuilder<ProgramStep>(program.Steps.Length);
        foreach (ProgramStep step in program.Steps)
        {
            if (step is Motion { Kind: MotionKind.Arc } arc)
            {
                AddArc(steps, arc, axes);
            }
            else
            {
                steps.Add(step is Motion motion ? motion with { Start = True(motion.Start, axes), End = True(motion.End, axes) } : step);
            }
        }

        return program with { Steps = steps.ToImmutable() };
    }

    /// <summary>
    /// A circle's image is an ellipse: its radius varies as e·cos 2α about a mean, e at most r·(|sx - sy| + 2·|sin φ|). A circle through three points of a
    /// stretch of sweep θ takes 1, cos α and sin α out of that; the rest is at most e·|6/6·t(t - h)(t + h)|, h = θ/2, and t(t - h)(t + h) at most
    /// 2h³/√27, so e·θ³/(4√27), to which a tenth is added for terms of higher order.
    /// </summary>
    private static void AddArc(ImmutableArray<ProgramStep>.Builder steps, Motion arc, TargetAxes axes)
    {
        double oval = arc.Radius * (Math.Abs(axes.ScaleX - axes.ScaleY) + (2 * Math.Abs(Math.Sin(axes.Skew))));
        double factor = 1.1 / (4 * Math.Sqrt(27));
        double widest = oval > 0 ? Math.Cbrt(Departure / (factor * oval)) : double.PositiveInfinity;
        int parts = Math.Max(1, (int)Math.Ceiling(Math.Abs(arc.Sweep) / Math.Min(widest, Math.PI / 2)));
        double sweep = arc.Sweep / parts;
        double left = factor * oval * Math.Abs(sweep * sweep * sweep);
        double start = Math.Atan2(arc.Start.Y - arc.Center.Y, arc.Start.X - arc.Center.X);
        SpacePoint At(double share) => share switch
        {
            0 => arc.Start,
            1 => arc.End,
            _ => Point(arc.Center.Plus(PlanePoint.Direction(start + (arc.Sweep * share)).Times(arc.Radius)), arc.Start.Z + ((arc.End.Z - arc.Start.Z) * share)),
        };
        for (int i = 0; i < parts; i++)
        {
            SpacePoint from = True(At((double)i / parts), axes);
            SpacePoint to = True(At((i + 1.0) / parts), axes);
            PlanePoint middle = True(At((i + 0.5) / parts), axes).Plane;
            PlanePoint first = middle.Minus(from.Plane);
            PlanePoint second = to.Plane.Minus(middle);
            double turn = 2 * first.AngleTo(second);
            PlanePoint chord = to.Plane.Minus(from.Plane);
            double radius = chord.Length / (2 * Math.Sin(Math.Abs(turn) / 2));
            PlanePoint center = from.Plane.Plus(chord.Times(0.5)).Plus(chord.Left.Unit().Times(Math.Sign(turn) * radius * Math.Cos(turn / 2)));
            double scale = Math.Max(axes.ScaleX, axes.ScaleY) + Math.Abs(Math.Sin(axes.Skew));
            steps.Add(arc with { Start = from, End = to, Center = center, Radius = radius, Sweep = turn, RadiusError = (arc.RadiusError * scale) + left });
        }
    }

    private static SpacePoint Point(PlanePoint p, double z) => new(p.X, p.Y, z);

    // An axis that the program has not placed stays unknown; square axes do not mix.
    private static SpacePoint True(SpacePoint p, TargetAxes axes)
    {
        double lean = axes.Skew == 0 ? 0 : axes.ScaleY * p.Y * Math.Sin(axes.Skew);
        return new((axes.ScaleX * p.X) + lean, axes.ScaleY * p.Y * Math.Cos(axes.Skew), p.Z);
    }
}
