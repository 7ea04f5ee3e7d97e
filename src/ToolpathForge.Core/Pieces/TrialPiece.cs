using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Drawings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;

namespace ToolpathForge.Pieces;

/// <summary>
/// A trial piece: a square cut out round, with a slot as wide as the bit and a bored hole in it. Measured with a caliper, they give the bit's true diameter,
/// the scale of either axis and how far the axes are from square (<see cref="TrialReadings"/>).
/// </summary>
public static class TrialPiece
{
    /// <summary>What its make and its program are called.</summary>
    public const string Id = "trial";

    // Where slot and hole lie, as shares of the side: far enough from each other and from the edge for any bit to half an inch.
    private const double SlotFrom = 0.2;
    private const double SlotHeight = 0.18;
    private const double HoleHeight = 0.58;

    /// <summary>Side of the square, mm: 4 in or 100 mm, easy on any caliper of 6 in but for the diagonal, which asks for 8.</summary>
    /// <param name="unit">The unit of the shop.</param>
    public static double Side(LengthUnit unit) => unit == LengthUnit.Inch ? 101.6 : 100;

    /// <summary>Diameter of the hole, mm.</summary>
    /// <param name="unit">The unit of the shop.</param>
    public static double Hole(LengthUnit unit) => unit == LengthUnit.Inch ? 38.1 : 40;

    /// <summary>The trial piece for a make: same bit, stock and speeds.</summary>
    /// <param name="like">The make whose bit is to be looked at.</param>
    /// <param name="bit">The bit as its row says, before any trial.</param>
    /// <param name="unit">The unit of the shop.</param>
    internal static PlainPiece For(Make like, Bit bit, LengthUnit unit)
    {
        double side = Side(unit);
        var at = new Places(like.At.Table, ImmutableDictionary<string, Place>.Empty);
        Panel panel = like.Sheet is { } sheet
            ? sheet.Panel
            : new Panel(like.Material.Id, like.Material.Name, like.Material.Id, like.Thickness, 0, double.PositiveInfinity, like.Material.Source);
        var make = new TrialMake(
            Id, side, like.Material, like is ProfileMake { Hand.Machined: { } machined } ? machined : like.Thickness, bit,
            new CutChoices(like.Cut.Speed, like.Cut.Feed, like.Cut.Plunge, like.Cut.PassDepth, like.Cut.Allowance, like.Cut.Overcut, like.Cut.Direction, 4, null, null)
            {
                // A slope takes more room than a square of this size has in thick stock.
                TabForm = bit.CanPlunge ? TabForm.Square : TabForm.Ramped,
            },
            at)
        {
            Sheet = new PanelSheet(panel),
            Openings =
            [
                new Opening("slot", Turned(new Point2(side * SlotFrom, side * SlotHeight), side), Turned(new Point2(side * (1 - SlotFrom), side * SlotHeight), side), bit.Diameter, bit, at),
                new Opening("hole", Turned(new Point2(side / 2, side * HoleHeight), side), Turned(new Point2(side / 2, side * HoleHeight), side), Hole(unit), bit, at),
            ],
        };
        return new PlainPiece(make, new Outline(Outline(side).Curves, true), make.Thickness);
    }

    /// <summary>The piece as it lies on the machine, each reading named as the job's key for it.</summary>
    /// <param name="bit">The bit.</param>
    /// <param name="unit">The unit of the shop.</param>
    public static Drawing Readings(Bit bit, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(bit);
        double side = Side(unit);
        double hole = Hole(unit);
        var middle = new Point2(side / 2, side * HoleHeight);
        var from = new Point2(side * SlotFrom, side * SlotHeight);
        var to = new Point2(side * (1 - SlotFrom), side * SlotHeight);
        Outline square = Outline(side);
        var half = new Point2(0, bit.Radius);
        Outline slot = Outlines.Of(new Contour(
            [new Vertex(from - half), new Vertex(to - half, 1), new Vertex(to + half), new Vertex(from + half, 1)], true));
        Outline round = Outlines.Of(Contour.Circle(middle, hole / 2));
        return new Drawing("What to measure on the trial piece", "Seen from above as it lies on the machine, the slot towards you.",
        [
            new Fill(Tone.Panel, [square, slot, round]),
            new ExactStroke(LineRole.FinishedEdge, square),
            new ExactStroke(LineRole.FinishedEdge, slot),
            new ExactStroke(LineRole.FinishedEdge, round),
            new Stroke(LineRole.Construction, Contour.Polyline(new Point2(0, 0), new Point2(side, side))),
            new Stroke(LineRole.Construction, Contour.Polyline(new Point2(0, side), new Point2(side, 0))),
            Label("rising", new Point2(side * 0.86, side * 0.86), Math.PI / 4),
            Label("falling", new Point2(side * 0.14, side * 0.86), -Math.PI / 4),
            new LinearDimension(new Point2(0, 0), new Point2(side, 0), MeasuredAlong.Horizontal, "across-x", -DrawingStyle.FirstRow, 0),
            new LinearDimension(new Point2(0, 0), new Point2(0, side), MeasuredAlong.Vertical, "across-y", DrawingStyle.FirstRow, 0),
            new LinearDimension(middle - new Point2(hole / 2, 0), middle + new Point2(hole / 2, 0), MeasuredAlong.Horizontal, "hole-x", DrawingStyle.FirstRow, side),
            new LinearDimension(middle - new Point2(0, hole / 2), middle + new Point2(0, hole / 2), MeasuredAlong.Vertical, "hole-y", -DrawingStyle.FirstRow, side),
            new LinearDimension(to - new Point2(0, bit.Radius), to + new Point2(0, bit.Radius), MeasuredAlong.Vertical, "slot", -DrawingStyle.FirstRow, side),
            new Arrow(LineRole.Lettering, new Point2(side + 26, 4), new Point2(side + 26, 18)),
            new Text("Y", new Point2(side + 26, 20), TextAlign.Middle),
        ]);
    }

    private static Text Label(string value, Point2 at, double turn) => new(value, at + (Point2.Direction(turn).Left * 1.2), TextAlign.Middle, 2.4, turn);

    private static Outline Outline(double side) => Outlines.Of(Contour.Polygon(new(0, 0), new(side, 0), new(side, side), new(0, side)));

    // Plates lie turned half round on the bed: what is to lie towards you there is drawn at the far side of the piece.
    private static Point2 Turned(Point2 p, double side) => new Point2(side, side) - p;
}
