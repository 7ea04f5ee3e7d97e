using ToolpathForge.Geometry;

namespace ToolpathForge.Drawings;

/// <summary>
/// How a drawing larger than a sheet is spread over several: columns from left to right, rows from top to bottom, each sheet showing a window of the same size,
/// neighbours sharing a strip. All measures are mm of paper; a place in the drawing is the drawing's own millimetres times the scale.
/// </summary>
/// <param name="Paper">The paper.</param>
/// <param name="IsLandscape">Whether its longer side lies along X.</param>
/// <param name="Columns">1 or more.</param>
/// <param name="Rows">1 or more.</param>
/// <param name="Start">Lower left corner of all windows together, in the scaled drawing.</param>
internal sealed record TileGrid(PrintPaper Paper, bool IsLandscape, int Columns, int Rows, Point2 Start)
{
    /// <summary>
    /// Free edge of a sheet, mm. Common practice: office printers leave 4 to 7 mm unprinted, a few 10.
    /// </summary>
    internal const double Margin = 10;

    /// <summary>Height of the strip at the foot with check bars and title, mm.</summary>
    internal const double Strip = 30;

    /// <summary>What neighbouring sheets both show, mm: room for a register mark and for glue.</summary>
    internal const double Overlap = 16;

    /// <summary>Free space round the drawing within the windows, mm.</summary>
    private const double Air = 3;

    internal double PageWidth => IsLandscape ? Paper.Height : Paper.Width;

    internal double PageHeight => IsLandscape ? Paper.Width : Paper.Height;

    /// <summary>The window on a sheet, mm of the page; the same on all.</summary>
    internal Box2 Window => WindowOf(PageWidth, PageHeight);

    internal int Count => Columns * Rows;

    /// <summary>From a sheet to the next, mm.</summary>
    internal double StepX => Window.Width - Overlap;

    /// <summary>From a row to the next, mm.</summary>
    internal double StepY => Window.Height - Overlap;

    /// <summary>The fewest sheets that hold a drawing, upright rather than lying where both take as many; the drawing lies in their middle.</summary>
    /// <param name="drawn">What the drawing takes up, mm of paper.</param>
    /// <param name="paper">The paper.</param>
    internal static TileGrid For(Box2 drawn, PrintPaper paper)
    {
        Box2 box = drawn.IsEmpty ? default : drawn.Grown(Air);
        TileGrid upright = Of(box, paper, false);
        TileGrid lying = Of(box, paper, true);
        return lying.Count < upright.Count ? lying : upright;
    }

    /// <summary>Where the drawing's origin lies on a sheet, mm of the page.</summary>
    /// <param name="column">0 the leftmost.</param>
    /// <param name="row">0 the uppermost.</param>
    internal Point2 OriginOn(int column, int row) =>
        new Point2(Window.MinX - (column * StepX), Window.MinY - ((Rows - 1 - row) * StepY)) - Start;

    /// <summary>What people call a sheet: the row's letter and the column's number, B2; rows beyond Z go on with AA.</summary>
    /// <param name="column">0 the leftmost.</param>
    /// <param name="row">0 the uppermost.</param>
    internal static string NameOf(int column, int row)
    {
        string letters = "";
        for (int rest = row; rest >= 0; rest = (rest / 26) - 1)
        {
            letters = (char)('A' + (rest % 26)) + letters;
        }

        return FormattableString.Invariant($"{letters}{column + 1}");
    }

    private static TileGrid Of(Box2 box, PrintPaper paper, bool landscape)
    {
        (double width, double height) = landscape ? (paper.Height, paper.Width) : (paper.Width, paper.Height);
        Box2 window = WindowOf(width, height);
        int columns = Needed(box.Width, window.Width);
        int rows = Needed(box.Height, window.Height);
        var all = new Point2(columns * (window.Width - Overlap), rows * (window.Height - Overlap));
        return new TileGrid(paper, landscape, columns, rows, box.Center - ((all + new Point2(Overlap, Overlap)) / 2));
    }

    private static Box2 WindowOf(double width, double height) => new(Margin, Margin + Strip, width - Margin, height - Margin);

    private static int Needed(double length, double window) => Math.Max(1, (int)Math.Ceiling(((length - Overlap) / (window - Overlap)) - 1e-9));
}
