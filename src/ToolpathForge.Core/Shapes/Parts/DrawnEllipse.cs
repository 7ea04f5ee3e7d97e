using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>
/// An arc of a circle or an ellipse between two points, by its radii. Seen in units of its radii along its own axes an ellipse is a circle of radius 1; there
/// the arc is settled by its chord, its side and whether it is the short way round or the long one. Its ends come out exactly.
/// </summary>
/// <param name="round">True for a circle.</param>
internal sealed class DrawnEllipse(bool round) : ShapePart
{
    public override string Id => round ? "arc" : "ellipse";

    public override string Says => round ? "An arc of a circle, by its radius." : "An arc of an ellipse, by its two radii and their tilt.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        .. DrawnCurves.End,
        .. round
            ? (ReadOnlySpan<Question>)[Question.Number("radius", "", "Its radius, at least half the distance between its ends.", null, 1e-3, DrawnCurves.Farthest)]
            :
            [
                Question.Number("radius-x", "", "Half its one axis.", null, 1e-3, DrawnCurves.Farthest),
                Question.Number("radius-y", "", "Half its other axis.", null, 1e-3, DrawnCurves.Farthest),
                Question.Angle("tilt", "How far the axis of radius-x is turned from the board's length, counter-clockwise.", "0 deg", -180, 180),
            ],
        Question.Choice("form", "Which way it turns on its way: right, hollow (scoop), or left, round (belly).", null, "scoop", "belly"),
        Question.Choice("way", "Whether it takes the short way round or the long one.", "short", "short", "long"),
    ];

    internal override bool Draw(ShapePen pen, PartSpec spec, ShapeSizes sizes, ICollection<Finding> findings)
    {
        if (!DrawnCurves.HasLength(pen, spec, findings))
        {
            return false;
        }

        double radiusX = spec.Number(round ? "radius" : "radius-x");
        double radiusY = round ? radiusX : spec.Number("radius-y");
        double tilt = spec.Radians("tilt");
        Point2 chord = (DrawnCurves.EndOf(spec) - pen.At).Rotated(-tilt);
        var unit = new Point2(chord.X / radiusX, chord.Y / radiusY);
        double half = unit.Length / 2;
        if (half > 1)
        {
            findings.Add(Finding.Of(
                TooSmall, spec.Where(round ? "radius" : "radius-x"), Quantity.Number(radiusX), Quantity.Number(radiusX * half), Arg.Of("part", Id)));
            return false;
        }

        // The centre lies beside the middle of the chord, to the right of a scoop that goes the short way.
        bool scoop = spec.Word("form") == "scoop";
        bool far = spec.Word("way") == "long";
        double aside = Math.Sqrt(1 - (half * half)) * (scoop == far ? 1 : -1);
        Point2 center = (unit / 2) + (unit.Unit().Left * aside);
        double start = (-center).Angle;
        double turn = 2 * (far ? Math.PI - Math.Asin(half) : Math.Asin(half)) * (scoop ? -1 : 1);
        Point2 at = pen.At + new Point2(center.X * radiusX, center.Y * radiusY).Rotated(tilt);
        pen.Add(round
            ? new ArcCurve(at, radiusX, start, turn)
            : new EllipseCurve(at, new Point2(radiusX, 0).Rotated(tilt), new Point2(0, radiusY).Rotated(tilt), start, turn));
        return true;
    }

    /// <summary>The radii do not span the ends.</summary>
    internal static readonly FindingKind TooSmall = new(
        "drawn-radius-short",
        Severity.Stop,
        "An {part} with a radius of {found} cannot span from its beginning to its end; it takes {allowed} at least.",
        "Give larger radii, in the drawing's own unit, or bring the ends together.");
}
