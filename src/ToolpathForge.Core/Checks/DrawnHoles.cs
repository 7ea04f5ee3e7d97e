using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Checks;

/// <summary>Whether the holes of a drawn outline leave enough wood between them, and whether their bit gets into all of them.</summary>
internal static class DrawnHoles
{
    /// <summary>Part of a hole is narrower than the bit.</summary>
    internal static readonly FindingKind TooNarrow = new(
        "hole-too-narrow",
        Severity.Stop,
        "Hole {name} of the drawing is narrower somewhere than {bit}, {found}, which does not get all the way round it.",
        "Name a thinner hole-bit, or widen the hole.");

    /// <summary>The bit is too thick for a corner of a hole.</summary>
    internal static readonly FindingKind TooTight = new(
        "hole-too-tight",
        Severity.Stop,
        "A bit of {diameter} cannot follow the edge of hole {name} near {x}, {y} of the drawing: it would leave {found}; {allowed} is allowed.",
        "Name a thinner hole-bit, round the corner in the drawing, or ease it with a hole for the corner.");

    /// <summary>Too little is left between a hole and the outline.</summary>
    internal static readonly FindingKind AtEdge = new(
        "hole-at-edge",
        Severity.Stop,
        "Between hole {name} of the drawing and the outline {found} is left; {allowed} at least holds.",
        "Move the hole inwards, or make it smaller.");

    /// <summary>Two holes are too near each other.</summary>
    internal static readonly FindingKind Crowded = new(
        "holes-crowded",
        Severity.Stop,
        "Between holes {name} and {other} of the drawing {found} is left; {allowed} at least holds.",
        "Move them apart, or make one hole of them.");

    /// <summary>What stops the planning of moves: they would only raise the same trouble again.</summary>
    internal static bool IsHopeless(FindingKind kind) => kind == TooNarrow || kind == TooTight;

    internal static IEnumerable<Finding> Find(CheckInput input, OutlineMake make, double wall, double allowed)
    {
        Contour outline = Fitted(make.Edge);
        Contour[] holes = [.. make.Openings.Select(o => Fitted(OpeningOutline.Exact(o, Placement.Identity)))];
        for (int i = 0; i < holes.Length; i++)
        {
            Opening hole = make.Openings[i];
            var name = Arg.Of("name", hole.Name);
            Place At(Point2 p)
            {
                Point2 drawn = make.InDrawing(p);
                return hole.At.Table.OfMake(make.Id).AtPoint(drawn.X, drawn.Y);
            }

            foreach (Finding finding in hole.Edge is null ? [] : Reached(hole, holes[i], make, At, allowed))
            {
                yield return finding;
            }

            ContourGap toEdge = ContourDistance.Between(holes[i], outline);
            if (toEdge.Distance < wall - 1e-6)
            {
                yield return Finding.Of(AtEdge, At(toEdge.OnA), Quantity.Length(toEdge.Distance), Quantity.Length(wall), name);
            }

            for (int k = 0; k < i; k++)
            {
                ContourGap between = ContourDistance.Between(holes[i], holes[k]);
                if (between.Distance < wall - 1e-6)
                {
                    yield return Finding.Of(Crowded, At(between.OnA), Quantity.Length(between.Distance), Quantity.Length(wall), name, Arg.Of("other", make.Openings[k].Name));
                }
            }
        }
    }

    private static IEnumerable<Finding> Reached(Opening hole, Contour edge, OutlineMake make, Func<Point2, Place> at, double allowed)
    {
        var name = Arg.Of("name", hole.Name);
        if (HoleCut.Track(edge, hole.Bit) is null)
        {
            yield return new Finding(TooNarrow, at(edge.Start), Quantity.Length(hole.Bit.Diameter), null, [name, Arg.Of("bit", hole.Bit.Name)]);
            yield break;
        }

        foreach (Unreached place in Reach.Of(edge, hole.Bit.Radius, Side.Right, allowed))
        {
            Point2 drawn = make.InDrawing(place.At);
            yield return Finding.Of(
                TooTight,
                at(place.At),
                Quantity.Length(place.Left),
                Quantity.Length(allowed),
                name,
                Arg.Of("diameter", Quantity.Length(hole.Bit.Diameter)),
                Arg.Of("x", Quantity.Length(drawn.X)),
                Arg.Of("y", Quantity.Length(drawn.Y)));
        }
    }

    // Lines and arcs stay as they are.
    private static Contour Fitted(Outline exact) => ArcFit.Quick(exact, HoleCut.Fit).Contour;
}
