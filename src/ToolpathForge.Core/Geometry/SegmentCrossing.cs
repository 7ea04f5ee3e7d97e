namespace ToolpathForge.Geometry;

/// <summary>Where two segments meet.</summary>
internal static class SegmentCrossing
{
    /// <summary>The points that two segments share, ends included within the tolerance; overlapping pieces give the ends of the overlap.</summary>
    internal static void Find(Segment a, Segment b, double tolerance, List<Point2> found)
    {
        found.Clear();
        Touch(a.Start, b);
        Touch(a.End, b);
        Touch(b.Start, a);
        Touch(b.End, a);
        if (a.IsLine && b.IsLine)
        {
            Lines(a, b);
        }
        else if (a.IsLine)
        {
            LineArc(a, b);
        }
        else if (b.IsLine)
        {
            LineArc(b, a);
        }
        else
        {
            Arcs(a, b);
        }

        void Touch(Point2 end, Segment other)
        {
            if (other.Distance(end) <= tolerance)
            {
                Add(end);
            }
        }

        void Add(Point2 p)
        {
            foreach (Point2 q in found)
            {
                if (q.DistanceTo(p) <= 4 * tolerance)
                {
                    return;
                }
            }

            if (a.Distance(p) <= tolerance && b.Distance(p) <= tolerance)
            {
                found.Add(p);
            }
        }

        void Lines(Segment s, Segment t)
        {
            Point2 r = s.End - s.Start;
            Point2 q = t.End - t.Start;
            double det = r.Cross(q);
            if (det != 0)
            {
                Add(s.Start + (r * ((t.Start - s.Start).Cross(q) / det)));
            }
        }

        void LineArc(Segment line, Segment arc)
        {
            Point2 u = (line.End - line.Start).Unit();
            Point2 c = arc.Center - line.Start;
            double foot = c.Dot(u);
            double h = u.Cross(c);
            double disc = (arc.Radius * arc.Radius) - (h * h);
            if (disc > 0)
            {
                double half = Math.Sqrt(disc);
                Add(line.Start + (u * (foot - half)));
                Add(line.Start + (u * (foot + half)));
            }
        }

        void Arcs(Segment s, Segment t)
        {
            Point2 c = t.Center - s.Center;
            double d2 = c.LengthSquared;
            if (d2 == 0)
            {
                return;
            }

            double share = (d2 + (s.Radius * s.Radius) - (t.Radius * t.Radius)) / (2 * d2);
            double disc = (s.Radius * s.Radius / d2) - (share * share);
            if (disc > 0)
            {
                double half = Math.Sqrt(disc);
                Add(s.Center + (c * share) + (c.Left * half));
                Add(s.Center + (c * share) - (c.Left * half));
            }
        }
    }
}
