using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A quarter of an ellipse on the lower edge of a board's end, then a straight end cut.</summary>
internal sealed class QuarterEllipse : Shape
{
    public override string Id => "quarter-ellipse";

    public override string Says => "A quarter of an ellipse up from the lower edge, hollow (scoop) or round (belly), then a straight end cut.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        ProfileMaker.Form,
        ProfileMaker.Run("How far the curve reaches along the board: one semi-axis of the ellipse."),
        ProfileMaker.Depth("How far the curve reaches up the board: the other semi-axis."),
        .. ProfileMaker.Common,
    ];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        ShapeSizes sizes = ShapeSizes.Of(spec, width, findings);
        var pen = new ShapePen();
        bool scoop = spec.Word("form") == "scoop";
        (double run, double depth) = sizes.RunAndDepth(spec);
        pen.Quarter(run, depth, scoop);
        return ProfileMaker.Finish(pen, spec, sizes, spec.Word("form"), findings);
    }
}
