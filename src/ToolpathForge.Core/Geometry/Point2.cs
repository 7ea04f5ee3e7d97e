namespace ToolpathForge.Geometry;

/// <summary>
/// A point or a vector in a plane, in millimetres, right-handed: X to the right, Y up (away from the viewer at a bed).
/// It does not know which frame it belongs to; <see cref="Placement"/> is the only crossing between frames.
/// </summary>
/// <param name="X">Along the first axis, mm.</param>
/// <param name="Y">Along the second axis, mm.</param>
public readonly record struct Point2(double X, double Y)
{
    /// <summary>The origin of whichever frame is meant.</summary>
    public static Point2 Origin => default;

    /// <summary>The unit vector at an angle counted counter-clockwise from the X axis.</summary>
    /// <param name="radians">The angle in radians.</param>
    public static Point2 Direction(double radians) => new(Math.Cos(radians), Math.Sin(radians));

    /// <summary>Length of the vector, or distance from the origin, mm.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>Square of <see cref="Length"/>, mm².</summary>
    public double LengthSquared => (X * X) + (Y * Y);

    /// <summary>The vector turned a quarter counter-clockwise.</summary>
    public Point2 Left => new(-Y, X);

    /// <summary>The vector turned a quarter clockwise.</summary>
    public Point2 Right => new(Y, -X);

    /// <summary>Direction counted counter-clockwise from the X axis, radians in (-π, π]; 0 for the zero vector.</summary>
    public double Angle => Math.Atan2(Y, X);

    /// <summary>The vector scaled to length 1; the zero vector stays zero.</summary>
    public Point2 Unit()
    {
        double length = Length;
        return length > 0 ? new Point2(X / length, Y / length) : default;
    }

    /// <summary>Scalar product, mm².</summary>
    /// <param name="other">The other vector.</param>
    public double Dot(Point2 other) => (X * other.X) + (Y * other.Y);

    /// <summary>Z of the vector product, mm²: positive when <paramref name="other"/> lies to the left of this vector.</summary>
    /// <param name="other">The other vector.</param>
    public double Cross(Point2 other) => (X * other.Y) - (Y * other.X);

    /// <summary>Distance to another point, mm.</summary>
    /// <param name="other">The other point.</param>
    public double DistanceTo(Point2 other) => (this - other).Length;

    /// <summary>The vector turned counter-clockwise.</summary>
    /// <param name="radians">The angle in radians.</param>
    public Point2 Rotated(double radians)
    {
        (double sin, double cos) = Math.SinCos(radians);
        return new((X * cos) - (Y * sin), (X * sin) + (Y * cos));
    }

    /// <summary>The point part way to another.</summary>
    /// <param name="other">Where share 1 lies.</param>
    /// <param name="share">0 gives this point, 1 the other.</param>
    public Point2 Towards(Point2 other, double share) => new(X + ((other.X - X) * share), Y + ((other.Y - Y) * share));

    /// <summary>"(x, y)" with every digit, in the invariant culture. The written form of a record would follow <see cref="Left"/> without end.</summary>
    public override string ToString() => FormattableString.Invariant($"({X}, {Y})");

    /// <summary>Sum of two vectors.</summary>
    public static Point2 operator +(Point2 a, Point2 b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Vector from <paramref name="b"/> to <paramref name="a"/>.</summary>
    public static Point2 operator -(Point2 a, Point2 b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>The opposite vector.</summary>
    public static Point2 operator -(Point2 a) => new(-a.X, -a.Y);

    /// <summary>The vector scaled.</summary>
    public static Point2 operator *(Point2 a, double scale) => new(a.X * scale, a.Y * scale);

    /// <summary>The vector scaled.</summary>
    public static Point2 operator *(double scale, Point2 a) => new(a.X * scale, a.Y * scale);

    /// <summary>The vector divided.</summary>
    public static Point2 operator /(Point2 a, double divisor) => new(a.X / divisor, a.Y / divisor);
}
