using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Pieces;

/// <summary>
/// Makes the plate for left-hand ends from that for right-hand ones: its mirror image, so that its labels lie on the face that is up in use. The profile of the
/// board stays as it is; everything that is cut or engraved, and every place that the job names, is mirrored.
/// </summary>
internal static class LeftHand
{
    /// <summary>The mirror: X is negated, so that the plate's end comes to lie at your left, its profile edge still towards you.</summary>
    internal static Placement Mirror { get; } = new(0, default, true);

    /// <summary>Where the job has a point of a piece: places of the job count from the tip inwards, whichever hand the plate is for.</summary>
    /// <param name="make">The piece's make.</param>
    /// <param name="point">Piece frame.</param>
    internal static Point2 InJob(Make make, Point2 point) => make is PatternMake { Fittings.Hands: PlateHands.Left } ? Mirror.Apply(point) : point;

    /// <summary>The plate for the hand that its make asks for; itself where that is not the left alone.</summary>
    /// <param name="plate">A pattern's plate for right-hand ends, fitted out, not yet marked.</param>
    internal static ProfilePiece Of(ProfilePiece plate)
    {
        if (!plate.IsLeftHand)
        {
            return plate;
        }

        ProfileMake make = plate.Make with
        {
            Openings = [.. plate.Openings.Select(o => o with { From = Mirror.Apply(o.From), To = Mirror.Apply(o.To) })],
            Cut = plate.Make.Cut with
            {
                TabPlaces = [.. plate.Make.Cut.TabPlaces.Select(Mirrored)],
                Lead = plate.Make.Cut.Lead is { } lead ? Mirrored(lead) : null,
            },
        };

        // Walked the other way, so that the material is on the left again.
        return new ProfilePiece(
            make,
            plate.Profile,
            plate.Exact.Placed(Mirror).Reversed(),
            [.. plate.Roles.Reverse()],
            plate.Thickness,
            [.. plate.Guides.Select(g => g with { From = Mirror.Apply(g.From), To = Mirror.Apply(g.To) })])
        {
            Strips = [.. plate.Strips.Select(s => s with { Corner = Mirror.Apply(s.Corner), Along = Mirror.Direction(s.Along), Across = Mirror.Direction(s.Across) })],
            Brads = [.. plate.Brads.Select(Mirror.Apply)],
        };

        static PlaceOnEdge Mirrored(PlaceOnEdge place) => place with { Point = Mirror.Apply(place.Point) };
    }
}
