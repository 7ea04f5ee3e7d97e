using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>Puts the end cut behind a drawn curve, rounds the corners, and lays the whole into the piece frame.</summary>
internal static class ProfileMaker
{
    /// <summary>Common practice: an end thinner than an eighth of the board is a feather, and breaks.</summary>
    internal const double DeepestShare = 7.0 / 8;

    /// <summary>Whether the curve is hollow or round, for shapes that come both ways.</summary>
    internal static Question Form { get; } =
        Question.Choice("form", "Whether the curve is hollow (scoop, also written hollow) or round (belly, also written round).", null, "scoop", "belly");

    /// <summary>What every shape asks at the end: how sizes are rounded, and how the end is cut.</summary>
    internal static ImmutableArray<Question> Common { get; } =
    [
        Question.Size("round", "Sizes are rounded to the nearest whole multiple of this, so that they can be marked with a rule; 0 leaves them.", "0 mm", 0, 50),
        Question.Number(
            "keep-ratio", "per cent", "How far rounding may move run to depth; the next multiples are tried where the nearest ones move it further.", "3", 0.1, 100),
        Question.Angle("end-cut", "Lean of the end cut from square.", "0 deg", 0, 60),
        Question.Choice("long-side", "Which edge of the end cut is the longer: top (the reference edge) or bottom (the nose).", "top", "top", "bottom"),
    ];

    /// <summary>A question for how far a curve reaches along the board.</summary>
    internal static Question Run(string says = "How far the curve reaches along the board.") => Question.Size("run", says, null, 1, 2000);

    /// <summary>A question for how far a curve reaches up the board.</summary>
    internal static Question Depth(string says = "How far the curve reaches up the board.") => Question.Size("depth", says, null, 1, 1000);

    /// <summary>The finished profile; null when a finding says why not.</summary>
    /// <param name="pen">Has drawn the curve from the lower edge to the nose.</param>
    /// <param name="spec">The shape's answers.</param>
    /// <param name="sizes">The sizes it was drawn with.</param>
    /// <param name="form">What the curve is called.</param>
    /// <param name="findings">Takes what is wrong.</param>
    internal static Profile? Finish(ShapePen pen, ShapeSpec spec, ShapeSizes sizes, string form, ICollection<Finding> findings)
    {
        if (!sizes.IsSound)
        {
            return null;
        }

        double width = sizes.Width;
        Point2 nose = pen.At;
        if (nose.Y > width * DeepestShare)
        {
            findings.Add(DeepFinding(spec, nose.Y, width));
            return null;
        }

        bool topLong = spec.Word("long-side") == "top";
        double lean = (width - nose.Y) * Math.Tan(spec.Radians("end-cut"));
        var curves = new List<Curve>(pen.Curves)
        {
            new LineCurve(nose, new Point2(nose.X + (topLong ? lean : -lean), width)),
        };
        if (!RoundCorners(curves, pen.Roundings, findings) || !ProfileCheck.IsSound(curves, spec, width, findings))
        {
            return null;
        }

        // Half a turn leads from the view of a right-hand piece to the piece frame, in which what stands out furthest, the tip, is at X = 0.
        double tip = curves.Max(c => ProfileCheck.Extent(c, new Point2(1, 0)).High);
        var laid = new Placement(Math.PI, new Point2(tip, width), false);
        double degrees = spec.Answers["end-cut"].Angle.Degrees;
        return new Profile(
            new Outline([.. curves.Select(c => c.Placed(laid))], false),
            [.. Enumerable.Repeat(EdgeRole.Curve, curves.Count - 1), EdgeRole.EndCut],
            width,
            nose.X,
            nose.Y,
            topLong ? degrees : -degrees,
            form);
    }

    /// <summary>The finding for a curve that leaves too little of the board.</summary>
    internal static Finding DeepFinding(ShapeSpec spec, double depth, double width) => Finding.Of(
        ShapeFindings.TooDeep, spec.Where("depth"), Quantity.Length(depth), Quantity.Length(width * DeepestShare), Arg.Of("width", Quantity.Length(width)));

    // From the last corner to the first, so that the places of those still to come do not move.
    private static bool RoundCorners(List<Curve> curves, IReadOnlyList<Rounding> roundings, ICollection<Finding> findings)
    {
        foreach (Rounding rounding in roundings.Reverse())
        {
            Curve before = curves[rounding.Before];
            Curve after = curves[rounding.Before + 1];
            if (Math.Abs(Corners.TurnBetween(before.DirectionAt(1), after.DirectionAt(0))) < Corners.LeastTurn)
            {
                findings.Add(Finding.Of(ShapeFindings.NothingToRound, rounding.At, Arg.Of("why", "what meets here goes on smoothly already")));
                return false;
            }

            if (CornerRounding.Round(before, after, rounding.Radius) is not { } rounded)
            {
                double most = CornerRounding.Largest(before, after, rounding.Radius);
                findings.Add(Finding.Of(ShapeFindings.FilletTooLarge, rounding.At, Quantity.Length(rounding.Radius), Quantity.Length(most)));
                return false;
            }

            curves.RemoveRange(rounding.Before, 2);
            curves.InsertRange(rounding.Before, [.. rounded.Before, rounded.Fillet, .. rounded.After]);
        }

        return true;
    }
}
