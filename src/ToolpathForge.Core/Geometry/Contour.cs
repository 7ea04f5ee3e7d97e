namespace ToolpathForge.Geometry;

/// <summary>
/// A chain of lines and arcs, open or closed, in one plane, mm. Immutable. It may cross itself; what needs it simple says so.
/// A closed contour's last vertex joins its first; a circle is two segments.
/// </summary>
public sealed class Contour
{
    private readonly Vertex[] _vertices;

    /// <summary>Takes a copy of the vertices.</summary>
    /// <param name="vertices">At least two; finite, within <see cref="Accuracy.LargestCoordinate"/>, bulges within ±1.</param>
    /// <param name="isClosed">Whether the last vertex joins the first.</param>
    /// <exception cref="ArgumentException">A vertex that is not finite, too far out, a bulge beyond ±1, or fewer than two vertices.</exception>
    public Contour(ReadOnlySpan<Vertex> vertices, bool isClosed)
    {
        if (vertices.Length < 2)
        {
            throw new ArgumentException("A contour has at least two vertices.", nameof(vertices));
        }

        foreach (Vertex v in vertices)
        {
            // Written so that NaN is refused as well.
            if (!(Math.Abs(v.X) <= Accuracy.LargestCoordinate && Math.Abs(v.Y) <= Accuracy.LargestCoordinate && Math.Abs(v.Bulge) <= 1 + 1e-12))
            {
                throw new ArgumentException(FormattableString.Invariant($"Vertex ({v.X}, {v.Y}, bulge {v.Bulge}) is not usable."), nameof(vertices));
            }
        }

        _vertices = vertices.ToArray();
        IsClosed = isClosed;
    }

    /// <summary>Takes vertices that geometry has made itself, without a copy.</summary>
    internal Contour(Vertex[] vertices, bool isClosed, bool trusted)
    {
        _ = trusted;
        _vertices = vertices;
        IsClosed = isClosed;
    }

    /// <summary>The vertices in order.</summary>
    public ReadOnlySpan<Vertex> Vertices => _vertices;

    /// <summary>Whether the last vertex joins the first.</summary>
    public bool IsClosed { get; }

    /// <summary>How many segments it has: one a vertex when closed, one fewer when open.</summary>
    public int SegmentCount => IsClosed ? _vertices.Length : _vertices.Length - 1;

    /// <summary>Where it begins.</summary>
    public Point2 Start => _vertices[0].Point;

    /// <summary>Where it ends; the start again when closed.</summary>
    public Point2 End => IsClosed ? _vertices[0].Point : _vertices[^1].Point;

    /// <summary>The segment that leaves a vertex.</summary>
    /// <param name="index">0 to <see cref="SegmentCount"/> - 1.</param>
    public Segment this[int index]
    {
        get
        {
            Vertex a = _vertices[index];
            Vertex b = _vertices[index + 1 < _vertices.Length ? index + 1 : 0];
            return new Segment(a.Point, b.Point, a.Bulge);
        }
    }

    /// <summary>Length along the contour, mm.</summary>
    public double Length
    {
        get
        {
            double sum = 0;
            for (int i = 0; i < SegmentCount; i++)
            {
                sum += this[i].Length;
            }

            return sum;
        }
    }

    /// <summary>Area inside, mm²: positive when counter-clockwise, 0 for an open contour. Exact for lines and arcs (Green's theorem).</summary>
    public double SignedArea
    {
        get
        {
            if (!IsClosed)
            {
                return 0;
            }

            // Taken about the first vertex, so that an outline far from the origin loses no digits.
            Point2 o = Start;
            double sum = 0;
            for (int i = 0; i < SegmentCount; i++)
            {
                Segment s = this[i];
                sum += new Segment(s.Start - o, s.End - o, s.Bulge).DoubledArea;
            }

            return sum / 2;
        }
    }

    /// <summary>True when closed and walked with its inside on the left.</summary>
    public bool IsCounterClockwise => SignedArea > 0;

