namespace ToolpathForge.Geometry;

/// <summary>Parallels of contours and regions of lines and arcs; arcs stay arcs.</summary>
public static class Offsetter
{
    /// <summary>How far from its corner, in distances, a sharp join may reach: 2 allows inside angles down to 60°, sharper corners are rounded.</summary>
    public const double SharpLimit = 2;

    /// <summary>The region inside a closed contour, grown or shrunk.</summary>
    /// <param name="contour">Closed, in either direction.</param>
    /// <param name="distance">mm; positive grows, negative shrinks.</param>
    /// <param name="join">What happens at corners that open away from the offset side.</param>
    /// <exception cref="ArgumentException">An open contour, or a distance that is 0 or not finite.</exception>
    public static OffsetResult Closed(Contour contour, double distance, JoinStyle join = JoinStyle.Round)
    {
        if (!contour.IsClosed)
        {
            throw new ArgumentException("Only a closed contour bounds a region; take OneSide or BothSides.", nameof(contour));
        }

        Check(distance);
        return OffsetEngine.Run([contour], distance, join, EndStyle.Round, null);
    }

    /// <summary>A region, grown or shrunk.</summary>
    /// <param name="region">Outer loops and holes.</param>
    /// <param name="distance">mm; positive grows (holes get smaller), negative shrinks.</param>
    /// <param name="join">What happens at corners that open away from the offset side.</param>
    /// <exception cref="ArgumentException">A distance that is 0 or not finite.</exception>
    public static OffsetResult Closed(Region region, double distance, JoinStyle join = JoinStyle.Round)
    {
        Check(distance);
        return OffsetEngine.Run(region.Loops.AsSpan(), distance, join, EndStyle.Round, null);
    }

    /// <summary>The parallel of an open contour on one side, clear of the whole contour by the distance; it may fall into several parts.</summary>
    /// <param name="contour">Open.</param>
    /// <param name="distance">mm; positive to the left of its direction, negative to the right.</param>
    /// <param name="join">What happens at corners that open away from the offset side.</param>
    /// <exception cref="ArgumentException">A closed contour, or a distance that is 0 or not finite.</exception>
    public static OffsetResult OneSide(Contour contour, double distance, JoinStyle join = JoinStyle.Round)
    {
        Check(distance);
        return OffsetEngine.Run([Open(contour)], Math.Abs(distance), join, EndStyle.Round, distance > 0 ? PathSide.Left : PathSide.Right);
    }

    /// <summary>The closed outline of everything within a distance of an open contour.</summary>
    /// <param name="contour">Open.</param>
    /// <param name="distance">More than 0, mm.</param>
    /// <param name="end">How the two sides are closed at the ends.</param>
    /// <param name="join">What happens at corners.</param>
    /// <exception cref="ArgumentException">A closed contour, or a distance that is not finite and positive.</exception>
    public static OffsetResult BothSides(Contour contour, double distance, EndStyle end, JoinStyle join = JoinStyle.Round)
    {
        Check(distance);
        if (distance <= 0)
        {
            throw new ArgumentException("Both sides of a contour lie at a positive distance.", nameof(distance));
        }

        return OffsetEngine.Run([Open(contour)], distance, join, end, PathSide.Both);
    }

    private static void Check(double distance)
    {
        // Written so that NaN is refused as well.
        if (!(Math.Abs(distance) <= Accuracy.LargestCoordinate) || distance == 0)
        {
            throw new ArgumentException(FormattableString.Invariant($"{distance} is no distance to offset by."), nameof(distance));
        }
    }

    private static Contour Open(Contour contour) =>
        contour.IsClosed ? throw new ArgumentException("The contour is closed; take Closed.", nameof(contour)) : contour;
}
