using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>
/// A piece as a dimensioned shop drawing, laid as a right-hand piece: face up, profile edge towards you, end at your right.
/// </summary>
public static class PieceDrawing
{
    /// <summary>The turn that brings the piece frame to the drawing: half round, not mirrored.</summary>
    private static readonly Placement s_laid = new(Math.PI, default, false);

    /// <summary>Draws a piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="unit">The unit of its dimensions.</param>
    public static Drawing Of(Piece piece, LengthUnit unit) => piece switch
    {
        ProfilePiece profile => OfProfile(profile, unit),
        _ => OfPlain(piece, unit),
    };

    // Just an outline, dimensioned over all.
    private static Drawing OfPlain(Piece piece, LengthUnit unit)
    {
        string Say(double mm) => ShopText.Size(mm, unit);
        Outline outline = piece.Exact.Placed(s_laid);
        Box2 box = CurveExtent.Box(outline);
        return new Drawing(
            piece.Make.Id,
            $"Seen from above as it lies on the machine. {Say(box.Width)} by {Say(box.Height)}.",
            [
                new Fill(piece.Make.Sheet is null ? Tone.Wood : Tone.Panel, outline),
                new ExactStroke(LineRole.FinishedEdge, outline),
                .. piece.Openings.Select(o => new ExactStroke(LineRole.FinishedEdge, OpeningOutline.Drawn(o, s_laid))),
                new LinearDimension(new Point2(box.MinX, box.MinY), new Point2(box.MaxX, box.MinY), MeasuredAlong.Horizontal, Say(box.Width), -DrawingStyle.FirstRow, box.MinY),
                new LinearDimension(new Point2(box.MinX, box.MinY), new Point2(box.MinX, box.MaxY), MeasuredAlong.Vertical, Say(box.Height), DrawingStyle.FirstRow, box.MinX),
            ]);
    }

    private static Drawing OfProfile(ProfilePiece piece, LengthUnit unit)
    {
        string Say(double mm) => ShopText.Size(mm, unit);
        Outline outline = piece.Exact.Placed(s_laid);
        Profile profile = piece.Profile;
        bool plate = piece.Make is PatternMake;
        var elements = ImmutableArray.CreateBuilder<DrawingElement>();
        elements.Add(new Fill(plate ? Tone.Panel : Tone.Wood, outline));
        if (piece.Make.Material.HasGrain)
        {
            elements.Add(new GrainLines([outline], 0));
        }

        Box2 box = ArcFit.Fit(outline, 0.01).Contour.Box;
        if (plate)
        {
            AddBoard(elements, piece, box);
        }

        AddOutline(elements, piece, outline);
        AddDimensions(elements, piece, box, Say);
        return new Drawing(
            $"{piece.Make.Id}, {(plate ? "pattern" : "board end")} for {piece.Make.Board.Id}",
            $"Seen from above, profile edge towards you, end at your {(piece.IsLeftHand ? "left" : "right")}. A {profile.Form}, {Say(profile.Run)} along the board and {Say(profile.Depth)} up it.",
            elements.ToImmutable());
    }

    private static void AddBoard(ImmutableArray<DrawingElement>.Builder elements, ProfilePiece piece, Box2 box)
    {
        // The board under the plate: its two long edges, and its raw end beyond the tip.
        double width = piece.Profile.Width;
        elements.Add(new Stroke(LineRole.HiddenEdge, Contour.Polyline(new Point2(box.MinX, 0), new Point2(box.MaxX, 0))));
        elements.Add(new Stroke(LineRole.HiddenEdge, Contour.Polyline(new Point2(box.MinX, -width), new Point2(box.MaxX, -width))));
        if (InsetOf(piece) > 0)
        {
            elements.Add(new ExactStroke(LineRole.HiddenEdge, piece.Profile.Exact.Placed(ProfileLaid(piece))));
        }

        if (box.MinY < -width - 1)
        {
            bool left = piece.IsLeftHand;
            elements.Add(new Text("board under the pattern", new Point2(left ? box.MaxX - 6 : box.MinX + 6, -width + 2), left ? TextAlign.End : TextAlign.Start, 2.2));
        }
    }

    // A left-hand plate is mirrored but for its profile, which is that of the board.
    private static Placement ProfileLaid(ProfilePiece piece) => piece.IsLeftHand ? s_laid.After(LeftHand.Mirror) : s_laid;

    // How far inside the finished edge a pattern's working edge lies, for a guide larger than the cutter.
    private static double InsetOf(ProfilePiece piece) => piece.Make is PatternMake { Hand: { } hand } ? hand.PatternInset : 0;

