namespace ToolpathForge.Geometry;

/// <summary>A side of a contour, seen along its direction.</summary>
public enum Side
{
    /// <summary>To the left: the inside of a counter-clockwise contour.</summary>
    Left,

    /// <summary>To the right: the outside of a counter-clockwise contour.</summary>
    Right,
}
