using System.Globalization;
using ToolpathForge.Drawings;
using ToolpathForge.Jobs;
using ToolpathForge.MarkingOut;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;

namespace ToolpathForge.Service.Telling;

/// <summary>What was drawn, as a table to read.</summary>
internal static class DrawTables
{
    /// <summary>A line a piece: its sizes, and how many sheets its full-size print takes.</summary>
    internal static Section Of(DrawPlan plan)
    {
        LengthUnit unit = plan.Job.Unit;
        return new Section(
            [$"{plan.Job.Name}: drawn at full size."],
            [new("make"), new("board"), new("run", true), new("depth", true), new("A4 sheets", true), new("Letter sheets", true)],
            [
                .. plan.Pieces.OfType<ProfilePiece>().Select(piece =>
                {
                    Drawing drawing = piece.Make is PatternMake ? PieceDrawing.Of(piece, unit) : PaperPattern.Of(piece, HandLayout.Of(piece.Profile, unit), unit);
                    return (System.Collections.Immutable.ImmutableArray<string>)
                    [
                        piece.Make.Id, piece.Make.Board.Id, ShopText.Size(piece.Profile.Run, unit), ShopText.Size(piece.Profile.Depth, unit),
                        Sheets(drawing, PrintPaper.A4), Sheets(drawing, PrintPaper.Letter),
                    ];
                }),
            ]);
    }

    private static string Sheets(Drawing drawing, PrintPaper paper)
    {
        (int columns, int rows) = TiledPages.Count(drawing, paper);
        return (columns * rows).ToString(CultureInfo.InvariantCulture);
    }
}
