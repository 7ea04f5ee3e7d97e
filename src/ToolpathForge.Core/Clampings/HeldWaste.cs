using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Clampings;

/// <summary>The waste of an opening that stays whole, and what lies in it.</summary>
/// <param name="Of">The piece that has the opening.</param>
/// <param name="Opening">The opening.</param>
/// <param name="Edge">Its edge on the bed, fitted as finely as nests are.</param>
/// <param name="Within">Pieces that lie in it, those in openings of such pieces among them; empty for none.</param>
public sealed record HeldWaste(Placed Of, Opening Opening, Contour Edge, ImmutableArray<Placed> Within)
{
    /// <summary>All such openings of a clamping, piece by piece.</summary>
    /// <param name="clamping">What lies on the bed.</param>
    public static ImmutableArray<HeldWaste> On(Clamping clamping)
    {
        ArgumentNullException.ThrowIfNull(clamping);
        return
        [
            .. clamping.Pieces.SelectMany(piece => piece.Piece.Openings.Where(o => o.Held).Select(opening =>
            {
                Contour edge = ArcFit.Fit(OpeningOutline.Exact(opening, piece.Placement), TurnedLayout.Fit).Contour;
                return new HeldWaste(piece, opening, edge, [.. clamping.Pieces.Where(p => p != piece && edge.Contains(p.Exact.Curves[0].Start))]);
            })),
        ];
    }

    /// <summary>What a piece takes of its panel: its outline without the openings whose waste stays whole. Other openings are cut to chips, so nothing can come out of them.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="placement">From the piece frame to where it is wanted.</param>
    internal static Region Taken(Piece piece, Placement placement) => Region.Of(
    [
        ArcFit.Fit(piece.Exact.Placed(placement), TurnedLayout.Fit).Contour,
        .. piece.Openings.Where(o => o.Held).Select(o => ArcFit.Fit(OpeningOutline.Exact(o, placement), TurnedLayout.Fit).Contour),
    ]);
}