    /// <summary>The smallest axis-parallel box round it.</summary>
    public Box2 Box
    {
        get
        {
            Box2 box = Box2.Empty;
            for (int i = 0; i < SegmentCount; i++)
            {
                box = box.Union(this[i].Box);
            }

            return box;
        }
    }

    /// <summary>A closed contour of straight edges.</summary>
    /// <param name="points">At least three corners in order.</param>
    public static Contour Polygon(params ReadOnlySpan<Point2> points) => FromPoints(points, true);

    /// <summary>A box's outline, counter-clockwise from its lower left corner.</summary>
    /// <param name="box">Not empty.</param>
    public static Contour Rectangle(Box2 box) => Polygon(
        new Point2(box.MinX, box.MinY), new Point2(box.MaxX, box.MinY), new Point2(box.MaxX, box.MaxY), new Point2(box.MinX, box.MaxY));

    /// <summary>An open contour of straight edges.</summary>
    /// <param name="points">At least two points in order.</param>
    public static Contour Polyline(params ReadOnlySpan<Point2> points) => FromPoints(points, false);

    /// <summary>A counter-clockwise circle of two segments that begins at its rightmost point.</summary>
    /// <param name="center">The centre.</param>
    /// <param name="radius">More than 0, mm.</param>
    public static Contour Circle(Point2 center, double radius) => new(
        [new Vertex(center.X + radius, center.Y, 1), new Vertex(center.X - radius, center.Y, 1)], true);

    /// <summary>A chain of segments as a contour; each must begin where the one before ends.</summary>
    /// <param name="segments">At least one.</param>
    /// <param name="isClosed">Whether the last ends where the first begins.</param>
    public static Contour FromSegments(ReadOnlySpan<Segment> segments, bool isClosed)
    {
        var vertices = new List<Vertex>(segments.Length + 1);
        foreach (Segment s in segments)
        {
            vertices.Add(new Vertex(s.Start, s.Bulge));
        }

        if (!isClosed && segments.Length > 0)
        {
            vertices.Add(new Vertex(segments[^1].End));
        }

        return new Contour(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(vertices), isClosed);
    }

    /// <summary>The same line walked the other way. A closed contour keeps its first vertex.</summary>
    public Contour Reversed()
    {
        int n = _vertices.Length;
        var result = new Vertex[n];
        for (int i = 0; i < n; i++)
        {
            int from = IsClosed ? (n - i) % n : n - 1 - i;
            int leaving = IsClosed ? (from + n - 1) % n : from - 1;
            result[i] = new Vertex(_vertices[from].Point, leaving >= 0 ? -_vertices[leaving].Bulge : 0);
        }

        return new Contour(result, IsClosed);
    }

    /// <summary>The contour carried into another frame; mirroring turns the bulges round.</summary>
    /// <param name="placement">Where it goes.</param>
    public Contour Placed(Placement placement)
    {
        var result = new Vertex[_vertices.Length];
        for (int i = 0; i < result.Length; i++)
        {
            Vertex v = _vertices[i];
            result[i] = new Vertex(placement.Apply(v.Point), placement.Mirrored ? -v.Bulge : v.Bulge);
        }

        return new Contour(result, IsClosed);
    }

    /// <summary>Distance from a point to the line of the contour (not its inside), mm.</summary>
    /// <param name="p">The point asked about.</param>
    public double Distance(Point2 p)
    {
        double best = double.PositiveInfinity;
        for (int i = 0; i < SegmentCount; i++)
        {
            best = Math.Min(best, this[i].Distance(p));
        }

        return best;
    }

    /// <summary>True when a closed contour winds round the point, whichever way; points on the line itself may fall either way.</summary>
    /// <param name="p">The point asked about.</param>
    public bool Contains(Point2 p) => Winding.Number(this, p) != 0;

    private static Contour FromPoints(ReadOnlySpan<Point2> points, bool isClosed)
    {
        var vertices = new Vertex[points.Length];
        for (int i = 0; i < points.Length; i++)
        {
            vertices[i] = new Vertex(points[i]);
        }

        return new Contour(vertices, isClosed);
    }
}
