using ToolpathForge.Geometry;

namespace ToolpathForge.Drawings;

/// <summary>What a linear dimension measures along.</summary>
public enum MeasuredAlong
{
    /// <summary>Along X; a positive offset puts the line above.</summary>
    Horizontal,

    /// <summary>Along Y; a positive offset puts the line to the left.</summary>
    Vertical,

    /// <summary>Along the line between the points; a positive offset puts the line to the left of the way from the first to the second.</summary>
    Aligned,
}

/// <summary>How a dimension line ends.</summary>
public enum DimensionEnds
{
    /// <summary>Slim filled arrowheads.</summary>
    Arrows,

    /// <summary>Short oblique strokes, for chains of small steps.</summary>
    Ticks,
}

/// <summary>A distance between two points. The text is the caller's, so that it is worded in the user's unit by the one place that does so.</summary>
/// <param name="From">One point, mm of the drawing.</param>
/// <param name="To">The other point.</param>
/// <param name="Along">Direction of the measure.</param>
/// <param name="Value">What is written; "3 1/2" is stacked.</param>
/// <param name="Offset">From <paramref name="Reference"/> to the dimension line, mm of paper; the sign chooses the side.</param>
/// <param name="Reference">
/// The coordinate across the measure that the offset counts from, mm of the drawing: Y for a horizontal measure, X for a vertical one;
/// for an aligned one the distance to the left of the line between the points. None: the point that lies farther out to the chosen side.
/// </param>
/// <param name="Ends">How the line ends.</param>
public sealed record LinearDimension(
    Point2 From,
    Point2 To,
    MeasuredAlong Along,
    string Value,
    double Offset = DrawingStyle.FirstRow,
    double? Reference = null,
    DimensionEnds Ends = DimensionEnds.Arrows) : DrawingElement;

/// <summary>A radius, told by a leader that points at the arc square to it.</summary>
/// <param name="Center">Centre of the arc, mm of the drawing.</param>
/// <param name="Radius">More than 0, mm of the drawing.</param>
/// <param name="Angle">Where on the arc it points, radians counter-clockwise from X as seen from the centre.</param>
/// <param name="Value">What is written, with its R.</param>
/// <param name="Length">Length of the leader, mm of paper; negative comes from within.</param>
public sealed record RadiusDimension(Point2 Center, double Radius, double Angle, string Value, double Length = 8) : DrawingElement;

/// <summary>An angle between two rays.</summary>
/// <param name="Vertex">Where the rays meet, mm of the drawing.</param>
/// <param name="FromAngle">First ray, radians counter-clockwise from X.</param>
/// <param name="ToAngle">Second ray, reached counter-clockwise from the first.</param>
/// <param name="Value">What is written, with its °.</param>
/// <param name="Radius">Of the dimension's arc, mm of paper.</param>
public sealed record AngleDimension(Point2 Vertex, double FromAngle, double ToAngle, string Value, double Radius = 16) : DrawingElement;
