using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Lettering;

namespace ToolpathForge.RunSheets;

/// <summary>What holds boards on the bed, drawn: stops, screws, clamps, the line to saw along.</summary>
internal static class BoardFixtures
{
    // Fine enough for a picture.
    private const double Fit = 0.05;

    internal static void Add(ImmutableArray<DrawingElement>.Builder elements, Clamping clamping)
    {
        var make = (BoardEndMake)clamping.Make;
        foreach (Placed placed in clamping.Pieces)
        {
            AddStop(elements, placed);
            if (make.Batch.Waste == Waste.Sawn)
            {
                AddSawLine(elements, placed, make.Batch.SawMargin);
            }
        }

        for (int i = 0; i < clamping.Screws.Length; i++)
        {
            Point2 at = clamping.Screws[i];
            elements.Add(new Stroke(LineRole.Clamp, Contour.Circle(at, WasteScrews.Head)));
            elements.Add(new Stroke(LineRole.Clamp, Contour.Polyline(at - new Point2(WasteScrews.Head, 0), at + new Point2(WasteScrews.Head, 0))));
            elements.Add(new Stroke(LineRole.Clamp, Contour.Polyline(at - new Point2(0, WasteScrews.Head), at + new Point2(0, WasteScrews.Head))));
        }
    }

    internal static void AddClamps(ImmutableArray<DrawingElement>.Builder elements, Clamping clamping)
    {
        foreach ((int i, ClampBox clamp) in clamping.Clamps.Index())
        {
            var box = Contour.Rectangle(clamp.Box);
            elements.Add(new Fill(Tone.Clamp, Outlines.Of(box)));
            elements.Add(new Stroke(LineRole.Clamp, box));
            elements.Add(new Text(
                string.Create(CultureInfo.InvariantCulture, $"clamp {i + 1}"), clamp.Box.Center, TextAlign.Middle, 2.2));
        }
    }

    // Drawn where it stands while the board is laid; it swings away before the start.
    private static void AddStop(ImmutableArray<DrawingElement>.Builder elements, Placed placed)
    {
        const double Thick = 6;
        const double Long = 30;
        Box2 block = placed.Block;
        double top = block.MinY + 8 + Long;
        elements.Add(new Stroke(LineRole.Axis, Contour.Rectangle(new Box2(block.MaxX, top - Long, block.MaxX + Thick, top))));
        if (placed.Number == 1)
        {
            elements.Add(new Text("flip stop: swings away", new Point2(block.MaxX + Thick + 4, top - (Long / 2)), TextAlign.Start, 2.2));
        }
    }

    private static void AddSawLine(ImmutableArray<DrawingElement>.Builder elements, Placed placed, double margin)
    {
        PlacedContour fit = PlacedContour.Fit(placed, Fit);
        foreach (OffsetLoop loop in Offsetter.OneSide(EndCut.Profile(fit), -margin).Loops)
        {
            elements.Add(new Stroke(LineRole.HiddenEdge, loop.Contour));
            elements.Add(new Text("saw here", loop.Contour[loop.Contour.SegmentCount / 2].PointAt(0.5) + new Point2(3, -3), TextAlign.Start, 2.2));
        }
    }
}
