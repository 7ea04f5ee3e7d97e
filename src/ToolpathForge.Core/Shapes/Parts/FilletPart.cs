using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>Rounds the corner between the part before and the part after; the last of all, the corner at the nose.</summary>
internal sealed class FilletPart : ShapePart
{
    public override string Id => "fillet";

    public override string Says => "Rounds the corner between the part before and the part after it; as the last part, the nose.";

    public override ImmutableArray<Question> Questions { get; } = [Question.Size("radius", "Its radius.", null, 0.1, 1000)];

    internal override bool Draw(ShapePen pen, PartSpec spec, ShapeSizes sizes, ICollection<Finding> findings)
    {
        if (pen.Curves.Count > 0 && (pen.Roundings.Count == 0 || pen.Roundings[^1].Before < pen.Curves.Count - 1))
        {
            pen.Round(sizes.Rounded(spec, "radius"), spec.Where("radius"));
            return true;
        }

        string why = pen.Curves.Count == 0 ? "no part stands before it" : "another fillet stands before it";
        findings.Add(Finding.Of(ShapeFindings.NothingToRound, spec.At, Arg.Of("why", why)));
        return false;
    }
}
