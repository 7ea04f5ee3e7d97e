using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A straight line: by run and depth, or by length and angle; without an angle it goes on as the part before ended.</summary>
internal sealed class StraightPart : ShapePart
{
    public override string Id => "straight";

    public override string Says => "A straight line, by run and depth or by length and angle.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        Question.Size("run", "How far it reaches along the board.", null, 0, 2000).ElseFrom("0, where depth is given"),
        Question.Size("depth", "How far it reaches up the board.", null, 0, 1000).ElseFrom("0, where run is given"),
        Question.Size("length", "Its length, instead of run and depth.", null, 0.1, 2000).ElseFrom("follows from run and depth"),
        Question.Angle("angle", "With length: its angle with the board's length, 90 square up the board.", null, -90, 180).ElseFrom("on as the part before ended"),
        Composed.Join,
    ];

    internal override bool Draw(ShapePen pen, PartSpec spec, ShapeSizes sizes, ICollection<Finding> findings)
    {
        bool bySides = spec.Has("run") || spec.Has("depth");
        bool angled = spec.Has("angle");
        Point2? heading = angled ? Point2.Direction(spec.Radians("angle")) : pen.Heading;
        if (bySides && !spec.Has("length") && !angled)
        {
            var way = new Point2(sizes.Rounded(spec, "run"), sizes.Rounded(spec, "depth"));
            if (way.Length > 0)
            {
                pen.Line(way.X, way.Y);
                return true;
            }
        }
        else if (!bySides && spec.Has("length") && heading is { } direction)
        {
            Point2 way = direction * sizes.Rounded(spec, "length");
            pen.Line(way.X, way.Y);
            return true;
        }

        findings.Add(Finding.Of(
            ShapeFindings.PartUnsettled,
            spec.At,
            Arg.Of("part", "a straight part"),
            Arg.Of("takes", "run or depth or both, or length with an angle, or length alone to go on as the part before")));
        return false;
    }
}
