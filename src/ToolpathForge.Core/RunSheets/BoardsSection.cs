using System.Globalization;
using ToolpathForge.Clampings;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;

namespace ToolpathForge.RunSheets;

/// <summary>What the sheet says about the boards of a batch: which lies where in which run, and a line for each to tick off.</summary>
internal static class BoardsSection
{
    internal static void Write(Html page, Job job, Clamping clamping)
    {
        if (clamping.Make is not BoardEndMake make || clamping.Turns.Length < 2)
        {
            return;
        }

        bool both = make.Batch.BothEnds;
        string[] head = ["Board", "Width", "Thickness", "Against the design", both ? "First end" : "Run", .. both ? ["Second end"] : Array.Empty<string>(), "Done"];
        page.Element("h3", "The boards, to tick off").Table(head, make.Batch.Numbered.Select(b => Row(job, make, clamping, b.Number, b.Board)));
    }

    private static IReadOnlyList<string> Row(Job job, BoardEndMake make, Clamping clamping, int number, MeasuredBoards board)
    {
        string Say(double mm) => ShopText.Size(mm, job.Unit);
        string Turn(int end) => clamping.Turns.First(t => t.Board == number && t.End == end) is var t && clamping.Pieces.Length > 1
            ? string.Create(CultureInfo.InvariantCulture, $"run {t.Run}, place {t.Place}")
            : string.Create(CultureInfo.InvariantCulture, $"run {t.Run}");
        double more = board.Width - make.DesignWidth;
        return
        [
            NameOf(number, board),
            Say(board.Width),
            Say(board.Thickness),
            Math.Abs(more) < 0.05 ? "as drawn" : more > 0 ? $"ledge of {Say(more)}" : $"short by {Say(-more)}",
            Turn(1),
            .. make.Batch.BothEnds ? [Turn(2)] : Array.Empty<string>(),
            make.Batch.BothEnds ? "☐ ☐" : "☐",
        ];
    }

    /// <summary>What a board is called: its number, and the person's own word behind it.</summary>
    internal static string NameOf(int number, MeasuredBoards board) =>
        string.Create(CultureInfo.InvariantCulture, $"{number}{(board.Name.Length > 0 ? $" ({board.Name})" : "")}");
}
