using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Cutting;

/// <summary>Finds places for tabs: where the job wants them, or spread evenly over the straight free edges.</summary>
internal static class TabPlacing
{
    /// <summary>No straight unfinished edge has room.</summary>
    internal static readonly FindingKind Impossible = new(
        "tabs-impossible",
        Severity.Stop,
        "There is room for {found} tabs of {length} on the straight unfinished edges; {allowed} are wanted.",
        "Shorten the tabs, ask for fewer (three at least) or square ones, give a plate more hold or seat, or measure and state the sheet's flatness so that a skin can hold it.");

    /// <summary>Ramped tabs have no room, square ones do.</summary>
    internal static readonly FindingKind SquareInstead = new(
        "tabs-square-instead",
        Severity.Note,
        "Ramped tabs of {length} have no room on the straight unfinished edges, so the tabs are square.",
        "Nothing needs doing: the bit goes straight down after each, and plunges. Shorter tabs may have room for ramps.");

    /// <summary>Fewer than three tabs let a plate turn as it comes free.</summary>
    internal static readonly FindingKind TooFew = new(
        "tabs-too-few",
        Severity.Stop,
        "{found} tabs cannot hold a plate still; at least {allowed} are needed.",
        "Ask for three tabs or more.");

    /// <summary>The place for a tab is not at a straight edge that may carry one.</summary>
    internal static readonly FindingKind OffEdge = new(
        "tab-off-edge",
        Severity.Stop,
        "The place for a tab is {found} from the nearest straight edge that is not finished; {allowed} at most is taken as meant.",
        "Put it on a straight edge of the plate away from the curve and the end cut.");

    /// <summary>The place for a tab is too near a corner or another tab.</summary>
    internal static readonly FindingKind NoRoomThere = new(
        "tab-no-room",
        Severity.Stop,
        "There is {found} of straight edge beside the place for a tab, up to a corner or the next tab; its ramp and the bit's turn take {allowed}.",
        "Move it along the edge, or make the tabs shorter or square.");

    /// <summary>A square tab ends in a plunge.</summary>
    internal static readonly FindingKind SquareNeedsPlunge = new(
        "tab-square-needs-plunge",
        Severity.Stop,
        "After a square tab the bit goes straight down, and {bit} does not cut at its center.",
        "Ask for ramped tabs, or take a bit that plunges.");

    private const int Fewest = 3;

    /// <summary>A place written by hand may lie this far beside the edge, mm.</summary>
    private const double Near = 5;

    /// <summary>
    /// The tabs of a piece, clear of corners by two diameters; null with a finding when they do not fit. Where the job leaves their form open, they are ramped if those fit, else square
    /// if the bit plunges.
    /// </summary>
    internal static ImmutableArray<Tab>? Place(Placed placed, CutSettings settings, double bottom, ICollection<Finding> findings)
    {
        Make make = placed.Piece.Make;
        var found = new List<Finding>();
        ImmutableArray<Tab>? tabs = Place(placed, settings, bottom, make.Cut.TabForm ?? TabForm.Ramped, found);
        if (tabs is null && make.Cut.TabForm is null && make.Bit.CanPlunge && settings.TabCount >= Fewest)
        {
            found.Clear();
            tabs = Place(placed, settings, bottom, TabForm.Square, found);
            if (tabs is not null)
            {
                found.Add(Finding.Of(SquareInstead, make.At["cut.tabs"].OfMake(make.Id), Arg.Of("length", Quantity.Length(settings.TabLength))));
            }
        }

        foreach (Finding finding in found)
        {
            findings.Add(finding);
        }

        return tabs;
    }

    private static ImmutableArray<Tab>? Place(Placed placed, CutSettings settings, double bottom, TabForm form, List<Finding> findings)
    {
        Make make = placed.Piece.Make;
        Place at = make.At["cut.tabs"].OfMake(make.Id);
        if (settings.TabCount < Fewest)
        {
            findings.Add(Finding.Of(TooFew, at, Quantity.Number(settings.TabCount), Quantity.Number(Fewest)));
            return null;
        }

        bool square = form == TabForm.Square;
        if (square && !make.Bit.CanPlunge)
        {
            findings.Add(Finding.Of(SquareNeedsPlunge, make.At["cut.tab-form"].OfMake(make.Id), Arg.Of("bit", make.Bit.Name)));
            return null;
        }

        double flat = (settings.TabLength + make.Bit.Diameter) / 2;
        double reach = square ? flat : flat + settings.TabSide(settings.TabHeight + settings.Overcut);
        double clear = 2 * make.Bit.Diameter;
        var edges = new List<FreeEdge>();
        for (int i = 0; i < placed.Exact.Curves.Length; i++)
        {
            if (placed.Piece.Roles[i] == EdgeRole.Free && placed.Exact.Curves[i] is LineCurve line)
            {
                edges.Add(new FreeEdge(line, (line.To - line.From).Unit(), line.From.DistanceTo(line.To)));
            }
        }

        // Tabs next to each other keep a lead's room between them as well.
        double apart = (2 * reach) + clear;
        List<(FreeEdge Edge, double S)>? places = make.Cut.TabPlaces.Length > 0
            ? AsWanted(placed, edges, reach + clear, apart, findings)
            : Spread(edges, settings, reach + clear, apart, at, findings);
        return places is null
            ? null
            : [.. places.Select(p => new Tab(
                p.Edge.Line.From + (p.Edge.Along * p.S), p.Edge.Along, settings.TabLength, reach, bottom + settings.TabHeight, flat))];
    }

