using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.RunSheets;

/// <summary>
/// The four ways a board may lie on the bed, side by side, so that nobody has to picture them from their names: what comes to the bed, which edge meets the fence,
/// which face is up, and about which axis the board was turned. Not to scale; mm of paper.
/// </summary>
internal static class BoardTurnDrawing
{
    private const double HalfLength = 19;
    private const double HalfWidth = 8;
    private const double Run = 10;
    private const double Rise = 6;
    private const double Apart = 48;
    private const double Height = 2;

    // The curve at its corner, from the lower edge to the end: a hollow, drawn as a short chain of chords.
    private const int Chords = 8;

    /// <summary>Draws them in the order of <see cref="Lie"/>.</summary>
    internal static Drawing Of()
    {
        var elements = ImmutableArray.CreateBuilder<DrawingElement>();
        Lie[] lies = [Lie.AsLaid, Lie.TurnedFlat, Lie.RolledOver, Lie.EndOverEnd];
        for (int i = 0; i < lies.Length; i++)
        {
            Add(elements, lies[i], new Point2(i * Apart, 0));
        }

        return new Drawing(
            "How the board may lie",
            "The board seen from above as laid, turned flat, rolled over about its length, and turned end over end about its width.",
            elements.ToImmutable());
    }

    private static void Add(ImmutableArray<DrawingElement>.Builder elements, Lie lie, Point2 at)
    {
        // As laid, end A is at the right and the reference edge away from you, at the fence.
        (double x, double y) = lie switch
        {
            Lie.TurnedFlat => (-1, -1),
            Lie.RolledOver => (1, -1),
            Lie.EndOverEnd => (-1, 1),
            _ => (1, 1),
        };
        Point2 Put(double along, double up) => at + new Point2(along * x, up * y);
        bool otherFace = x * y < 0;
        var board = Contour.Polygon([.. Curve(Put), Put(HalfLength, HalfWidth), Put(-HalfLength, HalfWidth), Put(-HalfLength, -HalfWidth)]);
        elements.Add(new Fill(Tone.Clamp, Outlines.Of(Contour.Rectangle(new Box2(at.X - HalfLength, HalfWidth, at.X + HalfLength, HalfWidth + 2.5)))));
        elements.Add(new Fill(otherFace ? Tone.Panel : Tone.Wood, Outlines.Of(board)));
        elements.Add(new Stroke(LineRole.Edge, board));
        elements.Add(new Stroke(LineRole.FinishedEdge, Contour.Polyline([.. Curve(Put)])));
        if (lie != Lie.AsLaid)
        {
            // What is cut next, always at your right on the edge near you.
            elements.Add(new Stroke(LineRole.HiddenEdge, Contour.Polyline([.. Curve((along, up) => at + new Point2(along, up))])));
        }

        switch (lie)
        {
            case Lie.TurnedFlat:
                elements.Add(new CenterMark(at));
                break;
            case Lie.RolledOver:
                elements.Add(new Stroke(LineRole.Axis, Contour.Polyline(at - new Point2(HalfLength + 2, 0), at + new Point2(HalfLength + 2, 0))));
                break;
            case Lie.EndOverEnd:
                elements.Add(new Stroke(LineRole.Axis, Contour.Polyline(at - new Point2(0, HalfWidth + 3), at + new Point2(0, HalfWidth + 3))));
                break;
            default:
                break;
        }

        // Clear of both curves and of the axis, whatever way the board lies.
        void Letter(string text, double along, double up, double height) =>
            elements.Add(new Text(text, at + new Point2(along, up - (height / 2)), TextAlign.Middle, height));
        double clear = lie == Lie.EndOverEnd ? 9.5 : -2.5;
        Letter("A", (HalfLength + 2.2) * x, 3, 3);
        Letter("B", -(HalfLength + 2.2) * x, 3, 3);
        Letter("reference edge", clear, (HalfWidth - 1.8) * y, 1.7);
        Letter(otherFace ? "other face up" : "face up", clear, 2.6 * (lie == Lie.RolledOver ? 1 : y), 1.7);
        elements.Add(new Text("fence", at + new Point2(-HalfLength + 1, HalfWidth + 0.4), TextAlign.Start, 1.7));
        elements.Add(new Text(GrainSection.NameOf(lie), at + new Point2(0, HalfWidth + 5), TextAlign.Middle, Height * 1.2));
    }

    // From the lower edge round to the end.
    private static IEnumerable<Point2> Curve(Func<double, double, Point2> put) => Enumerable.Range(0, Chords + 1).Select(i =>
    {
        double angle = Math.PI / 2 * i / Chords;
        return put(HalfLength - (Run * Math.Cos(angle)), -HalfWidth + (Rise * Math.Sin(angle)));
    });
}
