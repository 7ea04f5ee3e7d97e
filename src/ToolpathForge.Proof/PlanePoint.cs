namespace ToolpathForge.Proof;

/// <summary>A point in the plane of the bed, in the frame of the program (X and Y from work zero).</summary>
/// <param name="X">mm.</param>
/// <param name="Y">mm.</param>
public readonly record struct PlanePoint(double X, double Y)
{
    internal double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>The same arrow turned a quarter to the left.</summary>
    internal PlanePoint Left => new(-Y, X);

    internal bool IsFinite => double.IsFinite(X) && double.IsFinite(Y);

    internal static PlanePoint Direction(double angle)
    {
        (double sin, double cos) = Math.SinCos(angle);
        return new(cos, sin);
    }

    internal PlanePoint Plus(PlanePoint other) => new(X + other.X, Y + other.Y);

    internal PlanePoint Minus(PlanePoint other) => new(X - other.X, Y - other.Y);

    internal PlanePoint Times(double factor) => new(X * factor, Y * factor);

    internal double Dot(PlanePoint other) => (X * other.X) + (Y * other.Y);

    /// <summary>Positive when the other arrow lies to the left of this one.</summary>
    internal double Cross(PlanePoint other) => (X * other.Y) - (Y * other.X);

    internal double DistanceTo(PlanePoint other) => Minus(other).Length;

    /// <summary>The same arrow of length one; an arrow of no length stays as it is.</summary>
    internal PlanePoint Unit()
    {
        double length = Length;
        return length > 0 ? Times(1 / length) : this;
    }

    /// <summary>The angle from this arrow round to another, radians, counter-clockwise, from -π to π.</summary>
    internal double AngleTo(PlanePoint other) => Math.Atan2(Cross(other), Dot(other));
}

/// <summary>A point of the tip's centre, in the frame of the program.</summary>
/// <param name="X">mm; NaN while the program has not said where X is.</param>
/// <param name="Y">mm; NaN while the program has not said where Y is.</param>
/// <param name="Z">mm, up; NaN while the program has not said where Z is.</param>
public readonly record struct SpacePoint(double X, double Y, double Z)
{
    /// <summary>Whether all three axes are known.</summary>
    public bool IsKnown => IsPlaneKnown && !double.IsNaN(Z);

    /// <summary>Whether X and Y are known.</summary>
    public bool IsPlaneKnown => !double.IsNaN(X) && !double.IsNaN(Y);

    internal PlanePoint Plane => new(X, Y);
}
