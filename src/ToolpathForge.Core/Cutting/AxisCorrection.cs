using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Cutting;

/// <summary>
/// Sends the bit where it must be sent so that, with the errors of the machine's axes, it goes where it is meant to. A circle becomes an ellipse that differs
/// from it by thousandths of its radius; it stays arcs, each short enough that the difference is lost.
/// </summary>
internal static class AxisCorrection
{
    /// <summary>
    /// The toolpath in the machine's own coordinates. Over a sweep θ an arc through the ends and the middle of its image leaves it by at most
    /// 0.0481·ε·r·θ³: what is left of ε·r·cos 2α when 1, cos α and sin α are taken from it at three even places (remainder of interpolation in the kernel of
    /// D³ + D, 6ε·r · max |t(t - h)(t + h)| / 6 with h = θ/2).
    /// </summary>
    /// <param name="path">As it is meant.</param>
    /// <param name="axes">The errors.</param>
    /// <param name="departure">How far an arc may lie from where it should, mm.</param>
    internal static Toolpath Apply(Toolpath path, AxisErrors axes, double departure)
    {
        if (axes == AxisErrors.None)
        {
            return path;
        }

        var moves = ImmutableArray.CreateBuilder<Move>(path.Moves.Length);
        var from = default(Point3);
        foreach (Move move in path.Moves)
        {
            if (move.Kind == MoveKind.Arc)
            {
                AddArc(moves, from, move, axes, departure);
            }
            else
            {
                moves.Add(move with { End = new Point3(axes.Commanded(move.End.Flat), move.End.Z) });
            }

            from = move.End;
        }

        return path with { Moves = moves.ToImmutable() };
    }

    private static void AddArc(ImmutableArray<Move>.Builder moves, Point3 from, Move move, AxisErrors axes, double departure)
    {
        const double Remainder = 0.0481;
        var whole = new Segment(from.Flat, move.End.Flat, move.Bulge);
        double step = Math.Cbrt(departure / (Remainder * axes.Ovalness * whole.Radius));
        int parts = whole.IsLine ? 1 : Math.Max(1, (int)Math.Ceiling(Math.Abs(whole.Sweep) / step));
        for (int i = 0; i < parts; i++)
        {
            double end = (i + 1.0) / parts;
            Point2 a = axes.Commanded(whole.PointAt((double)i / parts));
            Point2 middle = axes.Commanded(whole.PointAt((i + 0.5) / parts));
            Point2 b = axes.Commanded(i + 1 == parts ? move.End.Flat : whole.PointAt(end));

            // The angle between the two chords is half the sweep; the bulge is the tangent of a quarter of it.
            double half = Math.Atan2((middle - a).Cross(b - middle), (middle - a).Dot(b - middle));
            moves.Add(move with { End = new Point3(b, from.Z + ((move.End.Z - from.Z) * end)), Bulge = Math.Tan(half / 2) });
        }
    }
}
