using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>
/// The ends of a family side by side at one scale, laid as right-hand pieces with their reference edges in one line, so that the eye can judge
/// whether they belong together.
/// </summary>
public static class FamilyDrawing
{
    /// <summary>The scale that is used where none is asked for.</summary>
    public const double Scale = 0.5;

    /// <summary>Room to the right of an end for its dimensions, mm of paper.</summary>
    private const double Room = (2 * DrawingStyle.RowStep) + DrawingStyle.FirstRow + 12;

    /// <summary>Room below a row for its dimensions and the words of the next, mm of paper.</summary>
    private const double Between = DrawingStyle.FirstRow + 16;

    /// <summary>Share of a board's width that is shown beyond its curve.</summary>
    private const double Beyond = 0.35;

    private static readonly Placement s_laid = new(Math.PI, default, false);

    /// <summary>Draws a family.</summary>
    /// <param name="family">What the family is called.</param>
    /// <param name="pieces">At least one, in the order of the job.</param>
    /// <param name="unit">The unit of the dimensions.</param>
    /// <param name="scale">The scale that it is laid out for, mm of paper for a mm of the boards: the room between the ends holds their dimensions.</param>
    /// <param name="inRow">How many stand side by side before a new row begins below; none for all.</param>
    public static Drawing Of(string family, IReadOnlyList<ProfilePiece> pieces, LengthUnit unit, double scale = Scale, int? inRow = null)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        var elements = ImmutableArray.CreateBuilder<DrawingElement>();
        double top = 0;
        double lowest = 0;
        foreach (ProfilePiece[] row in pieces.Chunk(inRow ?? pieces.Count))
        {
            double left = 0;
            foreach (ProfilePiece piece in row)
            {
                Profile p = piece.Profile;
                double length = p.Start.X + (p.Width * Beyond);
                AddEnd(elements, piece, new Point2(left + length, top), length, unit, scale);
                left += length + (Room / scale);
            }

            lowest = row.Max(p => p.Profile.Width) - top;
            top = -lowest - (Between / scale);
        }

        bool inch = unit == LengthUnit.Inch;
        double bar = inch ? 4 * Length.MillimetresPerInch : 100;
        elements.Add(new ScaleBar(new Point2(0, -lowest - ((DrawingStyle.FirstRow + 16) / scale)), bar, 4, inch ? "4 in" : "100 mm"));
        return new Drawing(
            $"The family {family}",
            "Board ends side by side at one scale, profile edge towards you, end at your right: " + string.Join("; ", pieces.Select(p => Sizes(p, unit))) + ".",
            elements.ToImmutable());
    }

    private static void AddEnd(ImmutableArray<DrawingElement>.Builder elements, ProfilePiece piece, Point2 tip, double length, LengthUnit unit, double scale)
    {
        Profile p = piece.Profile;
        string Say(double mm) => ShopText.Size(mm, unit);
        Placement at = s_laid with { Shift = tip };
        var far = new Point2(length, 0);
        var near = new Point2(length, p.Width);
        Outline end = new Outline(
            [.. p.Exact.Curves, new LineCurve(p.End, far), new LineCurve(far, near), new LineCurve(near, p.Start)], true).Placed(at);
        elements.Add(new Fill(Tone.Wood, end));
        elements.Add(new ExactStroke(LineRole.FinishedEdge, p.Exact.Placed(at)));
        elements.Add(new ExactStroke(LineRole.Edge, new Outline([new LineCurve(at.Apply(p.End), at.Apply(far))], false)));
        elements.Add(new ExactStroke(LineRole.Edge, new Outline([new LineCurve(at.Apply(near), at.Apply(p.Start))], false)));

        Point2 start = at.Apply(p.Start);
        Point2 nose = at.Apply(new Point2(p.Start.X - p.Run, p.Width - p.Depth));
        Point2 top = at.Apply(p.End);
        const double First = DrawingStyle.FirstRow;
        const double Row = DrawingStyle.RowStep;
        elements.Add(new LinearDimension(start, nose, MeasuredAlong.Horizontal, Say(p.Run), -First, start.Y));
        elements.Add(new LinearDimension(nose, start, MeasuredAlong.Vertical, Say(p.Depth), -First, tip.X));
        elements.Add(new LinearDimension(top, start, MeasuredAlong.Vertical, Say(p.Width), -First - Row, tip.X));
        string angle = p.EndAngle == 0 ? "square" : Math.Abs(p.EndAngle).ToString("0.##", CultureInfo.InvariantCulture) + "°";
        string ratio = (p.Run / p.Depth).ToString("0.000", CultureInfo.InvariantCulture);
        elements.Add(new Text($"{piece.Make.Board.Id}, end {angle}, {ratio} : 1", new Point2(tip.X - length, tip.Y + (4 / scale)), TextAlign.Start, 2.5));
    }

    private static string Sizes(ProfilePiece piece, LengthUnit unit) =>
        $"{piece.Make.Board.Id} {ShopText.Size(piece.Profile.Run, unit)} by {ShopText.Size(piece.Profile.Depth, unit)}";
}
