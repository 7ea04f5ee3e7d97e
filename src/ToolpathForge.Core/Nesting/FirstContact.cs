using ToolpathForge.Geometry;

namespace ToolpathForge.Nesting;

/// <summary>
/// How far a region can be pushed along a straight way until it meets another. First contact of regions of lines and arcs is a corner of one on an edge of
/// the other, or an arc that touches an arc or a line with opposite outward normals; each is solved for exactly.
/// </summary>
internal static class FirstContact
{
    /// <summary>
    /// A way that runs along an edge does not meet it: cosine between way and outward normal that is taken for none. Over an edge of a metre it lets
    /// a piece go in by 1e-5 mm at most, which the nester then finds and takes back.
    /// </summary>
    private const double Along = 1e-8;

    /// <summary>What has gone in by no more than this, mm, is met where it is.</summary>
    private const double Behind = 1e-4;

    /// <summary>The distance to the first contact, mm, at most <paramref name="most"/>.</summary>
    /// <param name="moving">What is pushed; it lies outside <paramref name="still"/>.</param>
    /// <param name="still">What stays.</param>
    /// <param name="way">Unit vector.</param>
    /// <param name="most">As far as is looked, mm.</param>
    internal static double Distance(Region moving, Region still, Point2 way, double most)
    {
        foreach (Contour a in moving.Loops)
        {
            for (int i = 0; i < a.SegmentCount; i++)
            {
                Segment s = a[i];
                Box2 swept = Swept(s.Box, way, most);
                foreach (Contour b in still.Loops)
                {
                    for (int k = 0; k < b.SegmentCount; k++)
                    {
                        Segment t = b[k];
                        if (t.Box.Meets(swept))
                        {
                            most = Math.Min(most, Pair(s, t, way, most));
                        }
                    }
                }
            }
        }

        return most;
    }

    private static Box2 Swept(Box2 box, Point2 way, double most) => new Box2(
        box.MinX + Math.Min(0, way.X * most),
        box.MinY + Math.Min(0, way.Y * most),
        box.MaxX + Math.Max(0, way.X * most),
        box.MaxY + Math.Max(0, way.Y * most)).Grown(Behind);

    private static double Pair(Segment moving, Segment still, Point2 way, double most)
    {
        // Either end of every segment, so that a corner is met by both edges that share it.
        double best = CornerOnEdge(moving.Start, still, way, most);
        best = CornerOnEdge(moving.End, still, way, best);
        best = CornerOnEdge(still.Start, moving, -way, best);
        best = CornerOnEdge(still.End, moving, -way, best);
        if (!moving.IsLine && !still.IsLine)
        {
            return ArcOnArc(moving, still, way, best);
        }

        if (!moving.IsLine)
        {
            return ArcOnLine(moving, still, way, best);
        }

        return still.IsLine ? best : ArcOnLine(still, moving, -way, best);
    }

    // A point that is pushed meets an edge from outside.
    private static double CornerOnEdge(Point2 p, Segment edge, Point2 way, double best)
    {
        if (edge.IsLine)
        {
            Point2 chord = edge.End - edge.Start;
            double length = chord.Length;
            Point2 normal = chord.Right / length;
            double against = way.Dot(normal);
            if (against > -Along)
            {
                return best;
            }

            double t = (edge.Start - p).Dot(normal) / against;
            double share = ((p + (way * t)) - edge.Start).Dot(chord) / (length * length);
            return share is >= 0 and <= 1 ? Taken(t, best) : best;
        }

        Point2 center = edge.Center;
        double radius = edge.Radius;
        Point2 q = p - center;
        double b = q.Dot(way);
        double root = (radius * radius) - (q.LengthSquared - (b * b));
        if (root <= 0)
        {
            return best;
        }

        // Into a disc at the near crossing, out of a hollow at the far one.
        root = Math.Sqrt(root);
        double at = edge.Bulge > 0 ? -b - root : -b + root;
        return root > radius * Along && edge.SpansDirection(q + (way * at)) ? Taken(at, best) : best;
    }

    private static double ArcOnArc(Segment moving, Segment still, Point2 way, double best)
    {
        // Signed radii, positive where the material is inside the circle: centres lie their sum apart along the still one's outward normal.
        double m = Math.CopySign(moving.Radius, moving.Bulge);
        double s = Math.CopySign(still.Radius, still.Bulge);
        double sum = m + s;
        if (Math.Abs(sum) < 1e-9 || (m < 0 && s < 0))
        {
            return best;
        }

        Point2 q = moving.Center - still.Center;
        double b = q.Dot(way);
        double root = (sum * sum) - (q.LengthSquared - (b * b));
        if (root <= 0)
        {
            return best;
        }

        root = Math.Sqrt(root);
        double t = sum > 0 ? -b - root : -b + root;
        Point2 normal = (q + (way * t)) / sum;
        return way.Dot(normal) < -Along && still.SpansDirection(normal * Math.Sign(s)) && moving.SpansDirection(normal * -Math.Sign(m))
            ? Taken(t, best)
            : best;
    }

    // The round of an arc on a straight edge; a hollow meets one with its ends.
    private static double ArcOnLine(Segment arc, Segment line, Point2 way, double best)
    {
        Point2 chord = line.End - line.Start;
        Point2 normal = chord.Right.Unit();
        double against = way.Dot(normal);
        if (arc.Bulge < 0 || against > -Along || !arc.SpansDirection(-normal))
        {
            return best;
        }

        Point2 touches = arc.Center - (normal * arc.Radius);
        double t = (line.Start - touches).Dot(normal) / against;
        double share = (touches + (way * t) - line.Start).Dot(chord) / chord.LengthSquared;
        return share is >= 0 and <= 1 ? Taken(t, best) : best;
    }

    private static double Taken(double t, double best) => t >= -Behind && t < best ? Math.Max(0, t) : best;
}
