using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Drawings;

/// <summary>Dimensions drawn out: extension lines, dimension line, ends, text above the line and readable from below or from the right.</summary>
internal static class DimensionDraughting
{
    private const double OutsideTail = 5;
    private const double TickReach = 1.1;

    internal static void Draw(DrawingBoard board, LinearDimension dimension)
    {
        Point2 along = dimension.Along switch
        {
            MeasuredAlong.Horizontal => new Point2(1, 0),
            MeasuredAlong.Vertical => new Point2(0, 1),
            _ => (dimension.To - dimension.From).Unit(),
        };
        Point2 across = along.Left;
        double sign = dimension.Offset < 0 ? -1 : 1;
        double from = dimension.From.Dot(across);
        double to = dimension.To.Dot(across);

        // Across a vertical measure the axis points left, so a reference given as X turns round.
        double? reference = dimension.Along switch
        {
            MeasuredAlong.Vertical => -dimension.Reference,
            MeasuredAlong.Aligned => dimension.Reference + from,
            _ => dimension.Reference,
        };
        double level = (reference ?? (sign > 0 ? Math.Max(from, to) : Math.Min(from, to))) + board.Paper(dimension.Offset);

        Point2 a = dimension.From + (across * (level - from));
        Point2 b = dimension.To + (across * (level - to));
        Extension(board, dimension.From, a);
        Extension(board, dimension.To, b);
        if ((b - a).Dot(along) < 0)
        {
            (a, b) = (b, a);
        }

        // Text reads from below or from the right: directions in (-90°, 90°], a trifle of rounding forgiven.
        double turn = along.Angle;
        if (turn > (Math.PI / 2) + 1e-9 || turn <= (-Math.PI / 2) + 1e-9)
        {
            along = -along;
            (a, b) = (b, a);
            turn = along.Angle;
        }

        DrawLine(board, dimension, a, b, turn);
    }

    internal static void Draw(DrawingBoard board, RadiusDimension dimension)
    {
        Point2 outwards = Point2.Direction(dimension.Angle);
        Point2 tip = dimension.Center + (outwards * dimension.Radius);
        SymbolDraughting.Draw(board, new Leader(tip, outwards * dimension.Length, dimension.Value));
    }

    internal static void Draw(DrawingBoard board, AngleDimension dimension)
    {
        double sweep = dimension.ToAngle - dimension.FromAngle;
        sweep -= Math.Floor(sweep / (2 * Math.PI)) * 2 * Math.PI;
        double radius = board.Paper(dimension.Radius);
        Point2 first = Point2.Direction(dimension.FromAngle);
        Point2 last = Point2.Direction(dimension.FromAngle + sweep);
        double reach = radius + board.Paper(DrawingStyle.ExtensionBeyond);
        board.Line(LineRole.Dimension, dimension.Vertex, dimension.Vertex + (first * reach));
        board.Line(LineRole.Dimension, dimension.Vertex, dimension.Vertex + (last * reach));

        double arrow = DrawingStyle.ArrowLength / dimension.Radius;
        bool inside = sweep > 3 * arrow;
        double tail = inside ? 0 : OutsideTail / dimension.Radius;
        AddArc(board, dimension.Vertex, radius, dimension.FromAngle - tail, sweep + (2 * tail));

        // An arrowhead on a curved line lies along the chord that it covers.
        double lean = inside ? arrow / 2 : -arrow / 2;
        Point2 firstWay = inside ? first.Right : first.Left;
        Point2 lastWay = inside ? last.Left : last.Right;
        board.Arrowhead(LineRole.Dimension, dimension.Vertex + (first * radius), firstWay.Rotated(lean));
        board.Arrowhead(LineRole.Dimension, dimension.Vertex + (last * radius), lastWay.Rotated(-lean));

        // The text's box touches the ray through the arc's middle from outside: half its extent along the ray, and some air.
        Point2 middle = Point2.Direction(dimension.FromAngle + (sweep / 2));
        double height = board.Paper(DrawingStyle.TextHeight);
        double width = StrokeAlphabet.WidthOf(dimension.Value, height);
        double half = ((Math.Abs(middle.X) * width) + (Math.Abs(middle.Y) * height)) / 2;
        Point2 center = dimension.Vertex + (middle * (radius + board.Paper(DrawingStyle.TextClearance + 0.4) + half));
        board.Text(
            LineRole.Dimension, dimension.Value, center - new Point2(0, height / 2), TextAlign.Middle, DrawingStyle.TextHeight, 0);
    }

