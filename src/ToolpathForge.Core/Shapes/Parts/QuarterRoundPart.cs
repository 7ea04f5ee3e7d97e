using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A quarter of a circle.</summary>
internal sealed class QuarterRoundPart : ShapePart
{
    public override string Id => "cove";

    public override string Says => "A quarter of a circle: a scoop begins square to the board and ends along it, a belly the other way round.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        Question.Choice("form", "Whether it is hollow (scoop) or round (belly).", "scoop", "scoop", "belly"),
        Question.Size("radius", "Its radius.", null, 0.5, 1000),
        Composed.Join,
    ];

    internal override bool Draw(ShapePen pen, PartSpec spec, ShapeSizes sizes, ICollection<Finding> findings)
    {
        pen.QuarterRound(sizes.Rounded(spec, "radius"), spec.Word("form") == "scoop");
        return true;
    }
}
