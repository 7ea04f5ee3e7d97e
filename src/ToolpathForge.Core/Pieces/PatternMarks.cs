using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>
/// What is engraved into a pattern, so that it still explains itself in ten years: job, board and sizes, hand and face, the line of the guide block,
/// the way to feed and the way of the grain. Set as it is read with the pattern lying as a right-hand piece.
/// </summary>
internal static class PatternMarks
{
    /// <summary>The lines do not fit on the plate.</summary>
    internal static readonly FindingKind NoRoom = new(
        "marks-no-room",
        Severity.Stop,
        "The marks do not fit on the plate in letters of {found}.",
        "Make the letters smaller, down to 4 mm, shorten the texts, or give the plate more hold.");

    /// <summary>A character that the alphabet does not hold.</summary>
    internal static readonly FindingKind UnknownLetter = new(
        "marks-unknown-letter",
        Severity.Stop,
        "The engraving alphabet has no '{letter}'.",
        "Write the text without it.");

    /// <summary>Strokes stay this far inside the edge, mm: a bearing rides on it.</summary>
    private const double Rim = 3;

    // Half the length of the lines of a brad's cross, mm.
    private const double BradMark = 2.5;

    // Room for a date in pencil or with a letter punch.
    private const string ToDate = "DATE ____________";

    /// <summary>The turn that brings the piece frame to how the pattern is read: half round, not mirrored.</summary>
    private static readonly Placement s_laid = new(Math.PI, default, false);

    /// <summary>The plate with its marks; without, and with a finding, when they do not fit.</summary>
    internal static ProfilePiece Add(Job job, ProfilePiece plate, ICollection<Finding> findings)
    {
        if (plate.Make.Marks is not { } marks)
        {
            return plate;
        }

        Place at = marks.At.Table.OfMake(plate.Make.Id);
        ImmutableArray<string> lines = [.. Lines(job, plate, marks).Select(Accents.Without)];
        ImmutableArray<Rune> unknown = [.. lines.SelectMany(l => StrokeAlphabet.Write(l, marks.Height, Point2.Origin).Unknown).Distinct()];
        if (unknown.Length > 0)
        {
            findings.Add(Finding.Of(UnknownLetter, at, Arg.Of("letter", unknown[0].ToString())));
            return plate;
        }

        Contour edge = ArcFit.Quick(plate.Exact.Placed(s_laid), 0.01).Contour;
        ImmutableArray<Contour> openings = [.. plate.Openings.Select(o => ArcFit.Quick(OpeningOutline.Exact(o, s_laid), 0.01).Contour)];
        var placer = new MarkPlacing(edge, openings, Rim, marks.Height / 2);
        var made = ImmutableArray.CreateBuilder<EngravedMark>();
        if (marks.Labels)
        {
            made.AddRange(Lines(plate, placer, marks.Height));
        }

        if (placer.Place(lines, marks.Height) is not { } text)
        {
            findings.Add(Finding.Of(NoRoom, at, Quantity.Length(marks.Height), Quantity.Length(marks.Height)));
            return plate;
        }

        made.Add(new EngravedMark("text", text));
        Placement back = s_laid.Inverse();
        return plate with { Marks = [.. made.Select(m => m with { Strokes = [.. m.Strokes.Select(s => s.Placed(back))] })] };
    }

    private static ImmutableArray<string> Lines(Job job, ProfilePiece plate, Marking marks)
    {
        ImmutableArray<string> own = marks.Dated ? marks.Texts.Add(ToDate) : marks.Texts;
        if (!marks.Labels)
        {
            return own;
        }

        string Say(double mm) => ShopText.Size(mm, job.Unit);
        Profile p = plate.Profile;
        string end = p.EndAngle == 0
            ? "square end"
            : string.Create(CultureInfo.InvariantCulture, $"end cut {Math.Abs(p.EndAngle):0.##}° {(p.EndAngle > 0 ? "top long" : "nose long")}");
        return
        [
            job.Name,
            $"{plate.Make.Id} · {plate.Make.Board.Id} {p.Form}",
            $"{Say(p.Run)} × {Say(p.Depth)}, {end}",
            plate.Make is PatternMake { Fittings.Hands: PlateHands.Both } ? "THIS FACE UP · LEFT HAND: TURN OVER" : $"{(plate.IsLeftHand ? "LEFT" : "RIGHT")} HAND · THIS FACE UP",
            .. plate.Make.Hand is { PatternInset: > 0 } hand ? [$"for a guide of {Say(hand.Guide)}, cutter {Say(hand.Bit.Diameter)}"] : (ReadOnlySpan<string>)[],
            .. own,
        ];
    }

