using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A square shoulder, then a quarter of an ellipse.</summary>
internal sealed class Shouldered : Shape
{
    public override string Id => "shouldered";

    public override string Says => "A square shoulder up from the lower edge, then a quarter of an ellipse, hollow (scoop) or round (belly).";

    public override ImmutableArray<Question> Questions { get; } =
    [
        ProfileMaker.Form,
        Question.Size("shoulder", "How far the shoulder rises before the curve begins.", null, 1, 500),
        ProfileMaker.Run(),
        ProfileMaker.Depth("How far shoulder and curve reach up the board together."),
        Question.Size("fillet", "Radius in the corner between the shoulder and a belly; a scoop goes on smoothly and has no corner.", "1/4 in", 0, 500),
        .. ProfileMaker.Common,
    ];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        ShapeSizes sizes = ShapeSizes.Of(spec, width, findings);
        bool scoop = spec.Word("form") == "scoop";
        double shoulder = sizes.Rounded(spec, "shoulder");
        (double run, double depth) = sizes.RunAndDepth(spec);
        double rest = depth - shoulder;
        if (rest <= 0)
        {
            findings.Add(Finding.Of(
                ShapeFindings.NothingLeft, spec.Where("shoulder"), Quantity.Length(shoulder), Quantity.Length(depth), Arg.Of("size", "shoulder"), Arg.Of("whole", "depth")));
            return null;
        }

        var pen = new ShapePen();
        pen.Line(0, shoulder);
        if (!scoop)
        {
            pen.Round(sizes.Rounded(spec, "fillet"), spec.Where("fillet"));
        }

        pen.Quarter(run, rest, scoop);
        return ProfileMaker.Finish(pen, spec, sizes, $"shouldered {spec.Word("form")}", findings);
    }
}
