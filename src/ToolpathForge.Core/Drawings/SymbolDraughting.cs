using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Drawings;

/// <summary>The signs of a drawing drawn out: leaders, arrows, grain, zero point, centre, scale bar.</summary>
internal static class SymbolDraughting
{
    private const double Shoulder = 3;
    private const double ZeroRadius = 2;
    private const double AxisLength = 11;
    private const double BarHeight = 1.1;

    internal static void Draw(DrawingBoard board, Leader leader)
    {
        Point2 elbow = leader.Tip + (leader.Elbow * board.Paper(1));
        double side = leader.Elbow.X < 0 ? -1 : 1;
        Point2 end = elbow + new Point2(side * board.Paper(Shoulder), 0);
        board.Line(LineRole.Dimension, leader.Tip, elbow);
        board.Line(LineRole.Dimension, elbow, end);
        if (leader.HasArrow && leader.Elbow.Length > 0)
        {
            board.Arrowhead(LineRole.Dimension, leader.Tip, -leader.Elbow);
        }
        else
        {
            board.Dot(LineRole.Dimension, leader.Tip, 0.5);
        }

        // The block of lines stands with its middle on the shoulder.
        int lines = leader.Value.Count(c => c == '\n') + 1;
        double block = DrawingStyle.TextHeight * (1 + ((lines - 1) * StrokeAlphabet.LineSpacing));
        var at = new Point2(
            end.X + (side * board.Paper(DrawingStyle.TextClearance + 0.2)),
            end.Y + board.Paper((block / 2) - DrawingStyle.TextHeight));
        board.Text(LineRole.Dimension, leader.Value, at, side > 0 ? TextAlign.Start : TextAlign.End, DrawingStyle.TextHeight, 0);
    }

    internal static void Draw(DrawingBoard board, Arrow arrow)
    {
        Point2 way = arrow.To - arrow.From;
        Point2 foot = arrow.To - (way.Unit() * board.Paper(DrawingStyle.ArrowLength * 0.8));
        board.Line(arrow.Role, arrow.From, foot);
        board.Arrowhead(arrow.Role, arrow.To, way);
    }

    internal static void Draw(DrawingBoard board, GrainArrow arrow)
    {
        Point2 along = Point2.Direction(arrow.Angle);
        if (along.X < -1e-9)
        {
            along = -along;
        }

        Point2 half = along * board.Paper(arrow.Length / 2);
        Point2 barb = along.Rotated(-Math.PI / 7) * board.Paper(3.4);
        board.Line(LineRole.Lettering, arrow.At - half, arrow.At + half);
        board.Line(LineRole.Lettering, arrow.At + half, arrow.At + half - barb);
        board.Line(LineRole.Lettering, arrow.At - half, arrow.At - half + barb);
        if (arrow.Value.Length > 0)
        {
            board.Text(
                LineRole.Lettering, arrow.Value, arrow.At + (along.Left * board.Paper(1.3)), TextAlign.Middle, 2.2, along.Angle);
        }
    }

    internal static void Draw(DrawingBoard board, ZeroPoint zero)
    {
        Point2 x = Point2.Direction(zero.Turn);
        double r = board.Paper(ZeroRadius);
        if (zero.HasAxes)
        {
            Axis(board, zero.At, x, x.Right, "X");
            Axis(board, zero.At, x.Left, x.Left.Left, "Y");
        }

        Outline disc = Outlines.Of(Contour.Circle(zero.At, r));
        board.Add(new Fill(Tone.Paper, disc));
        board.Add(new Stroke(LineRole.Lettering, Contour.Circle(zero.At, r)));

        // Two opposite quarters are filled; a quarter's bulge is tan(90°/4).
        double quarter = Math.Tan(Math.PI / 8);
        foreach (Point2 first in (ReadOnlySpan<Point2>)[x * r, -x * r])
        {
            board.Add(new Solid(LineRole.Lettering, new Contour([new Vertex(zero.At), new Vertex(zero.At + first, quarter), new Vertex(zero.At + first.Left)], true)));
        }
    }

    internal static void Draw(DrawingBoard board, CenterMark center)
    {
        double reach = board.Paper(1.8);
        board.Line(LineRole.Dimension, center.At - new Point2(reach, 0), center.At + new Point2(reach, 0));
        board.Line(LineRole.Dimension, center.At - new Point2(0, reach), center.At + new Point2(0, reach));
    }

    internal static void Draw(DrawingBoard board, ScaleBar bar)
    {
        double height = board.Paper(BarHeight);
        int divisions = Math.Max(1, bar.Divisions);
        double step = bar.Length / divisions;
        for (int i = 0; i < divisions; i += 2)
        {
            Point2 corner = bar.At + new Point2(step * i, 0);
            board.Add(new Solid(LineRole.Dimension, Contour.Polygon(corner, corner + new Point2(step, 0), corner + new Point2(step, height), corner + new Point2(0, height))));
        }

        board.Add(new Stroke(LineRole.Dimension, Contour.Polygon(
            bar.At, bar.At + new Point2(bar.Length, 0), bar.At + new Point2(bar.Length, height), bar.At + new Point2(0, height))));
        double baseline = height + board.Paper(1.2);
        board.Text(LineRole.Lettering, "0", bar.At + new Point2(0, baseline), TextAlign.Middle, 2.2, 0);
        board.Text(LineRole.Lettering, bar.Value, bar.At + new Point2(bar.Length, baseline), TextAlign.Middle, 2.2, 0);
    }

    private static void Axis(DrawingBoard board, Point2 at, Point2 direction, Point2 aside, string name)
    {
        Point2 tip = at + (direction * board.Paper(AxisLength));
        Draw(board, new Arrow(LineRole.Lettering, at, tip));

        // The letter stands upright beside the tip, on the side away from the work, which mostly lies between the axes.
        Point2 middle = tip + (((aside * 2.6) - (direction * 1.2)) * board.Paper(1));
        board.Text(LineRole.Lettering, name, middle - new Point2(0, board.Paper(1.25)), TextAlign.Middle, 2.5, 0);
    }
}
