using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;

namespace ToolpathForge.RunSheets;

/// <summary>A blank and what comes out of it: the pieces where they lie, by name, and the offcuts. Nothing of how it is cut.</summary>
public static class NestDrawing
{
    /// <summary>Draws the blank of a panel at full size, dimensioned.</summary>
    /// <param name="cut">What lies there.</param>
    /// <param name="unit">The unit of its dimensions.</param>
    public static Drawing Of(CutPlan cut, LengthUnit unit)
    {
        Drawing plain = Of(cut, unit, 1);
        Box2 stock = cut.Clamping.Stock.Box;
        return plain with
        {
            Elements =
            [
                .. plain.Elements,
                new LinearDimension(
                    new Point2(stock.MinX, stock.MinY), new Point2(stock.MaxX, stock.MinY), MeasuredAlong.Horizontal, ShopText.Size(stock.Width, unit), -10, stock.MinY),
                new LinearDimension(
                    new Point2(stock.MinX, stock.MinY), new Point2(stock.MinX, stock.MaxY), MeasuredAlong.Vertical, ShopText.Size(stock.Height, unit), 10, stock.MinX),
            ],
        };
    }

    /// <summary>Draws it small, its size in words.</summary>
    /// <param name="cut">What lies there.</param>
    /// <param name="unit">The unit of its sizes.</param>
    /// <param name="scale">mm of paper for 1 mm of the blank.</param>
    public static Drawing Of(CutPlan cut, LengthUnit unit, double scale)
    {
        ArgumentNullException.ThrowIfNull(cut);
        Clamping clamping = cut.Clamping;
        Box2 stock = clamping.Stock.Box;
        var blank = Contour.Rectangle(stock);
        var elements = ImmutableArray.CreateBuilder<DrawingElement>();
        elements.Add(new Fill(Tone.Waste, Outlines.Of(blank)));
        elements.AddRange(OffcutWords.Of(cut).Select(o => new Fill(Tone.Paper, Outlines.Of(Contour.Rectangle(o)))));
        elements.AddRange(HeldWords.Fills(cut, Tone.Panel, OffcutWords.Of(cut)));
        elements.Add(new Stroke(LineRole.Board, blank));
        foreach (Placed placed in clamping.Pieces)
        {
            LaidPiece.Add(elements, placed, named: 2.4);
        }

        elements.AddRange(OffcutWords.Drawn(cut, unit, scale));
        elements.Add(new ZeroPoint(Point2.Origin));
        return new Drawing(
            $"What comes out of {clamping.Name}",
            "The blank seen from above, X to the right and Y away from you, with the pieces where they lie and the offcuts that stay whole.",
            elements.ToImmutable());
    }
}
