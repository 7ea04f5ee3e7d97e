using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>A vertex where a contour changes its direction at once.</summary>
/// <param name="Vertex">Index of the vertex; the segment of the same index leaves it.</param>
/// <param name="At">Where it lies, mm.</param>
/// <param name="Turn">
/// From the direction of arrival to that of leaving, radians in (-π, π], positive to the left. With the material on the left, a left turn is an
/// outside (convex) corner and a right turn an inside (concave) one.
/// </param>
public readonly record struct Corner(int Vertex, Point2 At, double Turn)
{
    /// <summary>The angle between the two edges, measured on the left, radians in [0, 2π): 90° for the corner of a counter-clockwise square, 270° for that of its hole.</summary>
    public double AngleOnLeft => Math.PI - Turn;

    /// <summary>True when the corner points away from a side: seen from there it is an edge to run round, not a notch to get into.</summary>
    /// <param name="side">The side that a bit would be on.</param>
    public bool IsOutsideFrom(Side side) => side == Side.Right ? Turn > 0 : Turn < 0;

    /// <summary>
    /// What a round bit on the hollow side leaves in the corner between two straight edges, mm: from the corner to the nearest point the bit reaches,
    /// R/cos(turn/2) - R. Infinite where the edges run back on themselves. Edges that are curved or shorter than the bit's contact leave another amount:
    /// <see cref="Reach"/> measures it.
    /// </summary>
    /// <param name="bitRadius">mm.</param>
    public double LeftBetweenStraightEdges(double bitRadius)
    {
        double cos = Math.Cos(Turn / 2);
        return cos > 1e-15 ? (bitRadius / cos) - bitRadius : double.PositiveInfinity;
    }
}

/// <summary>Finds the corners of a contour.</summary>
public static class Corners
{
    /// <summary>
    /// A turn below this is no corner to a hand or a machine, radians (about 0.06°): it is what rounding to 1e-4 mm does to edges of 0.1 mm, and over 10 mm of
    /// edge it moves the line by 0.01 mm.
    /// </summary>
    public const double LeastTurn = 1e-3;

    /// <summary>The corners in the order of the vertices. The ends of an open contour are none.</summary>
    /// <param name="contour">Any contour. Segments of no length (below <see cref="Accuracy.SamePoint"/>) are passed over: the corner is at the vertex that leaves them.</param>
    /// <param name="leastTurn">Smaller turns are not told, radians, more than 0.</param>
    public static ImmutableArray<Corner> Of(Contour contour, double leastTurn = LeastTurn)
    {
        ImmutableArray<Corner>.Builder corners = ImmutableArray.CreateBuilder<Corner>();
        int count = contour.SegmentCount;
        int before = contour.IsClosed ? LastWithLength(contour, count - 1) : -1;
        for (int i = 0; i < count; i++)
        {
            if (!HasLength(contour[i]))
            {
                continue;
            }

            if (before >= 0)
            {
                double turn = TurnBetween(contour[before].EndDirection, contour[i].StartDirection);
                if (Math.Abs(turn) >= leastTurn)
                {
                    corners.Add(new Corner(i, contour[i].Start, turn));
                }
            }

            before = i;
        }

        return corners.ToImmutable();
    }

    /// <summary>Turn from one direction to another, radians in (-π, π], positive to the left.</summary>
    /// <param name="arriving">The first direction, any length but 0.</param>
    /// <param name="leaving">The second direction, any length but 0.</param>
    public static double TurnBetween(Point2 arriving, Point2 leaving)
    {
        double turn = Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving));

        // The way straight back is told as a left turn whatever the sign of the rounded zero.
        return turn <= -Math.PI ? Math.PI : turn;
    }

    private static bool HasLength(Segment s) => s.Chord > Accuracy.SamePoint;

    private static int LastWithLength(Contour contour, int from)
    {
        while (from >= 0 && !HasLength(contour[from]))
        {
            from--;
        }

        return from;
    }
}
