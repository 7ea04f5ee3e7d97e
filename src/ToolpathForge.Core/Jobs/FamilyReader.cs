using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>One make as written, or one board of a family.</summary>
/// <param name="Table">The make's table with everything the board changes put in.</param>
/// <param name="Family">The id of the block that it comes from; null when the block has no family.</param>
internal readonly record struct FamilyMember(TableValue Table, string? Family);

/// <summary>
/// Spreads a make with a <c>family</c> over its boards: the same make once for each, with the board's own answers in place of the common ones.
/// Every value keeps its place in the file.
/// </summary>
internal static class FamilyReader
{
    /// <summary>A family names its boards; a single one beside it has no meaning.</summary>
    internal static readonly FindingKind BoardBesideFamily = new(
        "board-beside-family",
        Severity.Stop,
        "{key} stands beside a family, whose boards have their own.",
        "Move it into the family, or take the family out.")
    {
        Unusable = true,
    };

    private const int MostBoards = 40;

    private static readonly ImmutableHashSet<string> s_ofTheBoard = ImmutableHashSet.Create(StringComparer.Ordinal, "board", "design-width");

    /// <summary>What a board of a family may say.</summary>
    internal static TableKeys Keys { get; } = new("a board of a family",
    [
        Key.Row("board", "lumber", "The size of lumber; the make's id is followed by it."),
        Key.Length("design-width", "Width that the shape is scaled to, if it is a measured one.", 10, 1000).ElseFrom("the dressed width of the board"),
        Key.Whole("count", "How many.", 1, 500).ElseFrom("as the make says"),
        Key.Table("shape", "Answers of this board's own, in place of the make's.", new TableKeys("shape", [])).ElseFrom("as the make says"),
    ]);

    /// <summary>The key of a make that holds its family.</summary>
    internal static Key Family { get; } =
        Key.Tables("family", "Several boards that get the same shape, one block or brace for each, instead of board.", Keys, 1, MostBoards).ElseFrom("one board");

    /// <summary>The make itself, or one for each board of its family.</summary>
    internal static IEnumerable<FamilyMember> Spread(TableValue make, TableContext context)
    {
        if (make.Find(Family.Name)?.Value is not ListValue { Items.Length: > 0 and <= MostBoards } list || list.Items.Any(i => i is not TableValue))
        {
            // What is wrong with the family's value is told when the make is read.
            yield return new FamilyMember(make, null);
            yield break;
        }

        foreach (TableEntry entry in make.Entries.Where(e => s_ofTheBoard.Contains(e.Name)))
        {
            context.Add(Finding.Of(BoardBesideFamily, entry.NameAt, Arg.Of("key", entry.Name)));
        }

        string? id = (make.Find("id")?.Value as TextValue)?.Text;
        foreach (TableValue board in list.Items.OfType<TableValue>())
        {
            if (Fields.Read(board, Keys, context) is { IsSound: true } fields)
            {
                yield return new FamilyMember(Member(make, board, fields.Text("board")), id ?? "");
            }
        }
    }

    private static TableValue Member(TableValue make, TableValue board, string name)
    {
        var entries = ImmutableArray.CreateBuilder<TableEntry>();
        foreach (TableEntry entry in make.Entries.Where(e => e.Name != Family.Name && !s_ofTheBoard.Contains(e.Name)))
        {
            TableEntry? own = board.Find(entry.Name);
            entries.Add(entry switch
            {
                { Name: "id", Value: TextValue text } => entry with { Value = Named(text, name, board.Find("board")!.Value.At) },
                { Value: TableValue common } when own?.Value is TableValue special => entry with { Value = Merged(common, special) },
                _ => own ?? entry,
            });
        }

        entries.AddRange(board.Entries.Where(e => s_ofTheBoard.Contains(e.Name) || make.Find(e.Name) is null));
        return make with { Entries = entries.ToImmutable() };
    }

    // The board's name as far as an id may hold it.
    private static TextValue Named(TextValue id, string board, Place at)
    {
        string text = $"{id.Text}-{string.Concat(board.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'))}";
        return new TextValue(text, $"\"{text}\"", at);
    }

    private static TableValue Merged(TableValue common, TableValue special) => common with
    {
        Entries = [.. common.Entries.Where(e => special.Find(e.Name) is null), .. special.Entries],
    };
}
