using ToolpathForge.Cutting;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.RunSheets;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.RunSheets;

/// <summary>The picture of the ways a board may lie, held against what the comparison of lies says of each.</summary>
public class BoardTurnDrawingTests
{
    private static readonly Text[] s_texts = [.. BoardTurnDrawing.Of().Elements.OfType<Text>()];

    private static Text Of(string value, int panel) =>
        s_texts.Where(t => value == "face" ? t.Value.EndsWith("face up", StringComparison.Ordinal) : t.Value == value).ElementAt(panel);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Each_lie_is_drawn_as_it_is_read(int panel)
    {
        Contour straight = Contour.Polyline(new Point2(0, 0), new Point2(0, 50));
        LieReading lie = LieComparison.Of(straight, 0, 0)[panel];
        bool bAtBed = Of("B", panel).At.X > Of("A", panel).At.X;
        Assert.Equal(lie.OtherEnd, bAtBed);
        Assert.Equal(lie.ReferenceAtFence, Of("reference edge", panel).At.Y > 0);
        Assert.Equal(lie.OtherFaceUp ? "other face up" : "face up", Of("face", panel).Value);
    }

    [Fact]
    public void It_looks_as_it_did() => Golden.Same("board-turns.svg", SvgWriter.Write(BoardTurnDrawing.Of(), 1));
}
