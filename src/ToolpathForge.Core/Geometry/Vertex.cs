namespace ToolpathForge.Geometry;

/// <summary>
/// A corner of a <see cref="Contour"/> together with the shape of the segment that leaves it.
/// </summary>
/// <param name="X">Position, mm.</param>
/// <param name="Y">Position, mm.</param>
/// <param name="Bulge">
/// tan(sweep/4) of the segment to the next vertex: 0 a straight line, positive counter-clockwise, 1 a semicircle.
/// Never beyond ±1: a longer arc is written as two. (The bulge is the drawing-exchange convention for polylines with arcs.)
/// The last vertex of an open contour has no segment and its bulge means nothing.
/// </param>
public readonly record struct Vertex(double X, double Y, double Bulge)
{
    /// <summary>A vertex whose leaving segment is straight.</summary>
    /// <param name="point">Where it lies.</param>
    public Vertex(Point2 point)
        : this(point.X, point.Y, 0)
    {
    }

    /// <summary>A vertex at a point.</summary>
    /// <param name="point">Where it lies.</param>
    /// <param name="bulge">Shape of the leaving segment.</param>
    public Vertex(Point2 point, double bulge)
        : this(point.X, point.Y, bulge)
    {
    }

    /// <summary>Where the vertex lies.</summary>
    public Point2 Point => new(X, Y);
}
