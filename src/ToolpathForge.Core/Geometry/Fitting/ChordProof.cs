namespace ToolpathForge.Geometry;

/// <summary>
/// The distance between an arc (or a line) and chords that run from its start to its end. Along a chord the power of the point about the circle is a parabola, so
/// the largest distances are at vertices and where a chord is nearest to the centre. If every chord runs round the centre in the arc's sense, the radial distance is the one both ways.
/// </summary>
internal static class ChordProof
{
    /// <summary>Largest distance, mm; infinite if a chord runs backwards.</summary>
    public static double Departure(ReadOnlySpan<Point2> points, Segment arc)
    {
        Point2 normal = arc.StartDirection.Left;
        double curvature = arc.Sagitta > 0 ? 4 * arc.Bulge / ((1 + (arc.Bulge * arc.Bulge)) * arc.Chord) : 0;
        double most = 0;
        for (int i = 0; i + 1 < points.Length; i++)
        {
            Point2 q = points[i] - arc.Start;
            Point2 way = points[i + 1] - points[i];
            double square = way.LengthSquared;
            if (square <= Accuracy.SamePoint * Accuracy.SamePoint)
            {
                continue;
            }

            if (way.Dot(Along(q, normal, curvature)) <= 0 || way.Dot(Along(q + way, normal, curvature)) <= 0)
            {
                return double.PositiveInfinity;
            }

            most = Math.Max(most, Math.Max(Distance(q, normal, curvature), Distance(q + way, normal, curvature)));
            double top = (way.Dot(normal) - (curvature * q.Dot(way))) / (curvature * square);
            if (top is > 0 and < 1)
            {
                most = Math.Max(most, Distance(q + (way * top), normal, curvature));
            }
        }

        return most;
    }

    // Direction of the circle about the same centre through the point, whatever its length.
    private static Point2 Along(Point2 q, Point2 normal, double curvature) => (normal - (q * curvature)).Right;

    private static double Distance(Point2 q, Point2 normal, double curvature)
    {
        double power = q.Dot(normal) - (curvature * q.LengthSquared / 2);
        return Math.Abs(2 * power / (1 + Math.Sqrt(Math.Max(0, 1 - (2 * curvature * power)))));
    }
}
