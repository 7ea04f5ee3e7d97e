using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Drawings;

/// <summary>Lines that fill an area: wood grain and hatching.</summary>
internal static class AreaDraughting
{
    private const double LeastSpacing = 0.3;

    internal static void Draw(DrawingBoard board, HatchLines hatch)
    {
        double step = board.Paper(Math.Max(LeastSpacing, hatch.Spacing));
        Point2 along = Point2.Direction(hatch.Angle);
        (double low, double high) = Span(hatch.Rings, along.Left);

        // Levels are counted from the drawing's origin, so that neighbouring areas continue each other's lines.
        for (double k = Math.Ceiling(low / step); k * step < high; k++)
        {
            foreach ((double from, double to) in AreaLines.Inside(hatch.Rings, along, k * step))
            {
                Add(board, hatch.Role, along, k * step, from, to);
            }
        }
    }

    /// <summary>
    /// Uneven, as grain is: the distance of the lines and the lengths of their pieces wander about a mean. The wandering comes from counting lines and pieces,
    /// not from chance, so the same area always looks the same.
    /// </summary>
    internal static void Draw(DrawingBoard board, GrainLines grain)
    {
        double step = board.Paper(Math.Max(LeastSpacing, grain.Spacing));
        Point2 along = Point2.Direction(grain.Angle);
        (double low, double high) = Span(grain.Rings, along.Left);
        int line = 0;
        for (double level = low + (step * 0.5); level < high; level += step * (0.55 + (0.9 * Wander(line, 0))), line++)
        {
            foreach ((double from, double to) in AreaLines.Inside(grain.Rings, along, level))
            {
                AddFibres(board, along, level, from, to, line);
            }
        }
    }

    private static void AddFibres(DrawingBoard board, Point2 along, double level, double from, double to, int line)
    {
        // Every line starts at its own place before the area, so that the gaps of neighbours never stand in a row.
        double at = from - (board.Paper(40) * Wander(line, 1));
        for (int piece = 1; at < to; piece++)
        {
            double end = at + board.Paper(12 + (38 * Wander(line, 2 * piece)));
            double a = Math.Max(at, from);
            double b = Math.Min(end, to);
            if (b - a > board.Paper(0.8))
            {
                Add(board, LineRole.Grain, along, level, a, b);
            }

            at = end + board.Paper(1.6 + (4.5 * Wander(line, (2 * piece) + 1)));
        }
    }

    private static void Add(DrawingBoard board, LineRole role, Point2 along, double level, double from, double to)
    {
        Point2 foot = along.Left * level;
        board.Line(role, foot + (along * from), foot + (along * to));
    }

    /// <summary>A number in [0, 1) that looks unordered but depends on nothing but its two counts (an integer mix with odd multipliers).</summary>
    private static double Wander(int line, int piece)
    {
        unchecked
        {
            uint h = ((uint)line * 0x9E3779B1u) ^ ((uint)piece * 0x85EBCA77u);
            h ^= h >> 15;
            h *= 0x2C1B3C6Du;
            h ^= h >> 12;
            h *= 0x297A2D39u;
            h ^= h >> 15;
            return h / 4294967296.0;
        }
    }

    private static (double Low, double High) Span(ImmutableArray<Outline> rings, Point2 axis)
    {
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        foreach (Curve curve in rings.SelectMany(r => r.Curves))
        {
            (double a, double b) = CurveExtent.Along(curve, axis);
            low = Math.Min(low, a);
            high = Math.Max(high, b);
        }

        return (low, high);
    }
}
