namespace ToolpathForge.Geometry;

/// <summary>A bend that is hollow seen from one side.</summary>
/// <param name="Radius">mm; 0 for a sharp corner.</param>
/// <param name="At">The corner, or the middle of the arc, mm.</param>
/// <param name="Segment">Index of the arc; for a corner that of the segment which leaves it.</param>
/// <param name="Turn">How far it turns, radians, more than 0.</param>
public readonly record struct HollowBend(double Radius, Point2 At, int Segment, double Turn);

/// <summary>The largest round bit that follows a contour everywhere is the tightest bend that is hollow from its side (if nothing lies opposite: what does, <see cref="Reach"/> finds).</summary>
public static class InsideRadius
{
    /// <summary>The tightest bend that is hollow seen from a side; the first of equals. Null when there is none: any bit follows.</summary>
    /// <param name="contour">Any contour.</param>
    /// <param name="bitSide">The side the bit is on.</param>
    /// <param name="leastTurn">Corners that turn less are passed over, radians.</param>
    public static HollowBend? Tightest(Contour contour, Side bitSide, double leastTurn = Corners.LeastTurn)
    {
        HollowBend? tightest = null;
        foreach (HollowBend bend in All(contour, bitSide, leastTurn))
        {
            if (tightest is not { } known || bend.Radius < known.Radius)
            {
                tightest = bend;
            }
        }

        return tightest;
    }

    /// <summary>Every hollow bend: sharp corners first, then arcs, each in the order of the contour.</summary>
    /// <param name="contour">Any contour.</param>
    /// <param name="bitSide">The side the bit is on.</param>
    /// <param name="leastTurn">Corners that turn less are passed over, radians.</param>
    public static IEnumerable<HollowBend> All(Contour contour, Side bitSide, double leastTurn = Corners.LeastTurn)
    {
        foreach (Corner corner in Corners.Of(contour, leastTurn))
        {
            if (!corner.IsOutsideFrom(bitSide))
            {
                yield return new HollowBend(0, corner.At, corner.Vertex, Math.Abs(corner.Turn));
            }
        }

        for (int i = 0; i < contour.SegmentCount; i++)
        {
            Segment s = contour[i];
            if (!s.IsLine && (s.Bulge > 0) == (bitSide == Side.Left))
            {
                yield return new HollowBend(s.Radius, s.PointAt(0.5), i, Math.Abs(s.Sweep));
            }
        }
    }
}