    private static List<(FreeEdge Edge, double S)>? AsWanted(
        Placed placed, List<FreeEdge> edges, double fromCorner, double apart, List<Finding> findings)
    {
        Make make = placed.Piece.Make;
        var places = new List<(FreeEdge Edge, double S)>();
        bool sound = true;
        foreach (PlaceOnEdge wanted in make.Cut.TabPlaces)
        {
            Point2 point = placed.Placement.Apply(wanted.Point);
            FreeEdge? edge = edges.MinBy(e => new Segment(e.Line.From, e.Line.To).Distance(point));
            double off = edge is null ? double.PositiveInfinity : new Segment(edge.Line.From, edge.Line.To).Distance(point);
            Place at = wanted.At.Table.OfMake(make.Id);
            if (edge is null || off > Near)
            {
                findings.Add(Finding.Of(OffEdge, at, Quantity.Length(edge is null ? 1e4 : off), Quantity.Length(Near)));
                sound = false;
                continue;
            }

            double s = edge.Along.Dot(point - edge.Line.From);
            double room = Math.Min(s, edge.Length - s);
            double besides = places.Where(p => p.Edge == edge).Select(p => Math.Abs(p.S - s)).DefaultIfEmpty(double.PositiveInfinity).Min();
            if (room < fromCorner || besides < apart)
            {
                bool corner = room < fromCorner;
                findings.Add(Finding.Of(
                    NoRoomThere, at, Quantity.Length(Math.Max(0, corner ? room : besides)), Quantity.Length(corner ? fromCorner : apart)));
                sound = false;
                continue;
            }

            places.Add((edge, s));
        }

        return sound ? places : null;
    }

    private static List<(FreeEdge Edge, double S)>? Spread(
        List<FreeEdge> edges, CutSettings settings, double fromCorner, double apart, Place at, List<Finding> findings)
    {
        List<FreeEdge> roomy = [.. edges.Where(e => e.Length >= 2 * fromCorner)];
        double[] rooms = [.. roomy.Select(e => e.Length - (2 * fromCorner))];
        int most = rooms.Sum(r => 1 + (int)Math.Floor(r / apart));
        if (most < settings.TabCount)
        {
            findings.Add(Finding.Of(
                Impossible, at, Quantity.Number(most), Quantity.Number(settings.TabCount), Arg.Of("length", Quantity.Length(settings.TabLength))));
            return null;
        }

        int[] shares = Share(rooms, settings.TabCount, apart);
        var places = new List<(FreeEdge Edge, double S)>();
        for (int i = 0; i < rooms.Length; i++)
        {
            for (int k = 0; k < shares[i]; k++)
            {
                places.Add((roomy[i], fromCorner + (shares[i] == 1 ? rooms[i] / 2 : rooms[i] * k / (shares[i] - 1))));
            }
        }

        return places;
    }

    // One tab at a time to the edge whose tabs are then the furthest apart; the first edge wins a tie.
    private static int[] Share(double[] rooms, int count, double apart)
    {
        int[] shares = new int[rooms.Length];
        for (int placed = 0; placed < count; placed++)
        {
            int best = -1;
            double widest = double.NegativeInfinity;
            for (int i = 0; i < rooms.Length; i++)
            {
                if (shares[i] > Math.Floor(rooms[i] / apart))
                {
                    continue;
                }

                double gap = (rooms[i] + apart) / (shares[i] + 1);
                if (gap > widest)
                {
                    (widest, best) = (gap, i);
                }
            }

            shares[best]++;
        }

        return shares;
    }

    /// <summary>A straight edge that may carry tabs.</summary>
    private sealed record FreeEdge(LineCurve Line, Point2 Along, double Length);
}
