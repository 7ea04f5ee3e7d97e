using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Tests.Drawings;

/// <summary>
/// The sample drawing: a pattern plate with a quarter-ellipse scoop, run 200, depth 120, made to show every element once.
/// </summary>
internal static class ScoopPlate
{
    internal const double Run = 200;
    internal const double Depth = 120;

    /// <summary>The plate in its own frame: end at x = 0, profile on the lower edge, the scoop's ellipse centred on the corner that it takes away.</summary>
    internal static Outline Edge { get; } = new(
        [
            new EllipseCurve(new Point2(0, -40), new Point2(Run, 0), new Point2(0, Depth), Math.PI / 2, -Math.PI / 2),
            new LineCurve(new Point2(Run, -40), new Point2(280, -40)),
            new LineCurve(new Point2(280, -40), new Point2(280, 144)),
            new LineCurve(new Point2(280, 144), new Point2(0, 144)),
            new LineCurve(new Point2(0, 144), new Point2(0, 80)),
        ],
        true);

    internal static Drawing Sheet()
    {
        var blank = Contour.Polygon(new Point2(-20, -60), new Point2(310, -60), new Point2(310, 165), new Point2(-20, 165));
        const double R = 6.35 / 2;
        var path = new Contour(
            [
                new Vertex(-40, 144 + R, 0), new Vertex(280, 144 + R, -Math.Tan(Math.PI / 8)), new Vertex(280 + R, 144, 0),
                new Vertex(280 + R, -40, -Math.Tan(Math.PI / 8)), new Vertex(280, -40 - R, 0), new Vertex(200, -40 - R, 0),
            ],
            false);
        return new Drawing(
            "Pattern plate, quarter-ellipse scoop",
            "Seen from above, profile edge towards you. The scoop is 200 along the board and 120 up it.",
            [
                new Fill(Tone.Waste, Outlines.Of(blank)),
                new Fill(Tone.Wood, Edge),
                new GrainLines([Edge], 0),
                new Stroke(LineRole.Board, blank),
                new HatchLines(LineRole.Dimension, [Outlines.Of(Contour.Polygon(new Point2(285, 150), new Point2(325, 150), new Point2(325, 180), new Point2(285, 180)))], Math.PI / 4),
                new Stroke(LineRole.Clamp, Contour.Polygon(new Point2(285, 150), new Point2(325, 150), new Point2(325, 180), new Point2(285, 180))),
                new ExactStroke(LineRole.Construction, new Outline([new EllipseCurve(new Point2(0, -40), new Point2(Run, 0), new Point2(0, Depth), 0, 2 * Math.PI)], true)),
                new Stroke(LineRole.HiddenEdge, Contour.Polyline(new Point2(0, 120), new Point2(280, 120))),
                new Stroke(LineRole.Axis, Contour.Polyline(new Point2(200, -50), new Point2(200, 154))),
                new Stroke(LineRole.CutPath, path),
                new Stroke(LineRole.RampPath, Contour.Polyline(new Point2(-40, 144 + R), new Point2(-70, 144 + R))),
                new Stroke(LineRole.RapidPath, Contour.Polyline(new Point2(-20, -60), new Point2(-70, 144 + R))),
                new Stroke(LineRole.Tab, Contour.Polyline(new Point2(120, 144 + R), new Point2(132, 144 + R))),
                new DirectionArrow(LineRole.CutPath, new Point2(60, 144 + R), new Point2(1, 0)),
                new DirectionArrow(LineRole.CutPath, new Point2(280 + R, 60), new Point2(0, -1)),
                new ExactStroke(LineRole.FinishedEdge, Edge),
                new GrainArrow(new Point2(200, 100), 0, 22, "GRAIN"),
                new CenterMark(new Point2(0, -40)),
                new ZeroPoint(new Point2(-20, -60)),
                new LinearDimension(new Point2(0, 80), new Point2(200, -40), MeasuredAlong.Horizontal, "7 7/8", -DrawingStyle.FirstRow, -60),
                new LinearDimension(new Point2(0, 80), new Point2(280, -40), MeasuredAlong.Horizontal, "280", -DrawingStyle.FirstRow - DrawingStyle.RowStep, -60),
                new LinearDimension(new Point2(0, 80), new Point2(0, -40), MeasuredAlong.Vertical, "120", DrawingStyle.FirstRow + 6, -20),
                new LinearDimension(new Point2(280, 144), new Point2(280, -40), MeasuredAlong.Vertical, "7 1/4\" = 184.15", -DrawingStyle.FirstRow, 310),
                new LinearDimension(new Point2(280, 144), new Point2(280, 120), MeasuredAlong.Vertical, "24", -5, 280),
                new LinearDimension(new Point2(200, 30), new Point2(206, 30), MeasuredAlong.Horizontal, "1/4", 6),
                new LinearDimension(new Point2(220, -20), new Point2(260, 10), MeasuredAlong.Aligned, "50", 3),
                new LinearDimension(new Point2(120, 165), new Point2(132, 165), MeasuredAlong.Horizontal, "12", 7, null, DimensionEnds.Ticks),
                new RadiusDimension(new Point2(0, 0), 80, 1.0, "R 80", -9),
                new AngleDimension(new Point2(0, -40), 0, Math.Atan2(120, 200), "31°", 34),
                new Leader(new Point2(240, 20), new Point2(-9, 8), "hardboard 1/4 in\nface up", false),
                new Leader(EdgeAt(0.35), new Point2(-16, -11), "working curve"),
                new ScaleBar(new Point2(-70, -112), 100, 5, "100 mm"),
                new Text("PATTERN PLATE · RAFTER TAIL 2×8", new Point2(-70, 205), TextAlign.Start, DrawingStyle.TitleHeight),
            ]);
    }

    private static Point2 EdgeAt(double t) => Edge.Curves[0].PointAt(t);
}
