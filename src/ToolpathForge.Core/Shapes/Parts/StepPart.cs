using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A square step.</summary>
internal sealed class StepPart : ShapePart
{
    public override string Id => "step";

    public override string Says => "A square step: up the board and then along it, or along and then up.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        Question.Size("run", "How far it reaches along the board.", null, 0.5, 2000),
        Question.Size("depth", "How far it reaches up the board.", null, 0.5, 1000),
        Question.Choice("first", "Which comes first: up (an inside corner, which wants a fillet) or along (a point).", "up", "up", "along"),
        Question.Size("fillet", "Radius of its corner.", "0 mm", 0, 500),
        Composed.Join,
    ];

    internal override bool Draw(ShapePen pen, PartSpec spec, ShapeSizes sizes, ICollection<Finding> findings)
    {
        bool up = spec.Word("first") == "up";
        double run = sizes.Rounded(spec, "run");
        double depth = sizes.Rounded(spec, "depth");
        pen.Line(up ? 0 : run, up ? depth : 0);
        pen.Round(sizes.Rounded(spec, "fillet"), spec.Where("fillet"));
        pen.Line(up ? run : 0, up ? 0 : depth);
        return true;
    }
}