    private static void Extension(DrawingBoard board, Point2 point, Point2 end)
    {
        Point2 way = end - point;
        double gap = board.Paper(DrawingStyle.ExtensionGap);
        if (way.Length > gap)
        {
            Point2 unit = way.Unit();
            board.Line(LineRole.Dimension, point + (unit * gap), end + (unit * board.Paper(DrawingStyle.ExtensionBeyond)));
        }
    }

    private static void DrawLine(DrawingBoard board, LinearDimension dimension, Point2 a, Point2 b, double turn)
    {
        Point2 along = Point2.Direction(turn);
        LineFit fit = Fit(dimension, a.DistanceTo(b), board.Paper(1));
        board.Line(LineRole.Dimension, a - (along * fit.Before), b + (along * fit.After));
        if (dimension.Ends == DimensionEnds.Ticks)
        {
            Point2 reach = (along + along.Left) * board.Paper(TickReach);
            board.Line(LineRole.Edge, a - reach, a + reach);
            board.Line(LineRole.Edge, b - reach, b + reach);
        }
        else
        {
            board.Arrowhead(LineRole.Dimension, a, fit.EndsInside ? -along : along);
            board.Arrowhead(LineRole.Dimension, b, fit.EndsInside ? along : -along);
        }

        Point2 at = fit.TextInside ? a.Towards(b, 0.5) : b + (along * (fit.After - board.Paper(DrawingStyle.TextClearance)));
        board.Text(
            LineRole.Dimension,
            dimension.Value,
            at + (along.Left * fit.TextLift),
            fit.TextInside ? TextAlign.Middle : TextAlign.End,
            DrawingStyle.TextHeight,
            turn);
    }

    /// <summary>What of a dimension has its place between the ends of the measure, and how far the line runs beyond them.</summary>
    /// <param name="dimension">The dimension.</param>
    /// <param name="length">Between its ends, mm of the drawing.</param>
    /// <param name="paper">mm of the drawing for a mm of paper.</param>
    internal static LineFit Fit(LinearDimension dimension, double length, double paper)
    {
        double arrow = DrawingStyle.ArrowLength * paper;
        double clearance = DrawingStyle.TextClearance * paper;
        WrittenText trial = StrokeAlphabet.Write(dimension.Value, DrawingStyle.TextHeight * paper, Point2.Origin);

        // Stacked fractions and tails reach below the baseline: the lowest ink keeps clear of the line.
        double lift = clearance - Math.Min(0, trial.Box.IsEmpty ? 0 : trial.Box.MinY);
        bool ticks = dimension.Ends == DimensionEnds.Ticks;
        bool endsInside = ticks || length >= 3 * arrow;
        bool textInside = trial.Width + (2 * clearance) <= length;
        double before = endsInside ? 0 : OutsideTail * paper;
        double after = textInside ? before : (endsInside ? clearance : arrow + clearance) + trial.Width + clearance;
        return new LineFit(endsInside, textInside, before, after, lift);
    }

    private static void AddArc(DrawingBoard board, Point2 center, double radius, double from, double sweep)
    {
        int pieces = Math.Max(1, (int)Math.Ceiling(sweep / (Math.PI * 0.9)));
        var vertices = new Vertex[pieces + 1];
        double bulge = Math.Tan(sweep / pieces / 4);
        for (int i = 0; i <= pieces; i++)
        {
            vertices[i] = new Vertex(center + (Point2.Direction(from + (sweep * i / pieces)) * radius), i < pieces ? bulge : 0);
        }

        board.Add(new Stroke(LineRole.Dimension, new Contour(vertices, false)));
    }
}

/// <summary>How a dimension's parts fit between its ends; lengths in mm of the drawing.</summary>
/// <param name="EndsInside">Arrowheads point outwards from between the ends.</param>
/// <param name="TextInside">The text stands between the ends.</param>
/// <param name="Before">How far the line runs beyond the first end.</param>
/// <param name="After">How far it runs beyond the second end.</param>
/// <param name="TextLift">From the line to the text's baseline.</param>
internal readonly record struct LineFit(bool EndsInside, bool TextInside, double Before, double After, double TextLift);
