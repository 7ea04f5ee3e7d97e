using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>A line of the person's own, given as curves, scaled to the board.</summary>
internal sealed class Drawn : Shape
{
    /// <summary>The line does not lead up the board and towards its end.</summary>
    internal static readonly FindingKind NotForwards = new(
        "drawn-not-forwards",
        Severity.Stop,
        "From its beginning to its end the drawn line goes {found} {way}; it must go more than {allowed} there to be scaled.",
        "Draw it from the lower edge of the board, up and to the right.");

    /// <summary>Neither size says how large the drawing becomes.</summary>
    internal static readonly FindingKind NoSize = new(
        "drawn-no-size",
        Severity.Stop,
        "Nothing says how large the drawn line becomes.",
        "Give run or depth, or both to stretch it.");

    /// <summary>A small step between the ends would blow the rest up beyond measure.</summary>
    internal static readonly FindingKind TooLarge = new(
        "drawn-too-large",
        Severity.Stop,
        "Scaled so that its ends are as far apart as asked, the drawn line or one of its radii would reach {found}; at most {allowed} is taken.",
        "Draw it with its end further from its beginning, along the board and up it.");

    /// <summary>Nothing of a scaled line may be farther than this from its beginning, mm: the largest radius that any shape takes.</summary>
    private const double Farthest = 100_000;

    public override string Id => "drawn";

    public override string Says => "A line of your own, given as lines, arcs, ellipses and Bézier curves, scaled to the board.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        Question.Parts("curve", "The curves from the lower edge to the nose, the first from 0, 0, each going on where the one before ended.", 1, 200, DrawnCurves.All),
        Question.Size("run", "How far it reaches along the board when it is scaled.", null, 1, 2000).ElseFrom("follows from depth"),
        Question.Size("depth", "How far it reaches up the board when it is scaled.", null, 1, 1000).ElseFrom("follows from run"),
        .. ProfileMaker.Common,
    ];

    /// <summary>
    /// Places any open chain of curves as a profile: the door for lines that come from elsewhere. Its beginning comes to the board's lower edge, and it is scaled
    /// by what the answers say of run and depth.
    /// </summary>
    /// <param name="line">Open; each curve begins where the one before ends; drawn as a right-hand piece is seen, X towards the tip, Y up the board, in any unit.</param>
    /// <param name="spec">Answers run or depth or both, and what is common to all shapes.</param>
    /// <param name="width">Design width of the board, mm.</param>
    /// <param name="findings">Takes what is wrong.</param>
    /// <param name="asked">The key that the line comes by, where findings point to it.</param>
    /// <param name="scale">How many mm a unit of the line is, taken where the answers give neither run nor depth; null where they must.</param>
    internal static Profile? Place(Outline line, ShapeSpec spec, double width, ICollection<Finding> findings, string asked = "curve", double? scale = null)
    {
        ShapeSizes sizes = ShapeSizes.Of(spec, width, findings);
        double? run = null;
        double? depth = null;
        if (spec.Has("run") && spec.Has("depth"))
        {
            (run, depth) = sizes.RunAndDepth(spec);
        }
        else
        {
            run = spec.Has("run") ? sizes.Rounded(spec, "run") : null;
            depth = spec.Has("depth") ? sizes.Rounded(spec, "depth") : null;
        }

        if (run is null && depth is null && scale is null)
        {
            findings.Add(Finding.Of(NoSize, spec.At));
            return null;
        }

        Point2 from = line.Curves[0].Start;
        Point2 way = line.Curves[^1].End - from;
        if (!Forwards(run is not null, way.X, "along the board", spec.Where(asked), findings) || !Forwards(depth is not null, way.Y, "up the board", spec.Where(asked), findings))
        {
            return null;
        }

        double alongScale = (run / way.X) ?? (depth / way.Y) ?? scale!.Value;
        double upScale = (depth / way.Y) ?? alongScale;
        double reach = line.Curves.Max(c => CurveScale.Reach(c, from, alongScale, upScale));
        if (reach > Farthest)
        {
            findings.Add(Finding.Of(TooLarge, spec.Where(asked), Quantity.Length(reach), Quantity.Length(Farthest)));
            return null;
        }

        var pen = new ShapePen();
        foreach (Curve curve in line.Curves)
        {
            pen.Add(CurveScale.Of(curve, from, alongScale, upScale));
        }

        return ProfileMaker.Finish(pen, spec, sizes, "drawn curve", findings);
    }

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        // The curves' own numbers are neither shares nor rounded.
        var asDrawn = new ShapeSizes(width, 0, findings);
        var pen = new ShapePen();
        foreach (PartSpec curve in spec.Answers["curve"].Parts)
        {
            if (!curve.Part.Draw(pen, curve, asDrawn, findings))
            {
                return null;
            }
        }

        return Place(new Outline([.. pen.Curves], false), spec, width, findings);
    }

    private static bool Forwards(bool scaled, double way, string side, Place at, ICollection<Finding> findings)
    {
        const double Least = 1e-6;
        if (!scaled || way > Least)
        {
            return true;
        }

        findings.Add(Finding.Of(NotForwards, at, Quantity.Number(way), Quantity.Number(Least), Arg.Of("way", side)));
        return false;
    }
}
