using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Shapes;

namespace ToolpathForge.RunSheets;

/// <summary>The bed seen from above as one program finds it: stock, pieces, work zero, the bit's way and the tabs, to scale.</summary>
public static class BedDrawing
{
    /// <summary>Draws one clamping.</summary>
    /// <param name="cut">What lies there and what is done to it.</param>
    /// <param name="unit">The unit of its dimensions.</param>
    public static Drawing Of(CutPlan cut, LengthUnit unit)
    {
        string Say(double mm) => ShopText.Size(mm, unit);
        Clamping clamping = cut.Clamping;
        Box2 stock = clamping.Stock.Box;
        bool plate = clamping.Make.Sheet is not null;
        var elements = ImmutableArray.CreateBuilder<DrawingElement>();
        ImmutableArray<Contour> blanks = [.. clamping.Pieces.Select(p => p.Block).Distinct().Select(Contour.Rectangle)];
        elements.AddRange(blanks.Select(b => new Fill(Tone.Waste, Outlines.Of(b))));
        elements.AddRange(HeldWords.Fills(cut, plate ? Tone.Panel : Tone.Wood, []));

        if (clamping.Make.Material.HasGrain)
        {
            elements.AddRange(blanks.Select(b => new GrainLines([Outlines.Of(b)], 0)));
        }

        elements.AddRange(blanks.Select(b => new Stroke(LineRole.Board, b)));
        if (!plate)
        {
            AddFence(elements, stock);
            BoardFixtures.Add(elements, clamping);
        }

        BoardFixtures.AddClamps(elements, clamping);

        foreach (BitWork work in cut.Works)
        {
            AddPath(elements, work.Path);
        }

        AddStands(elements, cut);
        foreach (Placed placed in clamping.Pieces)
        {
            LaidPiece.Add(elements, placed);
        }

        foreach ((int number, Tab tab) in cut.Tabs)
        {
            Point2 half = tab.Along * (tab.Length / 2);
            Point2 outwards = tab.Along.Right * clamping.Make.Bit.Radius;
            elements.Add(new Stroke(LineRole.Tab, Contour.Polyline(tab.Center - half + outwards, tab.Center + half + outwards)));
        }

        elements.AddRange(OffcutWords.Drawn(cut));
        elements.AddRange(GrainSection.Labels(cut));
        elements.Add(new ZeroPoint(Point2.Origin));
        elements.Add(new LinearDimension(
            new Point2(stock.MinX, stock.MinY), new Point2(stock.MaxX, stock.MinY), MeasuredAlong.Horizontal, Say(stock.Width), -14, stock.MinY));
        elements.Add(new LinearDimension(
            new Point2(stock.MinX, stock.MinY), new Point2(stock.MinX, stock.MaxY), MeasuredAlong.Vertical, Say(stock.Height), 14, stock.MinX));
        return new Drawing(
            $"{clamping.Name} on the bed",
            "The bed seen from above, X to the right and Y away from you, with the stock, the pieces, the work zero, the path of the bit and the tabs.",
            elements.ToImmutable());
    }

    // Least radius of a ring, as a share of the stock: it is found at any scale.
    private const double Ring = 0.016;

    private static void AddFence(ImmutableArray<DrawingElement>.Builder elements, Box2 stock)
    {
        const double Deep = 20;
        Contour fence = Contour.Rectangle(new Box2(stock.MinX, 0, stock.MaxX + 30, Deep));
        elements.Add(new Fill(Tone.Clamp, Outlines.Of(fence)));
        elements.Add(new Stroke(LineRole.Clamp, fence));
        elements.Add(new Text("fence: sacrificial, no metal near the end", new Point2(stock.MinX + 8, Deep * 0.35), TextAlign.Start, 2.4));
        elements.Add(new Stroke(LineRole.Axis, Contour.Polyline(new Point2(0, stock.MinY - 10), new Point2(0, Deep + 6))));
        elements.Add(new Text("finished tip", new Point2(1.5, stock.MinY - 8), TextAlign.Start, 2.2));
    }

    // Where the first move goes, and where the bit stands at the end and between boards: a ring as wide as the bit at either, so that it shows what lies under it.
    private static void AddStands(ImmutableArray<DrawingElement>.Builder elements, CutPlan cut)
    {
        Point2 first = RunSteps.First(cut.Works[0].Path);
        Point2 last = RunSteps.Last(cut);
        double ring = Math.Max(cut.Path.Bit.Radius, Math.Max(cut.Clamping.Stock.Box.Width, cut.Clamping.Stock.Box.Height) * Ring);
        double arm = ring / Math.Sqrt(2);
        elements.Add(new Stroke(LineRole.Lettering, Contour.Circle(first, ring)));
        elements.Add(new Stroke(LineRole.Lettering, Contour.Circle(first, ring / 6)));
        elements.Add(new Stroke(LineRole.Lettering, Contour.Circle(last, ring)));
        elements.Add(new Stroke(LineRole.Lettering, Contour.Polyline(last + new Point2(-arm, -arm), last + new Point2(arm, arm))));
        elements.Add(new Stroke(LineRole.Lettering, Contour.Polyline(last + new Point2(-arm, arm), last + new Point2(arm, -arm))));
    }

    // The way of the bit: rapids between, the first ramp, and the last round of everything else; steps above it lie on the same lines.
    private static void AddPath(ImmutableArray<DrawingElement>.Builder elements, Toolpath path)
    {
        double lowest = path.Moves.Min(m => m.End.Z);
        Point2? at = null;
        int run = -1;
        bool ramped = false;
        foreach (Move move in path.Moves)
        {
            if (move.Purpose is Purpose.Retract or Purpose.Descend)
            {
                continue;
            }

            if (move.Run != run)
            {
                ramped = false;
                run = move.Run;
            }

            if (at is { } from && from != move.End.Flat)
            {
                var line = Contour.FromSegments([new Segment(from, move.End.Flat, move.Bulge)], false);
                bool last = move.End.Z <= lowest + 1e-6 || move.Purpose == Purpose.OverTab;
                if (move.Purpose == Purpose.Travel)
                {
                    elements.Add(new Stroke(LineRole.RapidPath, line));
                }
                else if (move.Purpose == Purpose.Ramp && !ramped)
                {
                    elements.Add(new Stroke(LineRole.RampPath, line));
                }
                else if (move.Purpose == Purpose.Engrave)
                {
                    elements.Add(new Stroke(LineRole.Engraving, line));
                }
                else if (last && move.Purpose != Purpose.Rough && move.Purpose != Purpose.Ramp)
                {
                    elements.Add(new Stroke(LineRole.CutPath, line));
                    if (move.Purpose == Purpose.Finish && line.Length > 22)
                    {
                        elements.Add(new DirectionArrow(LineRole.CutPath, line[0].PointAt(0.5), line[0].DirectionAt(0.5)));
                    }
                }

                ramped |= move.Purpose == Purpose.Rough;
            }

            at = move.End.Flat;
        }
    }
}
