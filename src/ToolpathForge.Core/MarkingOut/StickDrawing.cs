using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;

namespace ToolpathForge.MarkingOut;

/// <summary>An ellipse stick at work: the two edges that its guides run on, the curve, and the stick in two places with its three marks.</summary>
public static class StickDrawing
{
    /// <summary>Draws a stick.</summary>
    /// <param name="stick">The stick.</param>
    /// <param name="between">Whether the pencil is between the guides.</param>
    /// <param name="unit">The unit of its dimensions.</param>
    /// <param name="scale">The scale it is laid out for, mm of paper for a mm of the board.</param>
    public static Drawing Of(EllipseStick stick, bool between, LengthUnit unit, double scale)
    {
        ArgumentNullException.ThrowIfNull(stick);
        var elements = ImmutableArray.CreateBuilder<DrawingElement>();
        AddEdge(elements, stick, between, scale, onLong: true);
        AddEdge(elements, stick, between, scale, onLong: false);
        elements.Add(new ExactStroke(LineRole.FinishedEdge, new Outline([stick.Curve], false)));
        elements.Add(new CenterMark(stick.Center));
        StickPlace second = stick.At(0.75, between);
        AddStick(elements, second, scale, LineRole.Construction);
        StickPlace first = stick.At(0.4, between);
        AddStick(elements, first, scale, LineRole.Edge);

        // Written along the stick, on the side away from the axes' crossing.
        Point2 along = (first.OnLong - first.OnShort).Unit();
        double side = (first.Pencil - stick.Center).Dot(along.Left) < 0 ? -1 : 1;
        string Say(double mm) => ShopText.Size(mm, unit);
        AddMeasure(first.Pencil, first.OnLong, stick.Short, 7);
        AddMeasure(first.Pencil, first.OnShort, stick.Long, between ? 7 : 16);
        elements.Add(new Leader(first.Pencil, ClearElbow(stick, [first, second], scale), "pencil"));
        return new Drawing(
            between ? "Ellipse stick, pencil between the guides" : "Ellipse stick, pencil beyond the guides",
            $"Guides {Say(stick.GuidesApart(between))} apart; pencil {Say(stick.Short)} from the guide on the longer axis, {Say(stick.Long)} from the one on the shorter.",
            elements.ToImmutable());

        void AddMeasure(Point2 from, Point2 to, double value, double offset)
        {
            double sign = (to - from).Unit().Left.Dot(along.Left) > 0 ? side : -side;
            elements.Add(new LinearDimension(from, to, MeasuredAlong.Aligned, Say(value), sign * offset));
        }
    }

    // Where the word and its shoulder lie furthest from the curve, from the axes' crossing and from the stick in both places.
    private static Point2 ClearElbow(EllipseStick stick, StickPlace[] places, double scale)
    {
        const double Shoulder = 3;
        const double Word = 13;
        Point2 pencil = places[0].Pencil;
        Point2[] lines =
        [
            stick.Center,
            .. Enumerable.Range(0, 65).Select(i => stick.Curve.PointAt(i / 64.0)),
            .. places.SelectMany(p => Enumerable.Range(0, 129).Select(i => p.Ends.From.Towards(p.Ends.To, i / 128.0))),
        ];

        // The word stands beyond the bend, on the side that the bend lies to, its middle as high.
        double Clearance(Point2 elbow)
        {
            double side = elbow.X < 0 ? -1 : 1;
            Point2 near = pencil + ((elbow + new Point2(side * Shoulder, 0)) / scale);
            var word = new Segment(near, near + new Point2(side * (Word - Shoulder) / scale, 0));
            return lines.Min(word.Distance);
        }

        return ((double[])[11, 15]).SelectMany(away => Enumerable.Range(0, 16).Select(i => Point2.Direction((i + 0.5) * Math.PI / 8) * away)).MaxBy(Clearance);
    }

    // From the crossing as far as the guide goes on this piece, and a little on.
    private static void AddEdge(ImmutableArray<DrawingElement>.Builder elements, EllipseStick stick, bool between, double scale, bool onLong)
    {
        Point2 axis = (onLong ? stick.LongAxis : stick.ShortAxis).Unit();
        double low = 0;
        double high = 0;
        for (int i = 0; i <= 32; i++)
        {
            StickPlace place = stick.At(i / 32.0, between);
            double at = ((onLong ? place.OnLong : place.OnShort) - stick.Center).Dot(axis);
            low = Math.Min(low, at);
            high = Math.Max(high, at);
        }

        double on = 6 / scale;
        elements.Add(new Stroke(LineRole.Axis, Contour.Polyline(stick.Center + (axis * (low - on)), stick.Center + (axis * (high + on)))));
    }

    private static void AddStick(ImmutableArray<DrawingElement>.Builder elements, StickPlace place, double scale, LineRole role)
    {
        (Point2 from, Point2 to) = place.Ends;
        Point2 along = (to - from).Unit();
        Point2 half = along.Left * (1.3 / scale);
        elements.Add(new Stroke(role, Contour.Polygon(from - half, to - half, to + half, from + half)));
        foreach (Point2 guide in (ReadOnlySpan<Point2>)[place.OnLong, place.OnShort])
        {
            elements.Add(new Stroke(role, Contour.Circle(guide, 1.1 / scale)));
        }

        elements.Add(new Solid(role, Contour.Circle(place.Pencil, 0.8 / scale)));
    }
}
