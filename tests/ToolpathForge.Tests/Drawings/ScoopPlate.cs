using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Tests.Drawings;

/// <summary>
/// The sample drawing: a pattern plate with a quarter-ellipse scoop, run 200, depth 120, on its blank, with the path of a 6.35 bit. It shows every element once.
/// </summary>
internal static class ScoopPlate
{
    private const double Run = 200;
    private const double Depth = 120;
    private const double BitRadius = 6.35 / 2;

    /// <summary>The plate, its end at x = 0, the profile on its lower edge; the ellipse's centre lies on the corner that the scoop takes away.</summary>
    internal static Outline Edge { get; } = new(
        [
            new EllipseCurve(Point2.Origin, new Point2(Run, 0), new Point2(0, Depth), Math.PI / 2, -Math.PI / 2),
            new LineCurve(new Point2(Run, 0), new Point2(300, 0)),
            new LineCurve(new Point2(300, 0), new Point2(300, 184.15)),
            new LineCurve(new Point2(300, 184.15), new Point2(0, 184.15)),
            new LineCurve(new Point2(0, 184.15), new Point2(0, Depth)),
        ],
        true);

    internal static Drawing Sheet(double scale)
    {
        Contour blank = Contour.Polygon(new Point2(-25, -25), new Point2(330, -25), new Point2(330, 210), new Point2(-25, 210));
        Contour clamp = Contour.Polygon(new Point2(306, 60), new Point2(352, 60), new Point2(352, 100), new Point2(306, 100));
        Contour path = BitPath();
        Point2 onCurve = Edge.Curves[0].PointAt(0.42);
        double ray = Math.Atan2(Depth, Run);
        ImmutableArray<LinearDimension> dimensions = DimensionRows.Arrange(
            blank.Box.Union(clamp.Box),
            scale,
            new LinearDimension(new Point2(0, 0), new Point2(Run, 0), MeasuredAlong.Horizontal, "7 7/8", -1),
            new LinearDimension(new Point2(Run, 0), new Point2(300, 0), MeasuredAlong.Horizontal, "3 15/16", -1),
            new LinearDimension(new Point2(0, 0), new Point2(300, 0), MeasuredAlong.Horizontal, "11 13/16", -1),
            new LinearDimension(new Point2(0, 0), new Point2(0, Depth), MeasuredAlong.Vertical, "4 23/32", 1),
            new LinearDimension(new Point2(0, Depth), new Point2(0, 184.15), MeasuredAlong.Vertical, "2 17/32", 1),
            new LinearDimension(new Point2(300, 0), new Point2(300, 184.15), MeasuredAlong.Vertical, "7 1/4", -1),
            new LinearDimension(new Point2(140, 188), new Point2(152, 188), MeasuredAlong.Horizontal, "12", 1) with { Ends = DimensionEnds.Ticks },
            new LinearDimension(new Point2(300, 184.15), new Point2(300 + BitRadius, 184.15), MeasuredAlong.Horizontal, "1/8", 1));
        return new Drawing(
            "Pattern plate, quarter-ellipse scoop",
            "Seen from above, profile edge towards you. The scoop is 7 7/8 along the board and 4 23/32 up it.",
            [
                new Fill(Tone.Waste, Outlines.Of(blank)),
                new Fill(Tone.Wood, Edge),
                new GrainLines([Edge], 0),
                new ExactStroke(LineRole.Construction, new Outline([new EllipseCurve(Point2.Origin, new Point2(Run, 0), new Point2(0, Depth), -0.1, 0.1)], false)),
                new ExactStroke(LineRole.Construction, new Outline([new EllipseCurve(Point2.Origin, new Point2(Run, 0), new Point2(0, Depth), Math.PI / 2, 0.12)], false)),
                new Stroke(LineRole.Board, blank),
                new Fill(Tone.Clamp, Outlines.Of(clamp)),
                new HatchLines(LineRole.Dimension, [Outlines.Of(clamp)], Math.PI / 4),
                new Stroke(LineRole.Clamp, clamp),
                new Stroke(LineRole.HiddenEdge, Contour.Polyline(new Point2(0, 146), new Point2(300, 146))),
                new Stroke(LineRole.Axis, Contour.Polyline(new Point2(Run, -16), new Point2(Run, 200))),
                new Stroke(LineRole.RapidPath, Contour.Polyline(new Point2(-25, -25), new Point2(-BitRadius, 205))),
                new Stroke(LineRole.RampPath, Contour.Polyline(new Point2(-BitRadius, 205), path.Start)),
                new Stroke(LineRole.CutPath, path),
                new Stroke(LineRole.Tab, Contour.Polyline(new Point2(140, 184.15 + BitRadius), new Point2(152, 184.15 + BitRadius))),
                .. new[] { 60.0, 232 }.Select(x => new DirectionArrow(LineRole.CutPath, new Point2(x, 184.15 + BitRadius), new Point2(-1, 0))),
                new DirectionArrow(LineRole.CutPath, new Point2(300 + BitRadius, 36), new Point2(0, 1)),
                new DirectionArrow(LineRole.CutPath, path[34].Start, path[34].StartDirection),
                new ExactStroke(LineRole.FinishedEdge, Edge),
                new GrainArrow(new Point2(250, 120), 0, 24, "GRAIN"),
                new CenterMark(Point2.Origin),
                new ZeroPoint(new Point2(-25, -25)),
                .. dimensions,
                new LinearDimension(new Point2(0, 0), onCurve, MeasuredAlong.Aligned, "149.6", 0),
                new RadiusDimension(new Point2(Run - 72, 0), 72, 0.12, "R 72 at the tip", -9),
                new AngleDimension(Point2.Origin, 0, ray, "31°", 26),
                new Leader(new Point2(268, 60), new Point2(-10, 5), "hardboard 1/4 in\nface up", false),
                new Leader(Edge.Curves[0].PointAt(0.2), new Point2(-5, -8), "working curve"),
                new Arrow(LineRole.CutPath, new Point2(262, 164), new Point2(222, 164)),
                new Text("bit's way", new Point2(266, 161.2)),
                new ScaleBar(new Point2(-25, -95), 100, 5, "100 mm"),
                new Text("RAFTER TAIL 2×8 · PATTERN, RIGHT HAND", new Point2(-60, 268), TextAlign.Start, DrawingStyle.TitleHeight),
                new Text("Boathouse porch · seen from above · inches", new Point2(-60, 254)),
            ]);
    }

    /// <summary>Round the plate at the bit's radius, part on the left. The parallel of an ellipse is no ellipse: points will do for a picture.</summary>
    private static Contour BitPath()
    {
        double quarter = Math.Tan(Math.PI / 8);
        var vertices = new List<Vertex> { new(-BitRadius, 184.15, 0), new(-BitRadius, Depth, quarter) };
        const int Steps = 48;
        for (int i = 0; i <= Steps; i++)
        {
            Curve curve = Edge.Curves[0];
            double t = (double)i / Steps;
            vertices.Add(new Vertex(curve.PointAt(t) + (curve.DirectionAt(t).Right * BitRadius)));
        }

        vertices.AddRange(
            [
                new Vertex(Run - BitRadius, 0, quarter), new Vertex(Run, -BitRadius, 0), new Vertex(300, -BitRadius, quarter), new Vertex(300 + BitRadius, 0, 0),
                new Vertex(300 + BitRadius, 184.15, quarter), new Vertex(300, 184.15 + BitRadius, 0), new Vertex(0, 184.15 + BitRadius, quarter),
                new Vertex(-BitRadius, 184.15, 0),
            ]);
        vertices.RemoveAt(Steps + 2);
        return new Contour(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(vertices), false);
    }
}
