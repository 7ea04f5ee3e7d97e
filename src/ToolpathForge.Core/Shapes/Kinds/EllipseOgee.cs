using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>Two quarters of ellipses that flow into each other: where they meet both run along the board, or both stand square to it.</summary>
internal sealed class EllipseOgee : Shape
{
    public override string Id => "ellipse-ogee";

    public override string Says => "Two quarters of ellipses that flow into each other, one hollow and one round; form says which comes first.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        Question.Choice("form", "Which quarter comes first from the lower edge: the hollow (scoop) or the round (belly) one.", null, "scoop", "belly"),
        ProfileMaker.Run(),
        ProfileMaker.Depth(),
        Question.Number("first-share", "", "Share of run and depth that the first quarter takes.", "0.5", 0.1, 0.9),
        .. ProfileMaker.Common,
    ];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        ShapeSizes sizes = ShapeSizes.Of(spec, width, findings);
        (double run, double depth) = sizes.RunAndDepth(spec);
        double share = spec.Number("first-share");
        bool scoop = spec.Word("form") == "scoop";
        var pen = new ShapePen();
        pen.Quarter(run * share, depth * share, scoop);
        pen.Quarter(run - (run * share), depth - (depth * share), !scoop);
        return ProfileMaker.Finish(pen, spec, sizes, "ogee", findings);
    }
}
