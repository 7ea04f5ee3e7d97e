using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>
/// A straight flank with a tangent arc at each end. A belly leaves the lower edge along it and arrives square to it; a scoop is the same line walked
/// the other way, so it leaves square and arrives along the board.
/// </summary>
internal sealed class EasedBevel : Shape
{
    /// <summary>Arcs leave no flank between them.</summary>
    internal static readonly FindingKind NoFlank = new(
        "bevel-no-flank",
        Severity.Stop,
        "Two arcs of radius {found} leave no straight flank between them; the radius must be below {allowed}.",
        "Use a smaller radius, or a quarter ellipse.");

    public override string Id => "eased-bevel";

    public override string Says => "A straight flank eased by an arc at each end, hollow (scoop) or round (belly).";

    public override ImmutableArray<Question> Questions { get; } =
    [
        ProfileMaker.Form,
        ProfileMaker.Run(),
        ProfileMaker.Depth(),
        Question.Size("radius", "Radius of both arcs, less than run and depth.", null, 1, 1000),
        .. ProfileMaker.Common,
    ];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        ShapeSizes sizes = ShapeSizes.Of(spec, width, findings);
        (double run, double depth) = sizes.RunAndDepth(spec);
        double radius = sizes.Rounded(spec, "radius");
        if (!sizes.IsSound)
        {
            return null;
        }

        if (radius >= Math.Min(run, depth))
        {
            findings.Add(Finding.Of(NoFlank, spec.Where("radius"), Quantity.Length(radius), Quantity.Length(Math.Min(run, depth))));
            return null;
        }

        // The arcs' centres are apart by (run - r, depth - r), and the flank, tangent to both on the same side, runs the same way.
        bool scoop = spec.Word("form") == "scoop";
        var flank = new Point2(run - radius, depth - radius);
        double slope = flank.Angle;
        double right = Math.PI / 2;
        var pen = new ShapePen();
        pen.Arc(scoop ? new Point2(0, 1) : new Point2(1, 0), radius, scoop ? right - slope : slope, scoop);
        pen.Line(flank.X, flank.Y);
        pen.Arc(flank.Unit(), radius, scoop ? slope : right - slope, scoop);
        return ProfileMaker.Finish(pen, spec, sizes, spec.Word("form"), findings);
    }
}
