using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A straight cut by run and depth.</summary>
internal sealed class Straight : Shape
{
    public override string Id => "straight";

    public override string Says => "A straight cut up from the lower edge, by how far it reaches along and up the board.";

    public override ImmutableArray<Question> Questions { get; } = [ProfileMaker.Run(), ProfileMaker.Depth(), .. ProfileMaker.Common];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        ShapeSizes sizes = ShapeSizes.Of(spec, width, findings);
        var pen = new ShapePen();
        (double run, double depth) = sizes.RunAndDepth(spec);
        pen.Line(run, depth);
        return ProfileMaker.Finish(pen, spec, sizes, "straight cut", findings);
    }
}
