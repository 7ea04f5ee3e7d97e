using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A quarter of an ellipse on the lower edge of a board's end, then a straight end cut.</summary>
internal sealed class QuarterEllipse : Shape
{
    /// <summary>The curve would take the whole width and leave no end to cut.</summary>
    internal static readonly FindingKind TooDeep = new(
        "shape-too-deep",
        Severity.Stop,
        "The curve reaches {found} up a board that is {width} wide; at most {allowed} leaves an end worth cutting.",
        "Lower the depth, or choose a wider board.");

    /// <summary>Rounding to the fraction asked for left nothing.</summary>
    internal static readonly FindingKind RoundedAway = new(
        "shape-rounded-away",
        Severity.Stop,
        "Rounded to {round}, the {size} becomes {found}.",
        "Round to a finer fraction, or give the size itself.");

    public override string Id => "quarter-ellipse";

    public override string Says => "A quarter of an ellipse up from the lower edge, hollow (scoop) or round (belly), then a straight end cut.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        Question.Choice("form", "Whether the curve is hollow (scoop) or round (belly).", null, "scoop", "belly"),
        Question.Size("run", "How far the curve reaches along the board: one semi-axis of the ellipse.", null, 1, 2000),
        Question.Size("depth", "How far the curve reaches up the board: the other semi-axis.", null, 1, 1000),
        Question.Size("round", "Run and depth are rounded to the nearest whole multiple of this, so that they can be marked with a rule; 0 leaves them.", "0 mm", 0, 50),
        Question.Angle("end-cut", "Lean of the end cut from square.", "0 deg", 0, 60),
        Question.Choice("long-side", "Which edge of the end cut is the longer: top (the reference edge) or bottom (the nose).", "top", "top", "bottom"),
    ];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        double round = spec.Size("round", width);
        double? run = Rounded(spec, "run", width, round, findings);
        double? depth = Rounded(spec, "depth", width, round, findings);
        if (run is not { } a || depth is not { } b)
        {
            return null;
        }

        // Common practice: an end thinner than an eighth of the board is a feather, and breaks.
        double deepest = width * 7 / 8;
        if (b > deepest)
        {
            findings.Add(Finding.Of(
                TooDeep, spec.Where("depth"), Quantity.Length(b), Quantity.Length(deepest), Arg.Of("width", Quantity.Length(width))));
            return null;
        }

        bool scoop = spec.Word("form") == "scoop";
        bool topLong = spec.Word("long-side") == "top";
        double angle = spec.Radians("end-cut");
        double lean = (width - b) * Math.Tan(angle);

        // The tip is always at X = 0: the nose when the bottom is the longer side, the reference edge otherwise.
        var nose = new Point2(topLong ? lean : 0, width - b);
        var top = new Point2(topLong ? 0 : lean, 0);
        EllipseCurve curve = scoop
            ? new EllipseCurve(new Point2(nose.X, width), new Point2(a, 0), new Point2(0, -b), 0, Math.PI / 2)
            : new EllipseCurve(new Point2(nose.X + a, width - b), new Point2(0, b), new Point2(-a, 0), 0, Math.PI / 2);
        double degrees = spec.Answers["end-cut"].Angle.Degrees;
        return new Profile(
            new Outline([curve, new LineCurve(nose, top)], false),
            [EdgeRole.Curve, EdgeRole.EndCut],
            width,
            a,
            b,
            topLong ? degrees : -degrees,
            scoop);
    }

    private static double? Rounded(ShapeSpec spec, string key, double width, double round, ICollection<Finding> findings)
    {
        double size = spec.Size(key, width);
        double rounded = round > 0 ? Math.Round(size / round, MidpointRounding.AwayFromZero) * round : size;
        if (rounded > 0)
        {
            return rounded;
        }

        findings.Add(Finding.Of(
            RoundedAway, spec.Where(key), Quantity.Length(rounded), Quantity.Length(size), Arg.Of("round", Quantity.Length(round)), Arg.Of("size", key)));
        return null;
    }
}