    private static void AddOutline(ImmutableArray<DrawingElement>.Builder elements, ProfilePiece piece, Outline outline)
    {
        for (int i = 0; i < outline.Curves.Length; i++)
        {
            EdgeRole role = piece.Roles[i];
            LineRole line = role is EdgeRole.Curve or EdgeRole.EndCut ? LineRole.FinishedEdge : LineRole.Edge;
            elements.Add(new ExactStroke(line, new Outline([outline.Curves[i]], false)));
        }

        foreach (Opening opening in piece.Openings)
        {
            elements.Add(new ExactStroke(LineRole.FinishedEdge, OpeningOutline.Drawn(opening, s_laid)));
            Point2 middle = s_laid.Apply((opening.From + opening.To) / 2);
            elements.Add(new CenterMark(middle));
        }

        foreach (Contour stroke in piece.Marks.SelectMany(m => m.Strokes))
        {
            elements.Add(new Stroke(LineRole.Engraving, stroke.Placed(s_laid)));
        }

        foreach (PlateStrip strip in (piece as ProfilePiece)?.Strips ?? [])
        {
            elements.Add(new Stroke(LineRole.HiddenEdge, strip.Outline.Placed(s_laid)));
            Point2 middle = s_laid.Apply(strip.Corner + (strip.Along * (strip.Length * 0.5)) + (strip.Across * (strip.Width * 0.28)));
            double turn = s_laid.Direction(strip.Along).Angle;
            elements.Add(new Text(strip.Name, middle, TextAlign.Middle, 2.2, turn > (Math.PI / 2) + 1e-9 || turn < (-Math.PI / 2) + 1e-9 ? turn + Math.PI : turn));
        }

        foreach (Point2 brad in ((piece as ProfilePiece)?.Brads ?? []).Select(s_laid.Apply))
        {
            elements.Add(new CenterMark(brad));
        }

        foreach (GuideLine guide in piece.Guides)
        {
            Point2 from = s_laid.Apply(guide.From);
            Point2 to = s_laid.Apply(guide.To);
            elements.Add(new Stroke(LineRole.Axis, Contour.Polyline(from, to)));
        }
    }

    private static void AddDimensions(ImmutableArray<DrawingElement>.Builder elements, ProfilePiece piece, Box2 box, Func<double, string> say)
    {
        Profile p = piece.Profile;
        Placement laid = ProfileLaid(piece);
        Point2 start = laid.Apply(p.Start);
        Point2 nose = laid.Apply(p.Nose);
        Point2 end = laid.Apply(p.End);

        // Which way the board runs out: to the right, but for a left-hand plate; and where the tip and the far end of the plate are.
        double hand = piece.IsLeftHand ? -1 : 1;
        double tip = piece.IsLeftHand ? box.MinX : box.MaxX;
        double far = piece.IsLeftHand ? box.MaxX : box.MinX;
        double below = box.MinY;
        const double Row = DrawingStyle.RowStep;
        const double First = DrawingStyle.FirstRow;

        // Run and depth are measured to the nose before any easing of it.
        Point2 corner = start + new Point2(hand * p.Run, p.Depth);
        elements.Add(new LinearDimension(start, corner, MeasuredAlong.Horizontal, say(p.Run), -First, below));
        elements.Add(new LinearDimension(corner, start, MeasuredAlong.Vertical, say(p.Depth), -First * hand, tip));
        elements.Add(new LinearDimension(end, start, MeasuredAlong.Vertical, say(p.Width), (-First - Row) * hand, tip));
        if (piece.Make is PatternMake make)
        {
            elements.Add(new LinearDimension(
                new Point2(box.MinX, box.MinY), new Point2(box.MaxX, box.MinY), MeasuredAlong.Horizontal, say(box.Width), -First - Row, below));
            elements.Add(new LinearDimension(
                new Point2(far, box.MinY), new Point2(far, box.MaxY), MeasuredAlong.Vertical, say(box.Height), (First + Row) * hand, far));
            elements.Add(new LinearDimension(
                new Point2(far, 0), new Point2(far, box.MaxY), MeasuredAlong.Vertical, say(make.Seat), First * hand, far));
            elements.Add(new Text("guide-block line: the board's reference edge", new Point2(far + (6 * hand), 2), piece.IsLeftHand ? TextAlign.End : TextAlign.Start, 2.2));
        }

        foreach (Curve curve in p.Exact.Curves.Select(c => c.Placed(laid)))
        {
            if (curve is EllipseCurve ellipse)
            {
                elements.Add(new CenterMark(ellipse.Center));
            }
        }

        // The longest curve bears the name of the edge; every arc its radius.
        Curve longest = p.Exact.Curves.SkipLast(1).MaxBy(c => c.Length)!.Placed(laid);
        elements.Add(new Leader(
            longest.PointAt(0.55),
            piece.Marks.IsEmpty ? new Point2(-9 * hand, 8) : new Point2(9 * hand, -8),
            InsetOf(piece) is > 0 and var inset ? $"finished edge; the working edge\nlies {say(inset)} inside it"
            : piece.Make is PatternMake ? "working edge" : "finished edge"));
        foreach (ArcCurve arc in p.Exact.Curves.OfType<ArcCurve>().Select(c => (ArcCurve)c.Placed(laid)))
        {
            // Written where there is no wood: outside a round, within a hollow.
            elements.Add(new RadiusDimension(
                arc.Center, arc.Radius, (arc.PointAt(0.4) - arc.Center).Angle, "R " + say(arc.Radius), arc.Sweep * hand > 0 ? 8 : -8));
        }

        if (p.EndAngle != 0)
        {
            string degrees = Math.Abs(p.EndAngle).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) + "°";
            string longer = p.EndAngle > 0 ? "top long" : "nose long";
            elements.Add(new Stroke(LineRole.Construction, Contour.Polyline(nose, new Point2(nose.X, end.Y))));
            elements.Add(new Leader(nose.Towards(end, 0.85), new Point2(9 * hand, 12), $"end cut {degrees} from square,\n{longer}"));
        }

        if (piece.Make.Material.HasGrain)
        {
            elements.Add(new GrainArrow(new Point2(far + (hand * box.Width * 0.3), -p.Width * 0.4), 0, 22, "GRAIN"));
        }
    }
}
