using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Drawings;

/// <summary>Draws the elements of a drawing out for one scale: what is left are marks in the drawing's own millimetres.</summary>
public static class Draughting
{
    /// <summary>The marks of a drawing, from the bottom to the top.</summary>
    /// <param name="drawing">What to draw.</param>
    /// <param name="scale">mm of paper for a mm of the thing drawn: 0.5 for 1:2. More than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A scale that is not more than 0, or not finite.</exception>
    public static ImmutableArray<Mark> Marks(Drawing drawing, double scale)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        if (!(scale > 0 && double.IsFinite(scale)))
        {
            throw new ArgumentOutOfRangeException(nameof(scale), scale, "A scale is more than 0.");
        }

        var board = new DrawingBoard(scale);
        foreach (DrawingElement element in drawing.Elements)
        {
            Draw(board, element);
        }

        return [.. board.Marks];
    }

    /// <summary>The smallest axis-parallel box round the middle of all lines, mm of the drawing; pens reach half their width beyond.</summary>
    /// <param name="marks">Marks of a drawing.</param>
    public static Box2 BoxOf(ImmutableArray<Mark> marks) => marks.Aggregate(Box2.Empty, (box, mark) => box.Union(mark switch
    {
        Stroke s => s.Path.Box,
        Solid s => s.Ring.Box,
        ExactStroke s => CurveExtent.Box(s.Path),
        Fill f => f.Rings.Aggregate(Box2.Empty, (b, ring) => b.Union(CurveExtent.Box(ring))),
        Lettered l => l.Written.Box,
        _ => Box2.Empty,
    }));

    private static void Draw(DrawingBoard board, DrawingElement element)
    {
        switch (element)
        {
            case Mark mark:
                board.Add(mark);
                break;
            case Text text:
                board.Text(text.Role, text.Value, text.At, text.Align, text.Height, text.Turn);
                break;
            case Leader leader:
                SymbolDraughting.Draw(board, leader);
                break;
            case DirectionArrow arrow:
                board.Arrowhead(arrow.Role, arrow.At + (arrow.Direction.Unit() * board.Paper(DrawingStyle.ArrowLength / 2)), arrow.Direction);
                break;
            case Arrow arrow:
                SymbolDraughting.Draw(board, arrow);
                break;
            case GrainArrow arrow:
                SymbolDraughting.Draw(board, arrow);
                break;
            case ZeroPoint zero:
                SymbolDraughting.Draw(board, zero);
                break;
            case CenterMark center:
                SymbolDraughting.Draw(board, center);
                break;
            case ScaleBar bar:
                SymbolDraughting.Draw(board, bar);
                break;
            case GrainLines grain:
                AreaDraughting.Draw(board, grain);
                break;
            case HatchLines hatch:
                AreaDraughting.Draw(board, hatch);
                break;
            case LinearDimension dimension:
                DimensionDraughting.Draw(board, dimension);
                break;
            case RadiusDimension dimension:
                DimensionDraughting.Draw(board, dimension);
                break;
            case AngleDimension dimension:
                DimensionDraughting.Draw(board, dimension);
                break;
            default:
                throw new ArgumentException($"{element.GetType().Name} is no element that can be drawn.", nameof(element));
        }
    }
}

/// <summary>Where marks gather while a drawing is drawn out; knows the scale and the few forms that every sign is made of.</summary>
internal sealed class DrawingBoard(double scale)
{
    internal List<Mark> Marks { get; } = [];

    /// <summary>A length of paper in mm of the drawing.</summary>
    internal double Paper(double millimetres) => millimetres / scale;

    internal void Add(Mark mark) => Marks.Add(mark);

    internal void Line(LineRole role, Point2 from, Point2 to)
    {
        if (from.DistanceTo(to) > Accuracy.SamePoint)
        {
            Marks.Add(new Stroke(role, Contour.Polyline(from, to)));
        }
    }

    /// <summary>Lines of text, each below the one before.</summary>
    internal void Text(LineRole role, string value, Point2 at, TextAlign align, double height, double turn)
    {
        Point2 down = Point2.Direction(turn).Right * Paper(height * StrokeAlphabet.LineSpacing);
        foreach (string line in value.Split('\n'))
        {
            WrittenText written = StrokeAlphabet.Write(line.TrimEnd('\r'), Paper(height), at, align, turn);
            if (written.Strokes.Length > 0)
            {
                Marks.Add(new Lettered(role, written, Math.Max(0.18, height * StrokeAlphabet.PenShare)));
            }

            at += down;
        }
    }

    /// <summary>A slim filled arrowhead with its tip at a point.</summary>
    internal void Arrowhead(LineRole role, Point2 tip, Point2 direction)
    {
        Point2 along = direction.Unit() * Paper(DrawingStyle.ArrowLength);
        Point2 side = along.Left / 6;
        Marks.Add(new Solid(role, Contour.Polygon(tip, tip - along + side, tip - along - side)));
    }

    /// <summary>A filled disc.</summary>
    internal void Dot(LineRole role, Point2 center, double radius) => Marks.Add(new Solid(role, Contour.Circle(center, Paper(radius))));
}
