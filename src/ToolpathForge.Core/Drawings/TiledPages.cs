using System.Collections.Immutable;
using System.Globalization;

namespace ToolpathForge.Drawings;

/// <summary>
/// Spreads a drawing over as many sheets of office paper as it takes, at a scale that stays: neighbouring sheets share a strip with register marks, and every
/// sheet carries two bars of known length, so that a printer that shrinks is caught before anything is marked from its prints.
/// </summary>
public static class TiledPages
{
    /// <summary>The pages of a drawing, row by row from the upper left.</summary>
    /// <param name="drawing">What to print. Tints and grain are left out: they cost ink and hide pencil marks.</param>
    /// <param name="job">What the job is called; stands on every sheet.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="scale">mm of paper for a mm of the thing drawn, more than 0: 1 for full size.</param>
    public static ImmutableArray<PrintPage> Of(Drawing drawing, string job, PrintPaper paper, double scale = 1)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(paper);
        Drawing lines = Lines(drawing);
        TileGrid grid = Grid(lines, paper, scale);
        var pages = ImmutableArray.CreateBuilder<PrintPage>(grid.Count);
        for (int row = 0; row < grid.Rows; row++)
        {
            for (int column = 0; column < grid.Columns; column++)
            {
                pages.Add(new PrintPage(
                    grid.PageWidth,
                    grid.PageHeight,
                    [
                        new PageView(lines, scale, grid.OriginOn(column, row), grid.Window),
                        new PageView(SheetFurniture.Of(grid, column, row, drawing.Title, job, ScaleText(scale)), 1, default),
                    ]));
            }
        }

        return pages.MoveToImmutable();
    }

    /// <summary>How many sheets a drawing takes, and how they lie beside each other.</summary>
    /// <param name="drawing">What to print.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="scale">mm of paper for a mm of the thing drawn, more than 0.</param>
    public static (int Columns, int Rows) Count(Drawing drawing, PrintPaper paper, double scale = 1)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(paper);
        TileGrid grid = Grid(Lines(drawing), paper, scale);
        return (grid.Columns, grid.Rows);
    }

    /// <summary>The largest of <see cref="SheetPaper.CommonScales"/> at which a drawing goes on one sheet; null when none does.</summary>
    /// <param name="drawing">Draws for a scale: what explains a drawing keeps its size on paper, so that it may have to be placed anew.</param>
    /// <param name="paper">The paper.</param>
    public static double? OneSheetScale(Func<double, Drawing> drawing, PrintPaper paper)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(paper);
        foreach (double scale in SheetPaper.CommonScales)
        {
            if (Count(drawing(scale), paper, scale) == (1, 1))
            {
                return scale;
            }
        }

        return null;
    }

    /// <summary>A scale in words: full size, or 1:2.5.</summary>
    /// <param name="scale">mm of paper for a mm of the thing drawn, more than 0.</param>
    public static string ScaleText(double scale) => scale switch
    {
        1 => "Full size",
        > 1 => string.Create(CultureInfo.InvariantCulture, $"Scale {scale:0.##}:1"),
        _ => string.Create(CultureInfo.InvariantCulture, $"Scale 1:{1 / scale:0.##}"),
    };

    private static Drawing Lines(Drawing drawing) => drawing with { Elements = [.. drawing.Elements.Where(e => e is not (Fill or GrainLines))] };

    private static TileGrid Grid(Drawing lines, PrintPaper paper, double scale)
    {
        Geometry.Box2 box = Draughting.BoxOf(Draughting.Marks(lines, scale));
        return TileGrid.For(box.IsEmpty ? box : new(box.MinX * scale, box.MinY * scale, box.MaxX * scale, box.MaxY * scale), paper);
    }
}
