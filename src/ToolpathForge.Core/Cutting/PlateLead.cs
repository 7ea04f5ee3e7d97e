using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Cutting;

/// <summary>
/// How the finish comes onto a plate's edge and leaves it without a mark. By rank: at a sharp outside corner, straight on past it both ways, so that
/// no bit ever turns on the edge; on a straight free edge, on arcs that touch the track; else on such arcs where the track bends least. Both ends lie
/// in the slot that roughing has cut, clear of corners and tabs.
/// </summary>
/// <param name="In">From where the bit goes down to the track.</param>
/// <param name="From">Distance along the track where it is met.</param>
/// <param name="To">Distance, a lap later, where it is left.</param>
/// <param name="Out">From the track back into the slot.</param>
internal sealed record PlateLead(Segment In, double From, double To, Segment Out)
{
    /// <summary>No stretch of edge is long enough.</summary>
    internal static readonly FindingKind NoRoom = new(
        "lead-no-room",
        Severity.Stop,
        "The longest stretch of edge between tabs and corners is {found}; coming onto the finished edge without a mark takes {allowed}.",
        "Use fewer or shorter tabs, a smaller bit, or a longer plate.");

    /// <summary>The job's place for the lead cannot be used.</summary>
    internal static readonly FindingKind PlaceUnusable = new(
        "lead-place-unusable",
        Severity.Stop,
        "The finish cannot begin at the place asked for: it is {found} from the edge or from where there is room; {allowed} at most is taken as meant.",
        "Name a place on the edge, clear of tabs by the bit's diameter, or leave the lead to the plan.");

    /// <summary>How far past its beginning the finish goes on, so that no mark is left at the joint, mm (common practice).</summary>
    private const double Overlap = 2;

    /// <summary>Room that stays free on both sides of the joint, mm (common practice).</summary>
    private const double Spare = 4;

    /// <summary>A place written by hand may lie this far beside the edge, mm.</summary>
    private const double Near = 15;

    /// <summary>The best lead; null with a finding when there is none.</summary>
    internal static PlateLead? Choose(PlacedContour placed, PathRuler finish, bool climb, ImmutableArray<Tab> tabs, CutSettings s, ICollection<Finding> findings)
    {
        Make make = placed.Placed.Piece.Make;
        var places = new LeadPlaces(placed, finish, tabs, s, make.Bit);
        if (make.Cut.Lead is { } wanted)
        {
            Point2 point = placed.Placed.Placement.Apply(wanted.Point);
            double at = finish.Nearest(point);
            double off = placed.Contour.Distance(point);
            PlateLead? there = off <= Near ? AtCorner(places.CornerNear(at), placed, finish, s, make) ?? OnArcs(places.Near(at), placed, finish, climb, s, make) : null;
            if (there is null)
            {
                findings.Add(Finding.Of(PlaceUnusable, wanted.At.Table.OfMake(make.Id), Quantity.Length(off), Quantity.Length(Near)));
            }

            return there;
        }

        foreach (TrackCorner corner in places.Corners())
        {
            if (AtCorner(corner, placed, finish, s, make) is { } lead)
            {
                return lead;
            }
        }

        if (OnArcs(places.Straightest(EdgeRole.Free) ?? places.Straightest(null) ?? places.Smoothest(), placed, finish, climb, s, make) is { } onEdge)
        {
            return onEdge;
        }

        findings.Add(Finding.Of(NoRoom, make.At["bit"].OfMake(make.Id), Quantity.Length(places.LongestRoom), Quantity.Length(Needed(s, make))));
        return null;
    }

    /// <summary>Length of track that arcs onto it and off it take, mm.</summary>
    internal static double Needed(CutSettings s, Make make) =>
        (2 * make.Bit.Diameter * Math.Sin(Math.Acos(1 - Math.Min(1, s.Allowance / make.Bit.Diameter)))) + Spare;

    // Past a corner the bit is clear of the piece by as much as the roughing left once it is √(2Ra + a²) past it: there the slot begins.
    private static PlateLead? AtCorner(TrackCorner? corner, PlacedContour placed, PathRuler finish, CutSettings s, Make make)
    {
        if (corner is null)
        {
            return null;
        }

        double past = Math.Sqrt((2 * make.Bit.Radius * s.Allowance) + (s.Allowance * s.Allowance));
        Point2 on = finish.PointAt(corner.Leaves);
        Point2 off = finish.PointAt(corner.Arrives);
        var lead = new PlateLead(
            new Segment(on - (finish.DirectionAt(corner.Leaves) * past), on),
            corner.Leaves,
            corner.Arrives + finish.Length,
            new Segment(off, off + (finish.DirectionAt(corner.Arrives - 1e-9) * past)));
        double clear = make.Bit.Radius + s.Allowance - 1e-6;
        return placed.Contour.Distance(lead.In.Start) >= clear && placed.Contour.Distance(lead.Out.End) >= clear ? lead : null;
    }

    private static PlateLead? OnArcs(double? at, PlacedContour placed, PathRuler finish, bool climb, CutSettings s, Make make)
    {
        if (at is not { } from)
        {
            return null;
        }

        double to = from + finish.Length + Overlap;
        double diameter = make.Bit.Diameter;
        (Contour Edge, double Distance) clear = (placed.Contour, make.Bit.Radius);
        return new PlateLead(
            SlotLead.Leaving(finish, from, forward: false, wasteOnRight: climb, s.Allowance, diameter, clear).Reversed,
            from,
            to,
            SlotLead.Leaving(finish, to, forward: true, wasteOnRight: !climb, s.Allowance, diameter, clear));
    }
}
