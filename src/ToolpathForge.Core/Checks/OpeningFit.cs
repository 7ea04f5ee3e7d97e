using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Checks;

/// <summary>Whether holes and slots lie within the piece, apart from each other, and can be cut with their bits.</summary>
internal static class OpeningFit
{
    /// <summary>The bit is wider than the opening.</summary>
    internal static readonly FindingKind TooNarrow = new(
        "opening-too-narrow",
        Severity.Stop,
        "Opening '{name}' is {found} wide; {bit} cuts {allowed} at least.",
        "Name a thinner bit for it, or make it wider.");

    /// <summary>A drilled hole needs a bit that goes straight down.</summary>
    internal static readonly FindingKind CannotDrill = new(
        "opening-needs-plunge",
        Severity.Stop,
        "Opening '{name}' is as wide as {bit}, which does not cut at its center and cannot drill it.",
        "Take a bit that plunges, or a thinner one that bores it by a helix.");

    /// <summary>Too little is left between the opening and the edge.</summary>
    internal static readonly FindingKind AtEdge = new(
        "opening-at-edge",
        Severity.Stop,
        "Between opening '{name}' and the edge {found} is left; {allowed} at least holds.",
        "Move it inwards, or make it smaller; x counts from the finished tip, y from the reference edge.");

    /// <summary>Two openings are too near each other.</summary>
    internal static readonly FindingKind Crowded = new(
        "openings-crowded",
        Severity.Stop,
        "Between openings '{name}' and '{other}' {found} is left; {allowed} at least holds.",
        "Move them apart, or make one slot of them.");

    // Common practice: a wall thinner than this breaks out.
    private const double Wall = 2;

    /// <param name="input">What is looked at.</param>
    /// <param name="allowed">What a bit may leave in a corner of a drawn hole, mm.</param>
    internal static IEnumerable<Finding> Find(CheckInput input, double allowed)
    {
        if (input.Make is OutlineMake drawn)
        {
            foreach (Finding finding in DrawnHoles.Find(input, drawn, Wall, allowed).Concat(drawn.Openings.Where(o => o.Edge is null).SelectMany(o => OfBit(o, drawn))))
            {
                yield return finding;
            }

            yield break;
        }

        // All pieces of a clamping are alike: the first speaks for them.
        PlacedContour piece = input.Pieces[0];
        for (int i = 0; i < input.Make.Openings.Length; i++)
        {
            Opening opening = input.Make.Openings[i];
            Place at = PlaceOf(opening, input.Make);
            Arg name = Arg.Of("name", opening.Name);
            foreach (Finding finding in OfBit(opening, input.Make))
            {
                yield return finding;
            }

            double wall = WallTo(piece, opening);
            if (wall < Wall - 1e-6)
            {
                yield return Finding.Of(AtEdge, at, Quantity.Length(Math.Max(0, wall)), Quantity.Length(Wall), name);
            }

            foreach (Opening other in input.Make.Openings.Take(i))
            {
                double between = Between(opening, other) - ((opening.Width + other.Width) / 2);
                if (between < Wall - 1e-6)
                {
                    yield return Finding.Of(
                        Crowded, at, Quantity.Length(Math.Max(0, between)), Quantity.Length(Wall), name, Arg.Of("other", other.Name));
                }
            }
        }
    }

    // Whether the bit goes into a hole or slot.
    private static IEnumerable<Finding> OfBit(Opening opening, Make make)
    {
        Place at = PlaceOf(opening, make);
        Arg name = Arg.Of("name", opening.Name);
        Arg bit = Arg.Of("bit", opening.Bit.Name);
        double room = opening.Width - opening.Bit.Diameter;
        if (room < -1e-6)
        {
            yield return Finding.Of(TooNarrow, at, Quantity.Length(opening.Width), Quantity.Length(opening.Bit.Diameter), name, bit);
        }
        else if (opening.IsHole && room <= OpeningCut.AsWideAsTheBit && !opening.Bit.CanPlunge)
        {
            yield return Finding.Of(CannotDrill, at, name, bit);
        }
    }

    // Where the job has it: in the drawing, or from tip and reference edge.
    private static Place PlaceOf(Opening opening, Make make)
    {
        Point2 point = make is OutlineMake drawn ? drawn.InDrawing(opening.From) : LeftHand.InJob(make, opening.From);
        return opening.At.Table.OfMake(make.Id).AtPoint(point.X, point.Y);
    }

    // How much is left to the nearest edge; less than nothing for an opening that is not in the piece at all.
    private static double WallTo(PlacedContour piece, Opening opening)
    {
        Point2 from = piece.Placed.Placement.Apply(opening.From);
        Point2 to = piece.Placed.Placement.Apply(opening.To);
        int steps = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / 0.5));
        double least = double.PositiveInfinity;
        for (int i = 0; i <= steps; i++)
        {
            Point2 p = from.Towards(to, (double)i / steps);
            double distance = piece.Contour.Distance(p);
            least = Math.Min(least, piece.Contour.Contains(p) ? distance : -distance);
        }

        return least - (opening.Width / 2);
    }

    // Between the centre lines; that of a hole is a point.
    private static double Between(Opening a, Opening b)
    {
        var first = new Segment(a.From, a.To);
        var second = new Segment(b.From, b.To);
        return (a.IsHole, b.IsHole) switch
        {
            (true, true) => a.From.DistanceTo(b.From),
            (true, false) => second.Distance(a.From),
            (false, true) => first.Distance(b.From),
            _ => SegmentDistance.Between(first, second).Distance,
        };
    }
}
