using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Drawings;

/// <summary>Lettering of the drawing itself. Lettering that is cut into the piece is drawn as <see cref="Stroke"/>s of <see cref="StrokeAlphabet"/>.</summary>
/// <param name="Value">What it says; lines are parted by '\n', the first stands on the baseline.</param>
/// <param name="At">A point of the first baseline, mm of the drawing.</param>
/// <param name="Align">Which point of each line.</param>
/// <param name="Height">Height of a capital, mm of paper.</param>
/// <param name="Turn">Direction of the baseline, radians counter-clockwise from X.</param>
/// <param name="Role">Gives ink and layer.</param>
public sealed record Text(
    string Value,
    Point2 At,
    TextAlign Align = TextAlign.Start,
    double Height = DrawingStyle.TextHeight,
    double Turn = 0,
    LineRole Role = LineRole.Lettering) : DrawingElement;

/// <summary>A note with a line that points at what it speaks of.</summary>
/// <param name="Tip">Where it points, mm of the drawing.</param>
/// <param name="Elbow">From the tip to the bend where the text begins, mm of paper; the text stands to the side that the bend lies to.</param>
/// <param name="Value">What it says; lines are parted by '\n'.</param>
/// <param name="HasArrow">An arrowhead at the tip, or a small dot for pointing into an area.</param>
public sealed record Leader(Point2 Tip, Point2 Elbow, string Value, bool HasArrow = true) : DrawingElement;

/// <summary>An arrowhead that sits on a path and shows which way it is run.</summary>
/// <param name="Role">Whose ink.</param>
/// <param name="At">The middle of the head, mm of the drawing.</param>
/// <param name="Direction">Which way it points; any length but 0.</param>
public sealed record DirectionArrow(LineRole Role, Point2 At, Point2 Direction) : DrawingElement;

/// <summary>An arrow with a shaft.</summary>
/// <param name="Role">Pen and ink.</param>
/// <param name="From">Where it begins, mm of the drawing.</param>
/// <param name="To">Where it points.</param>
public sealed record Arrow(LineRole Role, Point2 From, Point2 To) : DrawingElement;

/// <summary>The sign for the direction of the grain: a line with half a barb at either end, as on a cutting list for boards.</summary>
/// <param name="At">Its middle, mm of the drawing.</param>
/// <param name="Angle">Direction of the fibres, radians counter-clockwise from X.</param>
/// <param name="Length">mm of paper.</param>
/// <param name="Value">A word along the line, or empty.</param>
public sealed record GrainArrow(Point2 At, double Angle, double Length = 18, string Value = "") : DrawingElement;

/// <summary>Wood grain within an area: fine lines along the fibres, unevenly spaced and broken, always the same for the same area.</summary>
/// <param name="Rings">Closed outlines; inside is what a ray leaves through an odd number of rings.</param>
/// <param name="Angle">Direction of the fibres, radians counter-clockwise from X.</param>
/// <param name="Spacing">Mean distance of the lines, mm of paper, at least 0.3.</param>
public sealed record GrainLines(ImmutableArray<Outline> Rings, double Angle, double Spacing = 1.9) : DrawingElement;

/// <summary>Even parallel lines within an area: keep-outs, sections.</summary>
/// <param name="Role">Pen and ink.</param>
/// <param name="Rings">Closed outlines; inside is what a ray leaves through an odd number of rings.</param>
/// <param name="Angle">Direction of the lines, radians counter-clockwise from X.</param>
/// <param name="Spacing">Distance of the lines, mm of paper, at least 0.3.</param>
public sealed record HatchLines(LineRole Role, ImmutableArray<Outline> Rings, double Angle, double Spacing = 2.2) : DrawingElement;

/// <summary>The zero point: a quartered disc, with short arrows along X and Y if wanted.</summary>
/// <param name="At">Where zero is, mm of the drawing.</param>
/// <param name="Turn">Direction of the X axis, radians counter-clockwise from the drawing's X.</param>
/// <param name="HasAxes">Whether the axes are drawn and lettered.</param>
public sealed record ZeroPoint(Point2 At, double Turn = 0, bool HasAxes = true) : DrawingElement;

/// <summary>The mark of a circle's or ellipse's centre: a small cross.</summary>
/// <param name="At">The centre, mm of the drawing.</param>
public sealed record CenterMark(Point2 At) : DrawingElement;

/// <summary>A bar that shows a known length, so that a print can be checked with a rule.</summary>
/// <param name="At">Its lower left corner, mm of the drawing.</param>
/// <param name="Length">mm of the thing drawn, more than 0.</param>
/// <param name="Divisions">Blocks, 1 or more.</param>
/// <param name="Value">The length in words, at its right end.</param>
public sealed record ScaleBar(Point2 At, double Length, int Divisions, string Value) : DrawingElement;
