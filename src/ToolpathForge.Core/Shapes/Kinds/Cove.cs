using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A quarter of a circle, given by its radius.</summary>
internal sealed class Cove : Shape
{
    public override string Id => "cove";

    public override string Says => "A quarter of a circle by its radius, hollow (scoop) or round (belly).";

    public override ImmutableArray<Question> Questions { get; } =
        [ProfileMaker.Form, Question.Size("radius", "Radius of the quarter circle.", null, 1, 1000), .. ProfileMaker.Common];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        ShapeSizes sizes = ShapeSizes.Of(spec, width, findings);
        var pen = new ShapePen();
        pen.QuarterRound(sizes.Rounded(spec, "radius"), spec.Word("form") == "scoop");
        return ProfileMaker.Finish(pen, spec, sizes, spec.Word("form"), findings);
    }
}
