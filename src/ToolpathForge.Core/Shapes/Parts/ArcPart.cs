using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A circular arc: to a point, smoothly or with a radius; or by radius and turn.</summary>
internal sealed class ArcPart : ShapePart
{
    public override string Id => "arc";

    public override string Says => "A circular arc, by run and depth (smooth from the part before), by run, depth and radius, or by radius and turn.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        ProfileMaker.Form,
        Question.Size("run", "How far it reaches along the board.", null, 0, 2000).ElseFrom("follows from radius and turn, or is 0 where depth is given"),
        Question.Size("depth", "How far it reaches up the board.", null, 0, 1000).ElseFrom("follows from radius and turn, or is 0 where run is given"),
        Question.Size("radius", "Its radius.", null, 0.1, 100000).ElseFrom("follows from run and depth and the part before"),
        Question.Angle("turn", "With radius: how far it turns.", null, 0.1, 270).ElseFrom("follows from run and depth"),
        Composed.Join,
    ];

    /// <summary>Half of what an arc of a given radius turns between two points, radians: the inscribed angle; null with a finding when it is too small.</summary>
    internal static double? HalfTurn(AnswerSet spec, ShapeSizes sizes, Point2 chord, ICollection<Finding> findings)
    {
        double radius = sizes.Rounded(spec, "radius");
        double half = chord.Length / 2;
        if (radius >= half)
        {
            return Math.Asin(half / radius);
        }

        findings.Add(Finding.Of(ShapeFindings.RadiusShort, spec.Where("radius"), Quantity.Length(radius), Quantity.Length(half)));
        return null;
    }

    /// <summary>
    /// Half of what an arc turns that at one end lies along the board, or square to it where it is deeper than long, radians: tangent and chord enclose the
    /// inscribed angle, the chord's slope in the one case, the rest of a right angle in the other.
    /// </summary>
    internal static double FlushHalfTurn(Point2 chord)
    {
        double slope = Math.Atan2(chord.Y, chord.X);
        return Math.Min(slope, (Math.PI / 2) - slope);
    }

    internal override bool Draw(ShapePen pen, PartSpec spec, ShapeSizes sizes, ICollection<Finding> findings)
    {
        bool scoop = spec.Word("form") == "scoop";
        bool bySides = spec.Has("run") || spec.Has("depth");
        Point2 heading = pen.Heading ?? (scoop ? new Point2(0, 1) : new Point2(1, 0));
        if (!bySides && spec.Has("radius") && spec.Has("turn"))
        {
            pen.Arc(heading, sizes.Rounded(spec, "radius"), spec.Radians("turn"), scoop);
            return true;
        }

        var chord = new Point2(sizes.Rounded(spec, "run"), sizes.Rounded(spec, "depth"));
        if (!bySides || spec.Has("turn") || chord.Length == 0)
        {
            findings.Add(Finding.Of(
                ShapeFindings.PartUnsettled,
                spec.At,
                Arg.Of("part", "an arc"),
                Arg.Of("takes", "run and depth, or run, depth and radius, or radius and turn")));
            return false;
        }

        if (spec.Has("radius"))
        {
            if (HalfTurn(spec, sizes, chord, findings) is not { } given)
            {
                return false;
            }

            pen.ArcBy(chord.X, chord.Y, given, scoop);
            return true;
        }

        // The inscribed angle is what the chord turns from the heading, to the side that the form turns to.
        double turned = Corners.TurnBetween(heading, chord);
        double halfTurn = scoop ? -turned : turned;
        if (halfTurn < Corners.LeastTurn)
        {
            findings.Add(Finding.Of(
                ShapeFindings.WrongWay,
                spec.At,
                Quantity.Angle(heading.Angle * 180 / Math.PI),
                Quantity.Angle(chord.Angle * 180 / Math.PI),
                Arg.Of("form", spec.Word("form")),
                Arg.Of("side", scoop ? "steeper" : "flatter")));
            return false;
        }

        pen.ArcBy(chord.X, chord.Y, halfTurn, scoop);
        return true;
    }
}
