using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>The curves that a drawn shape may hold.</summary>
public static class DrawnCurves
{
    /// <summary>Every curve, in the order of the reference page.</summary>
    public static ImmutableArray<ShapePart> All { get; } = [new DrawnLine(), new DrawnEllipse(false), new DrawnEllipse(true), new DrawnBezier()];

    /// <summary>Coordinates of a drawing go no further than this either way, in its own unit.</summary>
    internal const double Farthest = 100_000;

    /// <summary>A question for a coordinate.</summary>
    internal static Question Coordinate(string key, string asks) => Question.Number(key, "", asks, null, -Farthest, Farthest);

    /// <summary>What every curve asks first.</summary>
    internal static ImmutableArray<Question> End =>
        [Coordinate("x", "Where it ends: to the right, towards the tip."), Coordinate("y", "Where it ends: up the board.")];

    /// <summary>Where a curve ends.</summary>
    internal static Point2 EndOf(PartSpec spec) => new(spec.Number("x"), spec.Number("y"));

    /// <summary>A finding where a curve ends where it begins.</summary>
    internal static bool HasLength(ShapePen pen, PartSpec spec, ICollection<Finding> findings)
    {
        if (pen.At.DistanceTo(EndOf(spec)) > 1e-6)
        {
            return true;
        }

        findings.Add(Finding.Of(
            ShapeFindings.PartUnsettled, spec.At, Arg.Of("part", $"a {spec.Part.Id}"), Arg.Of("takes", "an end that lies apart from its beginning")));
        return false;
    }
}

/// <summary>A straight line to a point.</summary>
internal sealed class DrawnLine : ShapePart
{
    public override string Id => "line";

    public override string Says => "A straight line.";

    public override ImmutableArray<Question> Questions { get; } = DrawnCurves.End;

    internal override bool Draw(ShapePen pen, PartSpec spec, ShapeSizes sizes, ICollection<Finding> findings)
    {
        if (!DrawnCurves.HasLength(pen, spec, findings))
        {
            return false;
        }

        pen.Add(new LineCurve(pen.At, DrawnCurves.EndOf(spec)));
        return true;
    }
}

/// <summary>A cubic Bézier curve to a point.</summary>
internal sealed class DrawnBezier : ShapePart
{
    public override string Id => "bezier";

    public override string Says => "A cubic Bézier curve, by its two inner control points.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        .. DrawnCurves.End,
        DrawnCurves.Coordinate("x1", "First control point."),
        DrawnCurves.Coordinate("y1", "First control point."),
        DrawnCurves.Coordinate("x2", "Second control point."),
        DrawnCurves.Coordinate("y2", "Second control point."),
    ];

    internal override bool Draw(ShapePen pen, PartSpec spec, ShapeSizes sizes, ICollection<Finding> findings)
    {
        if (!DrawnCurves.HasLength(pen, spec, findings))
        {
            return false;
        }

        pen.Add(SplineCurve.Bezier(
            pen.At, new Point2(spec.Number("x1"), spec.Number("y1")), new Point2(spec.Number("x2"), spec.Number("y2")), DrawnCurves.EndOf(spec)));
        return true;
    }
}
