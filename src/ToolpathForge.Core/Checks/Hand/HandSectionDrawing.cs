using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;

namespace ToolpathForge.Checks.Hand;

/// <summary>
/// A section to scale through hand router, pattern and board, at one depth: what a person sees who kneels beside the work. Board, pattern, cutter, bearing and
/// the height of the collet are as long as they are; width of collet and base are only sketched.
/// </summary>
/// <param name="section">What it shows.</param>
/// <param name="depth">The depth that is set, mm.</param>
/// <param name="at">Where the section's zero lies in the drawing.</param>
/// <param name="scale">mm of paper for a mm of the thing drawn.</param>
/// <param name="unit">The unit of its dimensions.</param>
internal sealed class HandSectionDrawing(HandSection section, double depth, Point2 at, double scale, LengthUnit unit)
{
    /// <summary>How much of the work is shown beside the edge, mm.</summary>
    internal const double WorkShown = 24;

    /// <summary>Room above the base for the bit's sketch of a collet, mm.</summary>
    internal const double ColletShown = 10;

    private const double BaseThickness = 6;
    private const double BaseBeyond = 7;
    private const double BaseOpening = 3;
    private const double ColletWall = 5;
    private const double BushingWall = 1.5;

    private readonly List<DrawingElement> _elements = [];

    /// <summary>Where the base ends on the side away from the work, mm from the edge that guides.</summary>
    internal static double RightEnd(HandSection section) =>
        section.Axis + (Math.Max(section.Bit.Diameter, section.SetUp.Bearing.Diameter) / 2) + BaseOpening + BaseBeyond;

    /// <summary>The section with the names of its parts and its thicknesses.</summary>
    internal IEnumerable<DrawingElement> Named()
    {
        Draw();
        Names();
        Thicknesses();
        Depth(0);
        return _elements;
    }

    /// <summary>The section with the length of the cutter.</summary>
    internal IEnumerable<DrawingElement> Measured()
    {
        Draw();
        double right = RightEnd(section);
        double end = section.FinishedEdge + section.Bit.Diameter;
        Measure(new Point2(end, section.SetUp.Cutter - depth), new Point2(end, -depth), section.SetUp.Cutter, right, -DrawingStyle.FirstRow);
        Depth(1);
        return _elements;
    }

    private void Draw()
    {
        HandSetUp s = section.SetUp;
        double finished = section.FinishedEdge;
        double waste = finished + section.Bite;
        if (section.Guide == HandGuide.CutEdge)
        {
            // Above the end of the cut edge the work ends where the bearing runs; below it is still as the saw left it.
            Area(Tone.Wood, Math.PI / 4, (-WorkShown, section.BoardBottom), (finished, section.BoardBottom), (finished, -section.Edge), (0, -section.Edge), (0, 0), (-WorkShown, 0));
            Waste(finished, waste, section.BoardBottom, -section.Edge);
        }
        else
        {
            double pattern = section.Guide == HandGuide.PatternBelow ? section.BoardBottom : 0;
            Area(Tone.Wood, Math.PI / 4, (-WorkShown, section.BoardBottom), (finished, section.BoardBottom), (finished, section.BoardTop), (-WorkShown, section.BoardTop));
            Waste(finished, waste, section.BoardBottom, section.BoardTop);
            Area(Tone.Panel, -Math.PI / 4, (-WorkShown, pattern - s.Pattern), (0, pattern - s.Pattern), (0, pattern), (-WorkShown, pattern));
        }

        Base();
        Bit();
    }

    private void Bit()
    {
        HandSetUp s = section.SetUp;
        double axis = section.Axis;
        double top = s.Cutter - depth;
        double collet = section.HighestPoint(depth);
        double shank = section.Bit.Shank / 2;
        Box(Tone.Paper, LineRole.Edge, axis - shank, Math.Min(top, collet), axis + shank, collet + ColletShown);
        double wide = shank + ColletWall;
        Area(Tone.Clamp, null, (axis - wide + 2, collet), (axis + wide - 2, collet), (axis + wide, collet + 3), (axis + wide, collet + ColletShown), (axis - wide, collet + ColletShown), (axis - wide, collet + 3));
        Box(Tone.Paper, LineRole.CutPath, section.FinishedEdge, -depth, section.FinishedEdge + section.Bit.Diameter, top);
        if (section.BearingAt(depth) is { } bearing)
        {
            Box(Tone.Clamp, LineRole.Edge, 0, bearing.Bottom, s.Bearing.Diameter, bearing.Top);
            Line(LineRole.Construction, 0, bearing.Bottom, s.Bearing.Diameter, bearing.Top);
            Line(LineRole.Construction, 0, bearing.Top, s.Bearing.Diameter, bearing.Bottom);
        }

        Line(LineRole.Axis, axis, Math.Min(-depth, section.BearingAt(depth)?.Bottom ?? -depth) - 3, axis, collet + ColletShown + 2);
    }

    private void Base()
    {
        double half = (Math.Max(section.Bit.Diameter, section.SetUp.Bearing.Diameter) / 2) + BaseOpening;
        double axis = section.Axis;
        Area(Tone.Clamp, null, (-WorkShown, 0), (axis - half, 0), (axis - half, BaseThickness), (-WorkShown, BaseThickness));
        Box(Tone.Clamp, LineRole.Edge, axis + half, 0, RightEnd(section), BaseThickness);
        if (section.Guide == HandGuide.Bushing)
        {
            double across = section.SetUp.Bearing.Diameter;
            foreach ((double tube, double flange) in (ReadOnlySpan<(double, double)>)[(0, axis - half), (across - BushingWall, axis + half)])
            {
                Box(Tone.Clamp, LineRole.Edge, tube, -section.BushingLength, tube + BushingWall, 2);
                Box(Tone.Clamp, LineRole.Edge, Math.Min(flange, tube), 0, Math.Max(flange, tube + BushingWall), 2);
            }
        }
    }

