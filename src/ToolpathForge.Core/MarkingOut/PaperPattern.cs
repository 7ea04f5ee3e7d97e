using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Shapes;

namespace ToolpathForge.MarkingOut;

/// <summary>
/// The end of a board to mark out or to glue on as a paper pattern: finished edge, saw line, edges of the board, and the ordinates with their figures below the
/// edge that they are measured from. Seen as a right-hand piece: end at your right, lower edge towards you;
/// for a plate of left-hand ends alone with the end at your left.
/// </summary>
public static class PaperPattern
{
    private const double Figures = 2.7;

    /// <summary>Room for one figure beside the next, mm of paper.</summary>
    private const double FigureRoom = 4.9;

    /// <summary>Baselines' ends of the two rows of figures below the edge, mm of paper.</summary>
    private const double HeightRow = 3;
    private const double AlongRow = 22;

    /// <summary>Share of a board's width that is shown before its curve.</summary>
    private const double Before = 0.35;

    /// <summary>Draws the layout at a scale.</summary>
    /// <param name="piece">What it is for.</param>
    /// <param name="layout">How its profile is marked.</param>
    /// <param name="unit">The unit of the figures.</param>
    /// <param name="scale">The scale it is laid out for, mm of paper for a mm of the board.</param>
    public static Drawing Of(ProfilePiece piece, HandLayout layout, LengthUnit unit, double scale = 1)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(layout);
        Profile p = layout.Profile;
        var elements = ImmutableArray.CreateBuilder<DrawingElement>();
        double left = -Math.Max(p.Width * Before, 30 / scale);
        Point2 nose = layout.EndCut.From;
        Point2 top = layout.EndCut.To;
        double right = Math.Max(layout.Curves.Max(c => CurveExtent.Along(c, new Point2(1, 0)).High), top.X);
        var seen = new Outline([.. layout.Curves, layout.EndCut], false);
        elements.Add(new Fill(Tone.Wood, new Outline(
            [.. seen.Curves, new LineCurve(top, new Point2(left, p.Width)), new LineCurve(new Point2(left, p.Width), new Point2(left, 0)), new LineCurve(new Point2(left, 0), default)], true)));

        // The board as it comes, where the profile takes it away.
        double raw = right + (layout.SawAllowance * 2);
        elements.Add(new Stroke(LineRole.Board, Contour.Polyline(default, new Point2(raw, 0), new Point2(raw, p.Width), top)));
        Line(LineRole.Edge, new Point2(left, 0), default);
        Line(LineRole.Edge, new Point2(left, p.Width), top);
        AddOrdinates(elements, layout, unit, scale, left);
        foreach (Contour part in layout.SawLine)
        {
            elements.Add(new Stroke(LineRole.SawLine, part));
        }

        elements.Add(new ExactStroke(LineRole.FinishedEdge, seen));
        AddWords(elements, layout, unit, scale, left);

        // Depth and width stand to the right of the board as it comes, the run below the figures.
        double below = -(AlongRow + 17) / scale;
        string Say(double mm) => ShopText.Size(mm, unit);
        var corner = new Point2(p.Run, p.Depth);
        elements.Add(new LinearDimension(new Point2(0, below), new Point2(p.Run, below), MeasuredAlong.Horizontal, Say(p.Run), -7, below));
        elements.Add(new LinearDimension(corner, default, MeasuredAlong.Vertical, Say(p.Depth), -DrawingStyle.FirstRow, raw));
        elements.Add(new LinearDimension(top, default, MeasuredAlong.Vertical, Say(p.Width), -DrawingStyle.FirstRow - DrawingStyle.RowStep, raw));
        var drawing = new Drawing(
            $"{piece.Make.Id}, end of a {piece.Make.Board.Id} to mark out",
            $"Seen with the end at your {(piece.IsLeftHand ? "left" : "right")} and the lower edge towards you. Ordinates every {Say(layout.Step)}; saw {Say(layout.SawAllowance)} outside the finished edge.",
            elements.ToImmutable());
        return piece.IsLeftHand ? LeftView.Of(drawing, scale) : drawing;

        void Line(LineRole role, Point2 from, Point2 to) => elements.Add(new Stroke(role, Contour.Polyline(from, to)));
    }

    private static void AddOrdinates(ImmutableArray<DrawingElement>.Builder elements, HandLayout layout, LengthUnit unit, double scale, double left)
    {
        // Every ordinate is drawn; figures that would run into each other give way, whole steps last. All stand in the sheet's table.
        var written = new List<double>();
        foreach (Ordinate ordinate in layout.Ordinates.OrderBy(o => o.IsCorner && o.Along != 0 ? 1 : 0).ThenBy(o => o.Along))
        {
            double x = ordinate.Along;
            elements.Add(new Stroke(LineRole.Construction, Contour.Polyline(new Point2(x, -(HeightRow - 1) / scale), new Point2(x, Math.Max(ordinate.Heights[^1], 0.01)))));
            if (written.Exists(w => Math.Abs(w - x) * scale < FigureRoom))
            {
                continue;
            }

            written.Add(x);
            double baseline = x + (Figures * 0.45 / scale);
            string heights = string.Join(", ", ordinate.Heights.Select(h => RuleText.Bare(h, unit)));
            elements.Add(new Text(heights, new Point2(baseline, -HeightRow / scale), TextAlign.End, Figures, Math.PI / 2));
            elements.Add(new Text(RuleText.Bare(x, unit), new Point2(baseline, -AlongRow / scale), TextAlign.End, Figures, Math.PI / 2));
        }

        string name = unit == LengthUnit.Inch ? "in" : "mm";
        elements.Add(new Text($"height, {name}", new Point2(left, -(HeightRow + Figures + 1) / scale), TextAlign.Start, Figures));
        elements.Add(new Text($"along, {name}", new Point2(left, -(AlongRow + Figures + 1) / scale), TextAlign.Start, Figures));
    }

    private static void AddWords(ImmutableArray<DrawingElement>.Builder elements, HandLayout layout, LengthUnit unit, double scale, double left)
    {
        Profile p = layout.Profile;
        elements.Add(new Text("lower edge", new Point2(left + (2 / scale), 2 / scale), TextAlign.Start, Figures));
        elements.Add(new Text("reference edge", new Point2(left + (2 / scale), p.Width + (1.6 / scale)), TextAlign.Start, Figures));
        Curve longest = layout.Curves.MaxBy(c => c.Length)!;
        elements.Add(new Leader(longest.PointAt(0.5), new Point2(-9, 8), "finished edge"));
        string lean = p.EndAngle == 0
            ? "end cut square"
            : $"end cut {Math.Abs(p.EndAngle).ToString("0.##", CultureInfo.InvariantCulture)}° from square,\n{(p.EndAngle > 0 ? "top" : "nose")} long";
        elements.Add(new Leader(layout.EndCut.PointAt(0.4), new Point2(-8, 2), lean));
        elements.Add(new Leader(layout.EndCut.To + new Point2(layout.SawAllowance, 0), new Point2(-7, 11), $"saw {ShopText.Size(layout.SawAllowance, unit)} outside"));
    }
}
