using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>
/// Two circular arcs that flow into each other on the chord between the ends. Both turn by the same angle, so they touch there exactly: at a common
/// point of two arcs with parallel chords the tangents agree when the inscribed angles do.
/// </summary>
internal sealed class Ogee : Shape
{
    public override string Id => "ogee";

    public override string Says => "Two circular arcs that flow into each other, one hollow and one round; form says which comes first.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        Question.Choice("form", "Which arc comes first from the lower edge: the hollow (scoop) or the round (belly) one.", null, "scoop", "belly"),
        ProfileMaker.Run(),
        ProfileMaker.Depth(),
        Question.Number("first-share", "", "Share of run and depth that the first arc takes.", "0.5", 0.1, 0.9),
        Question.Angle("turn", "How far each arc turns.", null, 5, 170)
            .ElseFrom("at their ends they lie along the board, or square to it where the ogee is deeper than long"),
        .. ProfileMaker.Common,
    ];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        ShapeSizes sizes = ShapeSizes.Of(spec, width, findings);
        (double run, double depth) = sizes.RunAndDepth(spec);
        var chord = new Point2(run, depth);
        if (!sizes.IsSound)
        {
            return null;
        }

        double halfTurn = spec.Has("turn") ? spec.Radians("turn") / 2 : ArcPart.FlushHalfTurn(chord);
        bool scoop = spec.Word("form") == "scoop";
        Point2 first = chord * spec.Number("first-share");
        var pen = new ShapePen();
        pen.ArcBy(first.X, first.Y, halfTurn, scoop);
        pen.ArcBy(chord.X - first.X, chord.Y - first.Y, halfTurn, !scoop);
        return ProfileMaker.Finish(pen, spec, sizes, "ogee", findings);
    }
}
