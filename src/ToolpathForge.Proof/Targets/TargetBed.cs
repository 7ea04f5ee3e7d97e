using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>A solid that stands on the bed before the program starts.</summary>
/// <param name="Corners">A convex polygon's corners in order, either way round; at least three.</param>
/// <param name="Bottom">Height of its underside, mm.</param>
/// <param name="Top">Height of its upper face, mm.</param>
public sealed record TargetStock(ImmutableArray<PlanePoint> Corners, double Bottom, double Top)
{
    /// <summary>A box along the axes.</summary>
    /// <param name="minX">mm.</param>
    /// <param name="minY">mm.</param>
    /// <param name="maxX">mm.</param>
    /// <param name="maxY">mm.</param>
    /// <param name="bottom">mm.</param>
    /// <param name="top">mm.</param>
    public static TargetStock Box(double minX, double minY, double maxX, double maxY, double bottom, double top) =>
        new([new(minX, minY), new(maxX, minY), new(maxX, maxY), new(minX, maxY)], bottom, top);
}

/// <summary>Something the bit must not touch, from the bed up to a height: a clamp, a screw, a fence.</summary>
/// <param name="Name">What faults call it.</param>
/// <param name="Corners">A convex polygon's corners in order, either way round; at least three. Any clearance wanted is already in it.</param>
/// <param name="Top">Height up to which it stands, mm.</param>
public sealed record TargetKeepOut(string Name, ImmutableArray<PlanePoint> Corners, double Top);

/// <summary>A part of the bed where the tip may not go as low as elsewhere: a skin that holds a panel's pieces, the floor of a pocket.</summary>
/// <param name="Name">What faults call it.</param>
/// <param name="Corners">A convex polygon's corners in order, either way round; at least three.</param>
/// <param name="Lowest">Lowest tip allowed wherever the bit overlaps it, mm.</param>
public sealed record TargetFloor(string Name, ImmutableArray<PlanePoint> Corners, double Lowest);

/// <summary>How far the tip's centre may travel, in the frame of the program.</summary>
/// <param name="Min">Lowest X, Y and Z, mm.</param>
/// <param name="Max">Highest X, Y and Z, mm.</param>
public sealed record TargetTravel(SpacePoint Min, SpacePoint Max);
