using System.Collections.Immutable;
using CsCheck;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Drawings;

public class TiledPagesTests
{
    // Places on paper come from a dozen sums of numbers below 10,000: 1e-9 mm is a thousand times what they can lose.
    private const double Near = 1e-9;

    private static readonly Gen<(Box2 Box, PrintPaper Paper)> s_cases =
        from left in Gen.Double[-3000, 3000]
        from low in Gen.Double[-3000, 3000]
        from width in Gen.Double[0.1, 2500]
        from height in Gen.Double[0.1, 1500]
        from letter in Gen.Bool
        select (new Box2(left, low, left + width, low + height), letter ? PrintPaper.Letter : PrintPaper.A4);

    [Fact]
    public void Every_place_of_the_drawing_is_seen_on_a_sheet_and_neighbours_share_the_overlap() => s_cases.Sample(c =>
    {
        TileGrid grid = TileGrid.For(c.Box, c.Paper);
        for (int column = 0; column < grid.Columns; column++)
        {
            for (int row = 0; row < grid.Rows; row++)
            {
                Box2 seen = Seen(grid, column, row);
                if (column > 0)
                {
                    Assert.Equal(TileGrid.Overlap, Seen(grid, column - 1, row).MaxX - seen.MinX, Near);
                }

                if (row > 0)
                {
                    Assert.Equal(TileGrid.Overlap, seen.MaxY - Seen(grid, column, row - 1).MinY, Near);
                }
            }
        }

        Box2 all = Seen(grid, 0, 0).Union(Seen(grid, grid.Columns - 1, grid.Rows - 1));
        Assert.True(all.MinX <= c.Box.MinX && all.MinY <= c.Box.MinY && all.MaxX >= c.Box.MaxX && all.MaxY >= c.Box.MaxY);
    });

    // With one column fewer the windows would not reach: none is wasted.
    [Fact]
    public void No_more_sheets_than_it_takes() => s_cases.Sample(c =>
    {
        TileGrid grid = TileGrid.For(c.Box, c.Paper);
        double Reach(int sheets, double window) => (sheets * (window - TileGrid.Overlap)) + TileGrid.Overlap;
        Assert.True(grid.Columns == 1 || Reach(grid.Columns - 1, grid.Window.Width) < c.Box.Width + 7);
        Assert.True(grid.Rows == 1 || Reach(grid.Rows - 1, grid.Window.Height) < c.Box.Height + 7);
    });

    // The marks of a seam, seen from the sheets on either side of it, are the same places of the drawing.
    [Fact]
    public void Register_marks_of_neighbours_fall_on_each_other() => s_cases.Where(c => TileGrid.For(c.Box, c.Paper).Count is > 1 and < 40).Sample(
        c =>
        {
            TileGrid grid = TileGrid.For(c.Box, c.Paper);
            var marks = new List<Point2>();
            for (int column = 0; column < grid.Columns; column++)
            {
                for (int row = 0; row < grid.Rows; row++)
                {
                    Point2 origin = grid.OriginOn(column, row);
                    marks.AddRange(Circles(SheetFurniture.Of(grid, column, row, "t", "j", "Full size")).Select(m => m - origin));
                }
            }

            int seams = ((grid.Columns - 1) * grid.Rows) + ((grid.Rows - 1) * grid.Columns);
            Assert.Equal(4 * seams, marks.Count);
            Assert.All(marks, m => Assert.Equal(2, marks.Count(other => other.DistanceTo(m) < 1e-6)));
        },
        iter: 40);

    [Fact]
    public void Sheets_are_named_row_by_row()
    {
        Assert.Equal(["A1", "A12", "B2", "Z1", "AA1", "AB3"], ((int C, int R)[])[(0, 0), (11, 0), (1, 1), (0, 25), (0, 26), (2, 27)] is var at ? at.Select(p => TileGrid.NameOf(p.C, p.R)) : []);
    }

    [Fact]
    public void Every_sheet_asks_for_its_bars_to_be_measured()
    {
        ImmutableArray<PrintPage> pages = TiledPages.Of(ScoopPlate.Sheet(1), "A job", PrintPaper.A4);
        Assert.All(pages, page =>
        {
            Drawing furniture = page.Views[1].Drawing;
            Assert.Equal([100, 101.6], furniture.Elements.OfType<ScaleBar>().Select(b => b.Length));
            Assert.Equal(2, furniture.Elements.OfType<Text>().Count(t => t.Value.StartsWith("measure this bar before use", StringComparison.Ordinal)));
        });
    }

    [Theory]
    [InlineData(1, "Full size")]
    [InlineData(0.4, "Scale 1:2.5")]
    [InlineData(2, "Scale 2:1")]
    public void Scales_are_named_as_a_draughtsman_does(double scale, string text) => Assert.Equal(text, TiledPages.ScaleText(scale));

    private static Box2 Seen(TileGrid grid, int column, int row)
    {
        Point2 origin = grid.OriginOn(column, row);
        Box2 w = grid.Window;
        return new Box2(w.MinX - origin.X, w.MinY - origin.Y, w.MaxX - origin.X, w.MaxY - origin.Y);
    }

    private static IEnumerable<Point2> Circles(Drawing drawing) => drawing.Elements.OfType<Stroke>()
        .Where(s => s.Path is { IsClosed: true, SegmentCount: 2 } path && !path[0].IsLine).Select(s => s.Path.Box.Center);
}
