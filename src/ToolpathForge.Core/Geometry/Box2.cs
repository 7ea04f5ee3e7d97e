namespace ToolpathForge.Geometry;

/// <summary>An axis-parallel box, mm. <see cref="Empty"/> holds nothing and is what a union starts from.</summary>
/// <param name="MinX">Left side.</param>
/// <param name="MinY">Lower side.</param>
/// <param name="MaxX">Right side.</param>
/// <param name="MaxY">Upper side.</param>
public readonly record struct Box2(double MinX, double MinY, double MaxX, double MaxY)
{
    /// <summary>The box that holds no point.</summary>
    public static Box2 Empty => new(double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);

    /// <summary>True when no point lies in it.</summary>
    public bool IsEmpty => MinX > MaxX || MinY > MaxY;

    /// <summary>Extent along X, mm; 0 when empty.</summary>
    public double Width => IsEmpty ? 0 : MaxX - MinX;

    /// <summary>Extent along Y, mm; 0 when empty.</summary>
    public double Height => IsEmpty ? 0 : MaxY - MinY;

    /// <summary>Middle of the box.</summary>
    public Point2 Center => new((MinX + MaxX) / 2, (MinY + MaxY) / 2);

    /// <summary>The smallest box round two points.</summary>
    /// <param name="a">One point.</param>
    /// <param name="b">Another point.</param>
    public static Box2 Around(Point2 a, Point2 b) =>
        new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y));

    /// <summary>The smallest box that holds this one and a point.</summary>
    /// <param name="p">The point to take in.</param>
    public Box2 Including(Point2 p) => new(Math.Min(MinX, p.X), Math.Min(MinY, p.Y), Math.Max(MaxX, p.X), Math.Max(MaxY, p.Y));

    /// <summary>The smallest box that holds both.</summary>
    /// <param name="other">The other box.</param>
    public Box2 Union(Box2 other) =>
        new(Math.Min(MinX, other.MinX), Math.Min(MinY, other.MinY), Math.Max(MaxX, other.MaxX), Math.Max(MaxY, other.MaxY));

    /// <summary>The box grown on every side.</summary>
    /// <param name="margin">By how much, mm; negative shrinks.</param>
    public Box2 Grown(double margin) => new(MinX - margin, MinY - margin, MaxX + margin, MaxY + margin);

    /// <summary>True when the boxes share at least a point.</summary>
    /// <param name="other">The other box.</param>
    public bool Meets(Box2 other) => MinX <= other.MaxX && other.MinX <= MaxX && MinY <= other.MaxY && other.MinY <= MaxY;

    /// <summary>True when the point lies in the box or on its edge.</summary>
    /// <param name="p">The point asked about.</param>
    public bool Contains(Point2 p) => p.X >= MinX && p.X <= MaxX && p.Y >= MinY && p.Y <= MaxY;

    /// <summary>Distance from a point to the box, mm; 0 inside.</summary>
    /// <param name="p">The point asked about.</param>
    public double Distance(Point2 p)
    {
        double dx = Math.Max(0, Math.Max(MinX - p.X, p.X - MaxX));
        double dy = Math.Max(0, Math.Max(MinY - p.Y, p.Y - MaxY));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }
}
