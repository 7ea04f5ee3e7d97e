using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>Two quarters of ellipses one behind the other, with a point or a rounded nook between.</summary>
internal sealed class Scallop : Shape
{
    public override string Id => "scallop";

    public override string Says => "Two hollows (scoop) that meet in a point, or two rounds (belly) that meet in a rounded inside corner.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        ProfileMaker.Form,
        ProfileMaker.Run("How far both together reach along the board."),
        ProfileMaker.Depth("How far both together reach up the board."),
        Question.Number("first-share", "", "Share of run and depth that the first takes.", "0.5", 0.1, 0.9),
        Question.Size("fillet", "Radius of the inside corner between two bellies; two scoops meet in a point that is left as it is.", "1/4 in", 0, 500),
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
        if (!scoop)
        {
            pen.Round(sizes.Rounded(spec, "fillet"), spec.Where("fillet"));
        }

        pen.Quarter(run - (run * share), depth - (depth * share), scoop);
        return ProfileMaker.Finish(pen, spec, sizes, $"double {spec.Word("form")}", findings);
    }
}