    // The line of the guide block, the way to feed beside the working edge, and the grain of the board.
    private static IEnumerable<EngravedMark> Lines(ProfilePiece plate, MarkPlacing placer, double height)
    {
        foreach (GuideLine guide in plate.Guides)
        {
            Point2 from = s_laid.Apply(guide.From);
            Point2 to = s_laid.Apply(guide.To);
            Point2 inset = (to - from).Unit() * (Rim + 1);
            if (placer.Take([Contour.Polyline(from + inset, to - inset)], height * 0.9) is { } line)
            {
                yield return new EngravedMark(guide.Label, line);
            }
        }

        // Brads without holes of their own are shot through crosses.
        if (plate.Make is PatternMake { Fittings.Brads.Bit: null })
        {
            foreach (Point2 at in plate.Brads.Select(s_laid.Apply))
            {
                var along = new Point2(BradMark, 0);
                var up = new Point2(0, BradMark);
                if (placer.Take([Contour.Polyline(at - along, at + along), Contour.Polyline(at - up, at + up)], height / 2) is { } cross)
                {
                    yield return new EngravedMark("brad", cross);
                }
            }
        }

        // A hand router is fed with the pattern on its left: along the outline's own direction, from the profile edge out to the tip;
        // on a left-hand end, whose outline is the mirror image, from the tip to the profile edge.
        Curve first = plate.Profile.Exact.Curves[0];
        Curve working = (plate.IsLeftHand ? first.Placed(LeftHand.Mirror).Reversed() : first).Placed(s_laid);
        foreach (double share in (ReadOnlySpan<double>)[0.5, 0.4, 0.6, 0.3, 0.7])
        {
            Point2 along = working.FirstDerivative(share).Unit();
            Point2 middle = working.PointAt(share) + (along.Left * (Rim + (2.2 * height)));
            if (placer.Take([.. Arrow(middle - (along * (3 * height)), middle + (along * (3 * height)), height), .. Beside("FEED", middle, along, height)], height) is { } feed)
            {
                yield return new EngravedMark("way to feed", feed);
                break;
            }
        }

        foreach (double y in (ReadOnlySpan<double>)[0.25, 0.12, 0.4])
        {
            var middle = new Point2((plate.IsLeftHand ? 1 : -1) * (plate.Profile.Start.X + 20), -plate.Profile.Width * y);
            if (placer.Take([.. Arrow(middle, middle + new Point2(5 * height, 0), height), .. Arrow(middle, middle - new Point2(5 * height, 0), height), .. Beside("GRAIN", middle, new Point2(1, 0), height)], height) is { } grain)
            {
                yield return new EngravedMark("grain", grain);
                break;
            }
        }
    }

    private static IEnumerable<Contour> Arrow(Point2 from, Point2 to, double height)
    {
        Point2 back = (from - to).Unit() * (height * 0.8);
        Point2 side = back.Left * 0.4;
        yield return Contour.Polyline(from, to);
        yield return Contour.Polyline(to + back + side, to, to + back - side);
    }

    // Lettering that reads along an arrow, never upside down.
    private static ImmutableArray<Contour> Beside(string word, Point2 middle, Point2 along, double height)
    {
        Point2 reading = along.X < 0 ? -along : along;
        return StrokeAlphabet.Write(word, height * 0.8, middle + (reading.Left * (height * 0.6)), TextAlign.Middle, reading.Angle).Strokes;
    }
}
