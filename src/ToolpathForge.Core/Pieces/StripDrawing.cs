using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;

namespace ToolpathForge.Pieces;

/// <summary>A strip that is screwed under a pattern, seen from above with its guiding edge at the top, dimensioned: a piece to saw and drill.</summary>
public static class StripDrawing
{
    /// <summary>Draws one.</summary>
    /// <param name="make">Id of the pattern that it belongs to.</param>
    /// <param name="strip">The strip.</param>
    /// <param name="unit">The unit of its dimensions.</param>
    public static Drawing Of(string make, PlateStrip strip, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(strip);
        string Say(double mm) => ShopText.Size(mm, unit);
        var outline = Contour.Rectangle(new Box2(0, 0, strip.Length, strip.Width));
        var elements = ImmutableArray.CreateBuilder<DrawingElement>();
        elements.Add(new Fill(Tone.Wood, Outlines.Of(outline)));
        elements.Add(new Stroke(LineRole.FinishedEdge, outline));
        double before = 0;
        foreach (double at in strip.Screws)
        {
            var middle = new Point2(at, strip.Width / 2);
            elements.Add(new ExactStroke(LineRole.FinishedEdge, OpeningOutline.Circle(middle, strip.Pilot)));
            elements.Add(new CenterMark(middle));
            elements.Add(new LinearDimension(new Point2(before, 0), new Point2(at, 0), MeasuredAlong.Horizontal, Say(at - before), -DrawingStyle.FirstRow, 0));
            before = at;
        }

        elements.Add(new LinearDimension(Point2.Origin, new Point2(strip.Length, 0), MeasuredAlong.Horizontal, Say(strip.Length), -DrawingStyle.FirstRow - DrawingStyle.RowStep, 0));
        elements.Add(new LinearDimension(Point2.Origin, new Point2(0, strip.Width), MeasuredAlong.Vertical, Say(strip.Width), DrawingStyle.FirstRow, 0));
        elements.Add(new Text(
            $"{make}: {strip.Name}, {Say(strip.Thickness)} thick, {strip.Screws.Length} pilot holes of {Say(strip.Pilot)}; this edge guides, straight and square",
            new Point2(0, strip.Width + 3),
            TextAlign.Start,
            2.6));
        return new Drawing(
            $"{make}: {strip.Name}",
            $"A strip {Say(strip.Length)} by {Say(strip.Width)}, {Say(strip.Thickness)} thick, its guiding edge at the top.",
            elements.ToImmutable());
    }
}