    private void Names()
    {
        HandSetUp s = section.SetUp;
        double middle = -WorkShown * 0.45;
        Name("base", new Point2(middle, BaseThickness / 2));
        Name("board", new Point2(middle, (section.BoardTop + section.BoardBottom) / 2));
        if (section.Guide != HandGuide.CutEdge)
        {
            double top = section.Guide == HandGuide.PatternBelow ? section.BoardBottom : 0;
            Name("pattern", new Point2(middle, top - (s.Pattern / 2)));
        }

        Name("cutter", new Point2(section.FinishedEdge + section.Bit.Radius, (s.Cutter / 2) - depth), Math.PI / 2);
        if (section.BearingAt(depth) is { } bearing)
        {
            // Out past the base, above it or below the cutter, where nothing else is written.
            var from = new Point2(s.Bearing.Diameter - 1, (bearing.Bottom + bearing.Top) / 2);
            var elbow = new Point2(RightEnd(section) - from.X - 2, section.Guide == HandGuide.PatternBelow ? -4 : BaseThickness + 5 - from.Y);
            _elements.Add(new Leader(at + from, elbow * scale, "bearing", HasArrow: false));
        }
    }

    private void Thicknesses()
    {
        HandSetUp s = section.SetUp;
        void Thick(double from, double thickness, int row) => Measure(
            new Point2(-WorkShown, from), new Point2(-WorkShown, from - thickness), thickness, -WorkShown, DrawingStyle.FirstRow + (row * DrawingStyle.RowStep));

        // In rows of their own: a thin pattern's figure stands outside its measure.
        Thick(section.BoardTop, s.Board, 1);
        bool edge = section.Guide == HandGuide.CutEdge;
        Thick(section.Guide == HandGuide.PatternBelow ? section.BoardBottom : 0, edge ? section.Edge : s.Pattern, 0);
        if (edge)
        {
            _elements.Add(new Stroke(LineRole.Axis, Contour.Polyline(Point(-WorkShown, -section.Edge), Point(0, -section.Edge))));
        }
    }

    private void Depth(int row)
    {
        double right = RightEnd(section);
        Measure(
            new Point2(right, 0), new Point2(section.FinishedEdge + section.Bit.Diameter, -depth), depth, right, -DrawingStyle.FirstRow - (row * DrawingStyle.RowStep));
    }

    private void Measure(Point2 from, Point2 to, double length, double reference, double offset) => _elements.Add(new LinearDimension(
        at + from, at + to, MeasuredAlong.Vertical, QuantityText.Write(Quantity.Length(length), unit), offset, at.X + reference));

    // On blank paper, so that hatching does not run through the letters.
    private void Name(string name, Point2 middle, double turn = 0)
    {
        const double Height = 2.2;
        Point2 along = Point2.Direction(turn) * (((StrokeAlphabet.WidthOf(name, Height) / 2) + 0.8) / scale);
        Point2 up = Point2.Direction(turn).Left * (Height * 0.9 / scale);
        Point2 p = at + middle;
        _elements.Add(new Fill(Tone.Paper, Outlines.Of(Contour.Polygon(p - along - up, p + along - up, p + along + up, p - along + up))));
        _elements.Add(new Text(name, p - (Point2.Direction(turn).Left * (Height / 2 / scale)), TextAlign.Middle, Height, turn));
    }

    private void Waste(double from, double to, double bottom, double top)
    {
        if (to > from)
        {
            Box(Tone.Waste, LineRole.Board, from, bottom, to, top);
        }
    }

    // An area whose left end is broken off: no line is drawn there.
    private void Area(Tone tone, double? hatch, params ReadOnlySpan<(double X, double Y)> corners)
    {
        var points = new Point2[corners.Length];
        for (int i = 0; i < corners.Length; i++)
        {
            points[i] = Point(corners[i].X, corners[i].Y);
        }

        Outline ring = Outlines.Of(Contour.Polygon(points));
        _elements.Add(new Fill(tone, ring));
        if (hatch is { } angle)
        {
            _elements.Add(new HatchLines(tone == Tone.Wood ? LineRole.Grain : LineRole.Construction, [ring], angle, tone == Tone.Wood ? 2.2 : 1.6));
        }

        for (int i = 0; i < points.Length; i++)
        {
            Point2 next = points[(i + 1) % points.Length];
            if (Math.Abs(points[i].X - (at.X - WorkShown)) > 1e-9 || Math.Abs(next.X - (at.X - WorkShown)) > 1e-9)
            {
                _elements.Add(new Stroke(LineRole.Edge, Contour.Polyline(points[i], next)));
            }
        }
    }

    private void Box(Tone tone, LineRole role, double left, double bottom, double right, double top)
    {
        var ring = Contour.Polygon(Point(left, bottom), Point(right, bottom), Point(right, top), Point(left, top));
        _elements.Add(new Fill(tone, Outlines.Of(ring)));
        _elements.Add(new Stroke(role, ring));
    }

    private void Line(LineRole role, double x, double y, double toX, double toY) => _elements.Add(new Stroke(role, Contour.Polyline(Point(x, y), Point(toX, toY))));

    private Point2 Point(double x, double y) => at + new Point2(x, y);
}
