using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A quarter of an ellipse.</summary>
internal sealed class EllipsePart : ShapePart
{
    public override string Id => "ellipse";

    public override string Says => "A quarter of an ellipse: a scoop begins square to the board and ends along it, a belly the other way round.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        ProfileMaker.Form,
        Question.Size("run", "One semi-axis: how far it reaches along the board.", null, 0.5, 2000),
        Question.Size("depth", "The other semi-axis: how far it reaches up the board.", null, 0.5, 1000),
        Composed.Join,
    ];

    internal override bool Draw(ShapePen pen, PartSpec spec, ShapeSizes sizes, ICollection<Finding> findings)
    {
        pen.Quarter(sizes.Rounded(spec, "run"), sizes.Rounded(spec, "depth"), spec.Word("form") == "scoop");
        return true;
    }
}
