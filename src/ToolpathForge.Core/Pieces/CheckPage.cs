using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>
/// One page to take to the bench with a rule: what every piece measures over all and from corner to corner of its curve, and the two check bars. The figures
/// are worked out from the exact outlines, not from what any program cuts.
/// </summary>
public static class CheckPage
{
    private const double RowHeight = 7.2;
    private const double Letters = 2.5;

    private static readonly ImmutableArray<string> s_heads = ["make", "piece", "over all,\nalong", "over all,\nacross", "run", "depth", "straight across\nthe curve", "measured"];

    // Shares of the width at which the columns begin.
    private static readonly ImmutableArray<double> s_columns = [0, 0.17, 0.38, 0.49, 0.6, 0.69, 0.78, 0.92];

    /// <summary>The pages for some pieces: one, unless there are more than go on it.</summary>
    /// <param name="job">What the job is called.</param>
    /// <param name="pieces">At least one, in the order they are to be listed.</param>
    /// <param name="unit">The unit of the figures.</param>
    /// <param name="paper">The paper, upright.</param>
    public static ImmutableArray<PrintPage> Of(string job, IReadOnlyList<ProfilePiece> pieces, LengthUnit unit, PrintPaper paper)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(paper);
        var grid = new TileGrid(paper, false, 1, 1, default);
        int rows = (int)((grid.Window.Height - 36) / RowHeight);
        return [.. pieces.Chunk(rows).Select((some, i) => Page(job, some, unit, grid, i + 1, (pieces.Count + rows - 1) / rows))];
    }

    /// <summary>What a piece measures, in the order of the page's columns: along, across, run, depth, curve from start to nose; mm.</summary>
    /// <param name="piece">The piece.</param>
    internal static ImmutableArray<double> Sizes(ProfilePiece piece)
    {
        Profile p = piece.Profile;
        var chord = new Point2(p.Run, p.Depth);
        if (piece.Make is PatternMake)
        {
            Box2 box = CurveExtent.Box(piece.Exact);
            return [box.Width, box.Height, p.Run, p.Depth, chord.Length];
        }

        return [CurveExtent.Box(p.Exact).Width, p.Width, p.Run, p.Depth, chord.Length];
    }

    private static PrintPage Page(string job, ProfilePiece[] pieces, LengthUnit unit, TileGrid grid, int number, int pages)
    {
        var elements = ImmutableArray.CreateBuilder<DrawingElement>();
        Box2 window = grid.Window;
        SheetFurniture.AddBars(elements);
        SheetFurniture.AddTitle(
            elements, grid, 0, "To check with a rule", "Print at 100 per cent,", "never fitted to the page.", FormattableString.Invariant($"Page {number} of {pages}, {grid.Paper.Name}"), $"Job: {job}");
        double y = window.MaxY - 8;
        elements.Add(SheetFurniture.Fitted(job, new Point2(window.MinX + 2, y), DrawingStyle.TitleHeight, window.Width - 4));
        elements.Add(SheetFurniture.Fitted(
            (unit == LengthUnit.Inch ? "Sizes to the nearest 1/64 in. " : "Sizes to the nearest half millimeter. ") + "Along runs with the board, across from edge to edge; tick each under measured.",
            new Point2(window.MinX + 2, y - 7),
            Letters,
            window.Width - 4));

        y -= 18;
        for (int c = 0; c < s_heads.Length; c++)
        {
            string[] lines = s_heads[c].Split('\n');
            elements.Add(new Text(s_heads[c], new Point2(Column(c), y + ((lines.Length - 1) * Letters * StrokeAlphabet.LineSpacing)), TextAlign.Start, Letters));
        }

        Rule(y - 2.4, LineRole.Edge);
        foreach (ProfilePiece piece in pieces)
        {
            y -= RowHeight;
            string[] cells =
            [
                piece.Make.Id,
                piece.Make is PatternMake ? $"pattern, {piece.Make.Board.Id}" : $"board end, {piece.Make.Board.Id}",
                .. Sizes(piece).Select(s => RuleText.Size(s, unit)),
            ];
            for (int c = 0; c < cells.Length; c++)
            {
                double end = c + 1 < cells.Length ? Column(c + 1) : window.MaxX;
                elements.Add(SheetFurniture.Fitted(cells[c], new Point2(Column(c), y), Letters, end - Column(c) - 2));
            }

            Rule(y - 2.4, LineRole.Construction);
        }

        var drawing = new Drawing($"Sizes of {job}, to check with a rule", "Over-all sizes of every piece, and two bars of known length.", elements.ToImmutable());
        return new PrintPage(grid.PageWidth, grid.PageHeight, [new PageView(drawing, 1, default)]);

        double Column(int index) => window.MinX + 2 + (s_columns[index] * (window.Width - 4));
        void Rule(double at, LineRole role) => elements.Add(new Stroke(role, Contour.Polyline(new Point2(window.MinX + 2, at), new Point2(window.MaxX - 2, at))));
    }
}
