using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Cutting;

/// <summary>
/// Cuts a piece all round from the outside. Roughing goes round at the bit's radius and an allowance, ramping down along the contour from one
/// step to the next; the finish follows the piece at full depth, entered and left on arcs that touch it from the roughed slot. Tabs are left on
/// the straight free edges by lifting the bit over them.
/// </summary>
internal static class PlateCut
{
    /// <summary>The parallel outline could not be vouched for, or is in several parts: the piece folds in on itself by less than the bit.</summary>
    internal static readonly FindingKind NotOneLoop = new(
        "outline-not-one-loop",
        Severity.Stop,
        "The bit's track round the piece falls into {found} loops; {allowed} is expected.",
        "Use a smaller bit, or open the narrow part of the outline.");

    /// <summary>How far past its beginning the finish goes on, so that no mark is left at the joint, mm: common practice.</summary>
    private const double Overlap = 2;

    /// <summary>Cuts one plate; its moves are added to the list and its runs to the runs. False when a finding says why not.</summary>
    internal static bool Add(
        MoveList moves, List<Run> runs, PlacedContour placed, CutSettings s, StockOnBed stock, ImmutableArray<Tab> tabs, ICollection<Finding> findings)
    {
        Make make = placed.Placed.Piece.Make;
        FinishRun way = FinishRuns.OneWay(placed.Contour.Length, make.Cut.Direction ?? DirectionChoice.ByGrain);
        if (Track(placed, make.Bit.Radius + s.Allowance, way.Climb, findings) is not { } rough
            || Track(placed, make.Bit.Radius, way.Climb, findings) is not { } finish
            || PlateLead.Choose(placed, finish, tabs, s, findings) is not { } lead)
        {
            return false;
        }

        string number = placed.Placed.Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        string name = $"{make.Id} no. {number}";
        moves.Run = runs.Count;
        runs.Add(new Run($"Rough {name}", s.Steps[^1], s.Feed, way.Climb, "Takes the waste off, short of the finished edge."));
        Rough(moves, rough, rough.Nearest(lead.Enter), s, stock, tabs);

        moves.Run = runs.Count;
        runs.Add(new Run($"Finish {name}", s.Steps[^1], s.Feed, way.Climb, way.Reason));
        Finish(moves, finish, lead, s, stock, tabs);
        moves.Run = -1;
        return true;
    }

    /// <summary>The closed track at a distance outside the piece, walked the way the finish goes; null with a finding if there is not just one.</summary>
    internal static PathRuler? Track(PlacedContour placed, double distance, bool climb, ICollection<Finding> findings)
    {
        OffsetResult offset = Offsetter.Closed(placed.Contour, distance);
        if (offset.Unproven is { } unproven)
        {
            findings.Add(unproven);
            return null;
        }

        if (offset.Loops.Length != 1)
        {
            Place where = placed.Placed.Piece.Make.At["shape"].OfMake(placed.Placed.Piece.Make.Id);
            findings.Add(Finding.Of(NotOneLoop, where, Quantity.Number(offset.Loops.Length), Quantity.Number(1)));
            return null;
        }

        // Outside a piece, climbing goes clockwise.
        Contour track = offset.Loops[0].Contour;
        return new PathRuler(track.IsCounterClockwise == climb ? track.Reversed() : track);
    }

    private static void Rough(MoveList moves, PathRuler path, double start, CutSettings s, StockOnBed stock, ImmutableArray<Tab> tabs)
    {
        const double Skim = 0.5;
        double slope = Math.Tan(s.RampAngle * Math.PI / 180);
        double z = stock.Top + Skim;
        double at = start;
        moves.TravelTo(path.PointAt(at));
        moves.Descend(z, s.Plunge);
        foreach (double depth in s.Steps)
        {
            double level = stock.Top - depth;
            double ramp = (z - level) / slope;
            double end = at + ramp + path.Length;
            HeightProfile overTabs = TabHeights(path, tabs, s, stock.Bottom - s.Overcut, at, end);
            HeightProfile heights = HeightProfile.Through((at, z), (at + ramp, level)).Over(overTabs);
            moves.Along(path, at, at + ramp, heights, (s.Feed, Purpose.Rough), (s.RampFeed, Purpose.Ramp));
            moves.Along(path, at + ramp, end, heights, (s.Feed, Purpose.Rough), (s.RampFeed, Purpose.OverTab));
            at = end;
            z = heights.At(end);
        }

        moves.Retract();
    }

    private static void Finish(MoveList moves, PathRuler path, PlateLead lead, CutSettings s, StockOnBed stock, ImmutableArray<Tab> tabs)
    {
        double bottom = stock.Bottom - s.Overcut;
        double from = path.Nearest(lead.Touch);
        double to = from + path.Length + Overlap;
        HeightProfile overTabs = TabHeights(path, tabs, s, bottom, from, to);
        foreach (double depth in s.FinishDepths)
        {
            double level = stock.Top - depth;
            moves.TravelTo(lead.Enter);
            moves.Descend(level, s.Plunge);
            moves.Along(lead.In, level, s.Feed, Purpose.LeadIn);
            moves.Along(path, from, to, HeightProfile.Level(level).Over(overTabs), (s.Feed, Purpose.Finish), (s.RampFeed, Purpose.OverTab));
            moves.Along(lead.OutFrom(path.PointAt(to)), level, s.Feed, Purpose.LeadOut);
        }

        moves.Retract();
    }

    // Height of the bit over every tab met between two distances, however many times round.
    private static HeightProfile TabHeights(PathRuler path, ImmutableArray<Tab> tabs, CutSettings s, double bottom, double from, double to)
    {
        HeightProfile heights = HeightProfile.Level(bottom);
        foreach (Tab tab in tabs)
        {
            double middle = path.Nearest(tab.Center);
            double flat = tab.Flat;
            for (double lap = Math.Floor((from - middle - tab.Reach) / path.Length); ; lap++)
            {
                double at = middle + (lap * path.Length);
                if (at - tab.Reach > to)
                {
                    break;
                }

                if (at + tab.Reach >= from)
                {
                    heights = heights.Over(HeightProfile.Through(
                        (at - tab.Reach, bottom), (at - flat, tab.Top), (at + flat, tab.Top), (at + tab.Reach, bottom)));
                }
            }
        }

        return heights;
    }
}
