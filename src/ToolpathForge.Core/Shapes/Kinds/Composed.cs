using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>Parts one behind the other, as the job lists them.</summary>
internal sealed class Composed : Shape
{
    /// <summary>A join that turns by less than this is smooth, degrees: it moves the far end of a metre by 2 µm.</summary>
    internal const double SmoothWithin = 1e-4;

    /// <summary>What every part is asked beside its own questions.</summary>
    internal static Question Join { get; } = Question.Choice(
        "join", "How the part meets the one before: as it comes, or smooth, which is kept exactly or refused.", "any", "any", "smooth");

    public override string Id => "composed";

    public override string Says => "Any profile put together from parts: straight lines, arcs, quarter ellipses, quarter circles, steps, and fillets between any two.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        Question.Parts("part", "The parts from the lower edge to the nose, each going on where the one before ends.", 1, 40, PartList.All),
        .. ProfileMaker.Common,
    ];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        ShapeSizes sizes = ShapeSizes.Of(spec, width, findings);
        var pen = new ShapePen();
        ImmutableArray<PartSpec> parts = spec.Answers["part"].Parts;
        for (int i = 0; i < parts.Length; i++)
        {
            PartSpec part = parts[i];
            (Point2? heading, Point2 at, int drawn) = (pen.Heading, pen.At, pen.Curves.Count);
            if (!part.Part.Draw(pen, part, sizes, findings) || !sizes.IsSound)
            {
                return null;
            }

            bool smooth = part.Has("join") && part.Word("join") == "smooth";
            if (smooth && heading is { } before && pen.Curves.Count > drawn && Mismatch(before, pen.Curves[drawn]) is var turn and > SmoothWithin)
            {
                findings.Add(Finding.Of(
                    ShapeFindings.NotSmooth,
                    part.Where("join"),
                    Quantity.Angle(turn),
                    Quantity.Angle(SmoothWithin),
                    Arg.Of("number", Quantity.Number(i + 1)),
                    Arg.Of("along", Quantity.Length(at.X)),
                    Arg.Of("across", Quantity.Length(at.Y))));
                return null;
            }
        }

        return ProfileMaker.Finish(pen, spec, sizes, "composed curve", findings);
    }

    private static double Mismatch(Point2 before, Curve next) => Math.Abs(Corners.TurnBetween(before, next.DirectionAt(0))) * 180 / Math.PI;
}
