namespace ToolpathForge.Geometry;

/// <summary>The nearest points of two segments.</summary>
/// <param name="Distance">How far apart they are, mm.</param>
/// <param name="On">The point on the first.</param>
/// <param name="To">The point on the second.</param>
public readonly record struct SegmentGap(double Distance, Point2 On, Point2 To);

/// <summary>
/// Distance between two lines or arcs. It is least at a crossing, at an end of one and the nearest point of the other, or where one normal is square to both: for a line and
/// an arc the normal of the line through the centre, for two arcs the line through both centres.
/// </summary>
public static class SegmentDistance
{
    /// <summary>The nearest points; of several equal pairs the first found: a crossing, the ends of the first, those of the second, common normals.</summary>
    /// <param name="a">One segment, of some length.</param>
    /// <param name="b">The other segment, of some length.</param>
    public static SegmentGap Between(Segment a, Segment b)
    {
        if (Crossing(a, b) is { } shared)
        {
            return new SegmentGap(0, shared, shared);
        }

        SegmentGap best = From(a.Start, b);
        Take(From(a.End, b), ref best);
        Take(Turned(From(b.Start, a)), ref best);
        Take(Turned(From(b.End, a)), ref best);
        Span<Point2> feet = stackalloc Point2[4];
        int count = Feet(a, b, feet);
        foreach (Point2 foot in feet[..count])
        {
            // The foot is known to the digits of a far centre; what is nearest to it, and to that, is known to its own.
            Point2 to = b.Nearest(foot);
            Take(From(a.Nearest(to), b), ref best);
        }

        return best;
    }

    /// <summary>Points of the first segment, not beyond its ends, whose normal is also one of the second's carrier. Returns how many; none for two lines.</summary>
    internal static int Feet(Segment a, Segment b, Span<Point2> feet)
    {
        int count = 0;
        if (a.IsLine && b.IsLine)
        {
            return 0;
        }

        if (a.IsLine)
        {
            Point2 chord = a.End - a.Start;
            double share = (b.Center - a.Start).Dot(chord) / chord.LengthSquared;
            if (share > 0 && share < 1)
            {
                feet[count++] = a.Start.Towards(a.End, share);
            }

            return count;
        }

        Point2 along = b.IsLine ? (b.End - b.Start).Left.Unit() : (b.Center - a.Center).Unit();
        if (along == default)
        {
            return 0;
        }

        foreach (int sign in (ReadOnlySpan<int>)[1, -1])
        {
            if (a.SpansDirection(along * sign))
            {
                feet[count++] = a.Center + (along * (sign * a.Radius));
            }
        }

        return count;
    }

    private static Point2? Crossing(Segment a, Segment b)
    {
        if (!a.Box.Meets(b.Box))
        {
            return null;
        }

        // About the first one's start, where coordinates are small.
        Point2 o = a.Start;
        Edge p = Edge.Of(0, 0, a.End.X - o.X, a.End.Y - o.Y, a.Bulge);
        Edge q = Edge.Of(b.Start.X - o.X, b.Start.Y - o.Y, b.End.X - o.X, b.End.Y - o.Y, b.Bulge);
        Meetings found = default;
        EdgeMeeting.Find(p, q, Accuracy.MergeWithin(2 * (p.Half + q.Half)), ref found);
        for (int i = 0; i < found.Count; i++)
        {
            if (found[i].Kind != MeetingKind.Touch)
            {
                return new Point2(found[i].X + o.X, found[i].Y + o.Y);
            }
        }

        return null;
    }

    private static SegmentGap From(Point2 p, Segment s) => new(s.Distance(p), p, s.Nearest(p));

    private static SegmentGap Turned(SegmentGap gap) => new(gap.Distance, gap.To, gap.On);

    private static void Take(SegmentGap gap, ref SegmentGap best)
    {
        if (gap.Distance < best.Distance)
        {
            best = gap;
        }
    }
}
