using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A square step, its inside corner rounded for the bit.</summary>
internal sealed class Step : Shape
{
    public override string Id => "step";

    public override string Says => "A step: square up from the lower edge, then along the board to the end; the inside corner is rounded.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        ProfileMaker.Run("How far the step reaches along the board."),
        ProfileMaker.Depth("How far it reaches up the board."),
        Question.Size("fillet", "Radius of the inside corner: no smaller than the bit's, or the bit leaves wood there.", "1/4 in", 0, 500),
        .. ProfileMaker.Common,
    ];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        ShapeSizes sizes = ShapeSizes.Of(spec, width, findings);
        (double run, double depth) = sizes.RunAndDepth(spec);
        var pen = new ShapePen();
        pen.Line(0, depth);
        pen.Round(sizes.Rounded(spec, "fillet"), spec.Where("fillet"));
        pen.Line(run, 0);
        return ProfileMaker.Finish(pen, spec, sizes, "step", findings);
    }
}
