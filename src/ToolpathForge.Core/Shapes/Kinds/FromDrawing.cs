using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>The one open line of a drawing, scaled to the board.</summary>
internal sealed class FromDrawing : Shape
{
    /// <summary>Nothing says how large a unit of the drawing is.</summary>
    internal static readonly FindingKind UnitNeeded = new(
        "drawn-line-unit-needed",
        Severity.Stop,
        "The drawing does not say what unit it is drawn in, and neither run nor depth says how large the line becomes.",
        "Add unit = \"mm\" or \"in\" to take it as large as drawn, or give run or depth.");

    /// <summary>The lower end lies to the right of the upper one, or straight below or beside it.</summary>
    internal static readonly FindingKind NotUpRight = new(
        "drawn-line-not-up-right",
        Severity.Stop,
        "From its lower end to its upper one the line goes {found} {way}, in units of the drawing; it must go up and to the right.",
        "Draw it as a right-hand piece is seen, from the board's lower edge up and to the right, or, if it is drawn the other way round, add mirrored = true; where that stands already, take it out.");

    /// <summary>Smallest way along and up the board of a line as drawn, in units of the drawing: a hundred times what two points may be apart and still be one.</summary>
    private const double Least = 1e-6;

    public override string Id => "drawing";

    public override string Says =>
        "The one open line of a drawing (DXF or SVG), drawn as a right-hand piece is seen: where its lower-left end lies it leaves the board's lower edge, at its other end it meets the end cut.";

    public override ImmutableArray<Question> Questions { get; } =
    [
        Question.Drawing("file", "The drawing: a file in the job's folder or below it, or @name for one that a CAD host sends with the job.", 200),
        Question.Text("layer", "The one layer to look at.", 250).ElseFrom("all that are seen"),
        Question.Choice("unit", "The unit it is drawn in, where it does not say so or says it wrong; of no matter where run or depth is given.", null, "mm", "cm", "dm", "m", "in", "ft", "yd")
            .ElseFrom("as the drawing says"),
        Question.Length("gap", "Ends no farther apart than this are joined, before the line is scaled.", 0, 10).ElseFrom("0.01 mm"),
        Question.Flag("mirrored", "Whether it is drawn the other way round, as a left-hand piece is seen.", "false"),
        Question.Size("run", "How far it reaches along the board when it is scaled.", null, 1, 2000).ElseFrom("follows from depth; without both, as drawn"),
        Question.Size("depth", "How far it reaches up the board when it is scaled.", null, 1, 1000).ElseFrom("follows from run; without both, as drawn"),
        .. ProfileMaker.Common,
    ];

    public override Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        LineOfDrawing line = spec.Answers["file"].Line!;
        if (!line.UnitIsKnown && !spec.Has("run") && !spec.Has("depth"))
        {
            findings.Add(Finding.Of(UnitNeeded, spec.Where("file")));
            return null;
        }

        Outline path = UpFromTheLowerEnd(spec.Flag("mirrored") ? line.Path.Placed(new Placement(0, default, true)) : line.Path);
        Point2 way = path.Curves[^1].End - path.Curves[0].Start;
        foreach ((double found, string side) in (ReadOnlySpan<(double, string)>)[(way.X, "to the right"), (way.Y, "up")])
        {
            if (found <= Least)
            {
                findings.Add(new Finding(NotUpRight, spec.Where("file"), Quantity.Number(found), null, [Arg.Of("way", side)]));
                return null;
            }
        }

        return Drawn.Place(path, spec, width, findings, "file", 1);
    }

    /// <summary>The line from its lower end to its upper one; of two level ends from the left one.</summary>
    internal static Outline UpFromTheLowerEnd(Outline line)
    {
        Point2 from = line.Curves[0].Start;
        Point2 to = line.Curves[^1].End;
        return from.Y < to.Y || (from.Y == to.Y && from.X <= to.X) ? line : line.Reversed();
    }
}
