using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A straight cut by length and angle.</summary>
internal sealed class Splay : Shape
{
    public override string Id => "splay";

    public override string Says => "A straight cut up from the lower edge, by its length and its angle with that edge.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        Question.Size("length", "Length of the cut.", null, 1, 2000),
        Question.Angle("angle", "Angle between the cut and the board's lower edge.", null, 5, 85),
        .. ProfileMaker.Common,
    ];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        ShapeSizes sizes = ShapeSizes.Of(spec, width, findings);
        Point2 cut = Point2.Direction(spec.Radians("angle")) * sizes.Rounded(spec, "length");
        var pen = new ShapePen();
        pen.Line(cut.X, cut.Y);
        return ProfileMaker.Finish(pen, spec, sizes, "straight cut", findings);
    }
}
