using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Drawings;

/// <summary>What stands on every printed sheet beside the drawing: frame, check bars, title, seams with register marks, and a map of the sheets.</summary>
internal static class SheetFurniture
{
    /// <summary>Length of the metric check bar, mm of paper.</summary>
    internal const double MetricBar = 100;

    /// <summary>Length of the inch check bar, mm of paper: 4 in.</summary>
    internal const double InchBar = 4 * 25.4;

    private const double TitleLeft = 116;
    private const double MapSize = 24;
    private const double MarkRadius = 2.4;
    private const double MarkReach = 4;

    /// <summary>Where along a seam its register marks stand, as shares of what the sheet has between the seams.</summary>
    private static readonly ImmutableArray<double> s_alongSeam = [0.12, 0.88];

    /// <summary>Lower left corner of the metric check bar, mm of the page.</summary>
    internal static Point2 MetricBarAt => new(TileGrid.Margin + 2, TileGrid.Margin + 17);

    /// <summary>Lower left corner of the inch check bar, mm of the page.</summary>
    internal static Point2 InchBarAt => new(TileGrid.Margin + 2, TileGrid.Margin + 4);

    /// <summary>The furniture of one sheet, in mm of the page.</summary>
    internal static Drawing Of(TileGrid grid, int column, int row, string title, string job, string scale)
    {
        var elements = ImmutableArray.CreateBuilder<DrawingElement>();
        AddSeams(elements, grid, column, row);
        elements.Add(new Stroke(LineRole.Construction, Contour.Rectangle(grid.Window)));
        AddBars(elements);
        bool one = grid.Count == 1;
        string sheet = one
            ? $"One sheet of {grid.Paper.Name}"
            : FormattableString.Invariant($"Sheet {TileGrid.NameOf(column, row)}, one of {grid.Count}, {grid.Paper.Name}");
        AddTitle(elements, grid, one ? 0 : MapSize + 3, title, $"{scale}. Print at 100 per cent,", "never fitted to the page.", sheet, $"Job: {job}");
        if (!one)
        {
            AddMap(elements, grid, column, row);
        }

        return new Drawing(title, sheet, elements.ToImmutable());
    }

    /// <summary>The two check bars with the words that ask to measure them.</summary>
    internal static void AddBars(ImmutableArray<DrawingElement>.Builder elements)
    {
        AddBar(MetricBarAt, MetricBar, 10, "100 mm");
        AddBar(InchBarAt, InchBar, 8, "4 in");

        void AddBar(Point2 at, double length, int divisions, string value)
        {
            elements.Add(new ScaleBar(at, length, divisions, value));
            elements.Add(new Text($"measure this bar before use: {value}", at + new Point2(length / 2, 2.3), TextAlign.Middle, 2.2));
        }
    }

    /// <summary>Lines of a title beside the bars, each made smaller where it is too long.</summary>
    internal static void AddTitle(ImmutableArray<DrawingElement>.Builder elements, TileGrid grid, double kept, string title, params ReadOnlySpan<string> lines)
    {
        double left = TileGrid.Margin + TitleLeft;
        double width = grid.PageWidth - TileGrid.Margin - kept - left;
        double y = TileGrid.Margin + TileGrid.Strip - 7;
        elements.Add(Fitted(title, new Point2(left, y), 2.8, width));
        y -= 5.6;
        foreach (string line in lines)
        {
            elements.Add(Fitted(line, new Point2(left, y), 2.2, width));
            y -= 4.2;
        }
    }

    /// <summary>A line of text that is no wider than the room it has.</summary>
    internal static Text Fitted(string value, Point2 at, double height, double width, TextAlign align = TextAlign.Start) =>
        new(value, at, align, height * Math.Min(1, width / Math.Max(1e-9, StrokeAlphabet.WidthOf(value, height))));

