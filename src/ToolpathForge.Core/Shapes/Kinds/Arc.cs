using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>One circular arc, by run and depth alone or with a radius.</summary>
internal sealed class Arc : Shape
{
    public override string Id => "arc";

    public override string Says =>
        "One circular arc up from the lower edge, hollow (scoop) or round (belly).";

    public override ImmutableArray<Question> Questions { get; } =
    [
        ProfileMaker.Form,
        ProfileMaker.Run(),
        ProfileMaker.Depth(),
        Question.Size("radius", "Radius of the arc, at least half the distance between its ends.", null, 1, 100000).ElseFrom("at one end it touches the line along the board, or the one square to it where the arc is deeper than long"),
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

        double? halfTurn = spec.Has("radius") ? ArcPart.HalfTurn(spec, sizes, chord, findings) : ArcPart.FlushHalfTurn(chord);
        if (halfTurn is not { } turn)
        {
            return null;
        }

        var pen = new ShapePen();
        pen.ArcBy(chord.X, chord.Y, turn, spec.Word("form") == "scoop");
        return ProfileMaker.Finish(pen, spec, sizes, spec.Word("form"), findings);
    }
}
