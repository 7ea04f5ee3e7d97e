using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Cutting;

/// <summary>
/// An opening that is cut round at its edge like a piece from within, while its waste stays whole: the same roughing, finish, leads and tabs as the outside of a piece has, on the
/// other side of the line.
/// </summary>
internal static class HeldOpening
{
    /// <summary>Waste that is nowhere wider than this goes to chips, mm: it could break and be thrown (common practice), and nothing comes out of it.</summary>
    internal const double LeastWaste = 20;

    /// <summary>The numbers it is cut with: those of the outline, and tabs by its own length; never more of them than the job asks for round a piece.</summary>
    /// <param name="make">The piece's make.</param>
    /// <param name="opening">The opening.</param>
    /// <param name="machine">On what.</param>
    /// <param name="skin">Thickness that is left under the cut instead of tabs, mm; 0 for none.</param>
    internal static CutSettings Settings(Make make, Opening opening, Machine machine, double skin)
    {
        double length = OpeningOutline.Exact(opening, Placement.Identity).Curves.Sum(c => c.Length);
        var settings = CutSettings.For(OfOwn(make), machine, length, skin);
        int? said = make.Cut.TabPlaces.IsEmpty ? make.Cut.Tabs : make.Cut.TabPlaces.Length;
        return settings with { TabCount = Math.Min(settings.TabCount, said ?? settings.TabCount) };
    }

    /// <summary>Whether the waste is of one part, and large enough to be worth holding.</summary>
    /// <param name="make">The piece's make.</param>
    /// <param name="opening">The opening.</param>
    /// <param name="s">Its numbers.</param>
    internal static bool HasWaste(Make make, Opening opening, CutSettings s)
    {
        Contour edge = Waste(make, opening, Placement.Identity).Contour;
        Bit bit = make.Bit;
        double[] distances = [bit.Radius, bit.Radius + s.Allowance, bit.Radius + s.Allowance + s.Widen, s.TrackRoom(bit), s.TrackRoom(bit) + (LeastWaste / 2)];
        return Array.TrueForAll(distances, d => Offsetter.Closed(edge, -d) is { Unproven: null, Loops.Length: 1 });
    }

    /// <summary>Whether tabs, or a skin, hold the waste while it's cut, and the finish has a place to begin.</summary>
    /// <param name="make">The piece's make.</param>
    /// <param name="opening">An opening that has waste to hold.</param>
    /// <param name="s">Its numbers.</param>
    internal static bool IsHeld(Make make, Opening opening, CutSettings s)
    {
        // What is wrong is told of the opening as a whole.
        var unheard = new List<Finding>();
        PlacedContour waste = Waste(make, opening, Placement.Identity);
        bool climb = Way(make, waste).Climb;
        return TabsOf(make, opening, Placement.Identity, s, 0) is { } tabs
            && PlateCut.Track(waste, make.Bit.Radius, climb, unheard) is { } finish
            && PlateLead.Choose(waste, finish, climb, tabs, s, unheard) is not null;
    }

    /// <summary>The tabs of the waste, on the bed; none where a skin holds it, null where they don't fit.</summary>
    /// <param name="make">The piece's make.</param>
    /// <param name="opening">The opening.</param>
    /// <param name="placement">From the piece frame to the bed's; not mirrored.</param>
    /// <param name="s">Its numbers.</param>
    /// <param name="bottom">Height of the stock's lower face, mm.</param>
    internal static ImmutableArray<Tab>? TabsOf(Make make, Opening opening, Placement placement, CutSettings s, double bottom)
    {
        if (s.Skin > 0)
        {
            return [];
        }

        // Placed in the piece frame and carried over, so that a rounding on the bed does not decide whether they fit.
        return TabPlacing.Place(Waste(make, opening, Placement.Identity).Placed, s, bottom, new List<Finding>()) is { } tabs
            ? [.. tabs.Select(t => t with { Center = placement.Apply(t.Center), Along = placement.Direction(t.Along), Opening = opening.Name })]
            : null;
    }

    /// <summary>Cuts it; false when a finding says why not.</summary>
    /// <param name="moves">Takes the moves.</param>
    /// <param name="runs">Takes the runs.</param>
    /// <param name="opening">The opening.</param>
    /// <param name="of">The piece on the bed.</param>
    /// <param name="s">Its numbers.</param>
    /// <param name="stock">What is cut.</param>
    /// <param name="tabs">Its tabs, on the bed.</param>
    /// <param name="findings">Takes what is wrong.</param>
    internal static bool Add(
        MoveList moves, List<Run> runs, Opening opening, Placed of, CutSettings s, StockOnBed stock, ImmutableArray<Tab> tabs, ICollection<Finding> findings)
    {
        moves.InnerRadius = opening.Bit.Radius;
        bool done = PlateCut.Add(moves, runs, Waste(of.Piece.Make, opening, of.Placement), $"{opening.Called} of {of.Name}", s, stock, tabs, findings);
        moves.InnerRadius = 0;
        return done;
    }

    // The waste's edge as if it were a piece: clockwise, so that the material lies on its left as ever, and what is cut on its right.
    private static PlacedContour Waste(Make make, Opening opening, Placement placement)
    {
        Outline edge = OpeningOutline.Exact(opening, placement);
        return PlacedContour.Fit(new Placed(new PlainPiece(OfOwn(make), edge, make.Thickness), 1, placement, edge, CurveExtent.Box(edge)), HoleCut.Fit);
    }

    // Places that the job names are those of the outline.
    private static Make OfOwn(Make make) => make with { Cut = make.Cut with { Tabs = null, TabPlaces = [], Lead = null } };

    private static FinishRun Way(Make make, PlacedContour waste) => FinishRuns.OneWay(waste.Contour.Length, make.Cut.Direction ?? DirectionChoice.ByGrain);
}
