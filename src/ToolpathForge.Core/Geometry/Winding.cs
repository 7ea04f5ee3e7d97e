namespace ToolpathForge.Geometry;

/// <summary>How often a closed contour of lines and arcs winds round a point.</summary>
internal static class Winding
{
    /// <summary>
    /// Counts signed crossings of a ray to the right. Exact for arcs: each is taken as its chord, corrected where the point lies
    /// between arc and chord, so a ray that grazes an arc needs no special case.
    /// </summary>
    internal static int Number(Contour contour, Point2 p)
    {
        if (!contour.IsClosed)
        {
            return 0;
        }

        int winding = 0;
        for (int i = 0; i < contour.SegmentCount; i++)
        {
            winding += Of(contour[i], p);
        }

        return winding;
    }

    /// <summary>What one segment adds to the count.</summary>
    internal static int Of(Segment s, Point2 p)
    {
        int winding = ChordCrossing(s.Start, s.End, p);
        return s.IsLine ? winding : winding + Cap(s, p);
    }

    private static int ChordCrossing(Point2 a, Point2 b, Point2 p)
    {
        double side = (b - a).Cross(p - a);
        if (a.Y <= p.Y)
        {
            return b.Y > p.Y && side > 0 ? 1 : 0;
        }

        return b.Y <= p.Y && side < 0 ? -1 : 0;
    }

    // The closed cap "along the arc, back along the chord" winds once round points between them.
    private static int Cap(Segment s, Point2 p)
    {
        double side = (s.End - s.Start).Cross(p - s.Start);
        if (side == 0)
        {
            // On the chord itself: the half-open rule above treats the point as shifted a trifle right, and by still less upwards.
            Point2 chord = s.End - s.Start;
            side = chord.Y != 0 ? -chord.Y : chord.X;
        }

        bool onArcSide = s.Bulge > 0 ? side < 0 : side > 0;
        bool inCircle = p.DistanceTo(s.Center) < s.Radius;
        return onArcSide && inCircle ? Math.Sign(s.Bulge) : 0;
    }
}
