using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Shapes;

namespace ToolpathForge.Checks;

/// <summary>Whether the bit gets into every hollow of the edges it cuts.</summary>
internal static class TightCurve
{
    /// <summary>The bit is too thick for a hollow or an inside corner.</summary>
    internal static readonly FindingKind TooTight = new(
        "curve-too-tight",
        Severity.Stop,
        "A bit of {diameter} cannot follow the edge near {along} from the tip and {across} from the reference edge: it would leave {found}; {allowed} is allowed.",
        "Use a smaller bit, ease the curve, or give the corner a fillet.");

    /// <summary>The same of an outline that was drawn, which has neither tip nor reference edge.</summary>
    internal static readonly FindingKind OutlineTooTight = new(
        "outline-too-tight",
        Severity.Stop,
        "A bit of {diameter} cannot follow the outline near {x}, {y} of the drawing: it would leave {found}; {allowed} is allowed.",
        "Use a smaller bit, or round the corner in the drawing.");

    internal static IEnumerable<Finding> Find(CheckInput input, double allowed)
    {
        // All pieces of a clamping are alike: the first speaks for them.
        PlacedContour piece = input.Pieces[0];
        Contour edge = piece.Placed.Piece.IsCutAllRound ? piece.Contour : EndCut.Profile(piece);
        Placement back = piece.Placed.Placement.Inverse();
        foreach (Unreached place in Reach.Of(edge, input.Bit.Radius, Side.Right, allowed))
        {
            Point2 at = back.Apply(place.At);
            if (input.Make is OutlineMake drawn)
            {
                at = drawn.InDrawing(at);
                yield return Finding.Of(
                    OutlineTooTight,
                    input.At("drawing").AtPoint(at.X, at.Y),
                    Quantity.Length(place.Left),
                    Quantity.Length(allowed),
                    Arg.Of("diameter", Quantity.Length(input.Bit.Diameter)),
                    Arg.Of("x", Quantity.Length(at.X)),
                    Arg.Of("y", Quantity.Length(at.Y)));
                continue;
            }

            at = LeftHand.InJob(input.Make, at);
            yield return Finding.Of(
                TooTight,
                input.At("shape").AtPoint(at.X, at.Y),
                Quantity.Length(place.Left),
                Quantity.Length(allowed),
                Arg.Of("diameter", Quantity.Length(input.Bit.Diameter)),
                Arg.Of("along", Quantity.Length(at.X)),
                Arg.Of("across", Quantity.Length(at.Y)));
        }
    }
}