    private static void AddSeams(ImmutableArray<DrawingElement>.Builder elements, TileGrid grid, int column, int row)
    {
        Box2 window = grid.Window;
        const double Half = TileGrid.Overlap / 2;
        if (column > 0)
        {
            Seam(new(window.MinX + Half, window.MinY), new(window.MinX + Half, window.MaxY), TileGrid.NameOf(column - 1, row), 1);
        }

        if (column < grid.Columns - 1)
        {
            Seam(new(window.MaxX - Half, window.MinY), new(window.MaxX - Half, window.MaxY), TileGrid.NameOf(column + 1, row), -1);
        }

        if (row > 0)
        {
            Seam(new(window.MinX, window.MaxY - Half), new(window.MaxX, window.MaxY - Half), TileGrid.NameOf(column, row - 1), 1);
        }

        if (row < grid.Rows - 1)
        {
            Seam(new(window.MinX, window.MinY + Half), new(window.MaxX, window.MinY + Half), TileGrid.NameOf(column, row + 1), -1);
        }

        // The name of the neighbour stands between the seam and the sheet's edge, on a patch that hides what the neighbour shows as well.
        void Seam(Point2 from, Point2 to, string neighbour, int outwards)
        {
            elements.Add(new Stroke(LineRole.Construction, Contour.Polyline(from, to)));
            Point2 along = (to - from).Unit();
            double inner = from.DistanceTo(to) - (2 * TileGrid.Overlap);
            foreach (double share in s_alongSeam)
            {
                Point2 at = from + (along * (TileGrid.Overlap + (inner * share)));
                elements.Add(new Stroke(LineRole.Dimension, Contour.Circle(at, MarkRadius)));
                elements.Add(new Stroke(LineRole.Dimension, Contour.Polyline(at - (along * MarkReach), at + (along * MarkReach))));
                elements.Add(new Stroke(LineRole.Dimension, Contour.Polyline(at - (along.Left * MarkReach), at + (along.Left * MarkReach))));
            }

            string text = $"{neighbour} goes on here";
            double half = (StrokeAlphabet.WidthOf(text, 2.2) / 2) + 1;
            Point2 middle = from.Towards(to, 0.5) + (along.Left * (outwards * Half / 2));
            Point2 side = along.Left * 2.2;
            elements.Add(new Fill(Tone.Paper, Outlines.Of(Contour.Polygon(
                middle - (along * half) - side, middle + (along * half) - side, middle + (along * half) + side, middle - (along * half) + side))));
            elements.Add(new Text(text, middle - (along.Left * 1.1), TextAlign.Middle, 2.2, along.Angle));
        }
    }

    private static void AddMap(ImmutableArray<DrawingElement>.Builder elements, TileGrid grid, int column, int row)
    {
        double share = Math.Min(MapSize / (grid.Columns * grid.Window.Width), MapSize / (grid.Rows * grid.Window.Height));
        double wide = grid.Window.Width * share;
        double high = grid.Window.Height * share;
        double left = grid.PageWidth - TileGrid.Margin - (grid.Columns * wide) - 0.5;
        double top = TileGrid.Margin + TileGrid.Strip - 3;
        for (int r = 0; r < grid.Rows; r++)
        {
            for (int c = 0; c < grid.Columns; c++)
            {
                Contour cell = Contour.Rectangle(new Box2(left + (c * wide), top - ((r + 1) * high), left + ((c + 1) * wide), top - (r * high)));
                if (c == column && r == row)
                {
                    elements.Add(new Fill(Tone.Clamp, Outlines.Of(cell)));
                }

                elements.Add(new Stroke(LineRole.Dimension, cell));
                string name = TileGrid.NameOf(c, r);
                if (StrokeAlphabet.WidthOf(name, 1.8) + 1 < wide && high > 3)
                {
                    elements.Add(new Text(name, new Point2(left + ((c + 0.5) * wide), top - ((r + 0.5) * high) - 0.9), TextAlign.Middle, 1.8));
                }
            }
        }
    }
}
