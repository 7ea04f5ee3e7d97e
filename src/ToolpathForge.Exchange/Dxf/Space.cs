using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>A point or vector of the drawing's space.</summary>
internal readonly record struct Space3(double X, double Y, double Z)
{
    internal static Space3 Up => new(0, 0, 1);

    internal double Length => Math.Sqrt((X * X) + (Y * Y) + (Z * Z));

    internal Point2 Flat => new(X, Y);

    internal Space3 Cross(Space3 b) => new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));

    internal Space3 Unit() => this * (1 / Length);

    public static Space3 operator +(Space3 a, Space3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Space3 operator *(Space3 a, double scale) => new(a.X * scale, a.Y * scale, a.Z * scale);
}

/// <summary>A frame of space: where its three axes and its zero lie in the frame around it.</summary>
internal readonly record struct SpaceFrame(Space3 X, Space3 Y, Space3 Z, Space3 Zero)
{
    /// <summary>Below this an extrusion direction counts as upright, as the format defines it: 1/64 in both X and Y.</summary>
    private const double NearlyUpright = 1.0 / 64;

    internal static SpaceFrame Identity => new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), default);

    /// <summary>The frame of entities with an extrusion direction (DXF reference, "Arbitrary axis algorithm").</summary>
    /// <param name="extrusion">Any direction but none.</param>
    internal static SpaceFrame OfExtrusion(Space3 extrusion)
    {
        if (extrusion is (0, 0, 1))
        {
            return Identity;
        }

        Space3 z = extrusion.Unit();
        Space3 helper = Math.Abs(z.X) < NearlyUpright && Math.Abs(z.Y) < NearlyUpright ? new Space3(0, 1, 0) : Space3.Up;
        Space3 x = helper.Cross(z).Unit();
        return new SpaceFrame(x, z.Cross(x).Unit(), z, default);
    }

    internal Space3 Vector(Space3 v) => (X * v.X) + (Y * v.Y) + (Z * v.Z);

    internal Space3 Point(Space3 p) => Vector(p) + Zero;

    /// <summary>What lies in a frame within this one.</summary>
    internal SpaceFrame Of(SpaceFrame inner) => new(Vector(inner.X), Vector(inner.Y), Vector(inner.Z), Point(inner.Zero));
}
