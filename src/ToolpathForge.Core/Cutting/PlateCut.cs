using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Cutting;

/// <summary>
/// Cuts a piece all round from the outside, or an opening all round from within. Roughing goes round at the bit's radius and an allowance, ramping down along the contour from one
/// step to the next, on two tracks where the slot is to be wider than the bit; the finish follows the piece at full depth, entered and left by a
/// <see cref="PlateLead"/>. Tabs are left on the straight free edges by lifting the bit over them; or a skin stays under the whole cut.
/// </summary>
internal static class PlateCut
{
    /// <summary>The parallel outline could not be vouched for, or is in several parts: the piece folds in on itself by less than the bit.</summary>
    internal static readonly FindingKind NotOneLoop = new(
        "outline-not-one-loop",
        Severity.Stop,
        "The bit's track round the piece falls into {found} loops; {allowed} is expected.",
        "Use a smaller bit, or open the narrow part of the outline.");

    /// <summary>Cuts one plate, or one opening (its edge runs clockwise) so that its waste stays whole; its moves are added to the list and its runs to the runs. False when a finding says why not.</summary>
    internal static bool Add(
        MoveList moves, List<Run> runs, PlacedContour placed, string name, CutSettings s, StockOnBed stock, ImmutableArray<Tab> tabs, ICollection<Finding> findings)
    {
        Make make = placed.Placed.Piece.Make;
        FinishRun way = FinishRuns.OneWay(placed.Contour.Length, make.Cut.Direction ?? DirectionChoice.ByGrain);
        double roughing = make.Bit.Radius + s.Allowance;
        if (Track(placed, roughing, way.Climb, findings) is not { } rough
            || (s.Widen > 0 ? Track(placed, roughing + s.Widen, way.Climb, findings) : rough) is not { } outer
            || Track(placed, make.Bit.Radius, way.Climb, findings) is not { } finish
            || PlateLead.Choose(placed, finish, way.Climb, tabs, s, findings) is not { } lead)
        {
            return false;
        }

        moves.Run = runs.Count;
        runs.Add(new Run(RunKind.Roughing, $"Rough {name}", s.Steps[^1], s.SlotFeed, way.Climb, RoughReason(s) + (placed.IsOpening ? $" The wood within stays whole, held by {(tabs.IsEmpty ? "the skin" : "tabs")}." : "")));
        Rough(moves, rough, outer, lead.In.Start, s, stock, tabs);

        moves.Run = runs.Count;
        runs.Add(new Run(RunKind.Finishing, $"Finish {name}", s.Steps[^1], s.Feed, way.Climb, way.Reason));
        (moves.HollowTurn, moves.HollowRadius) = (way.Climb ? 1 : -1, make.Bit.Radius);
        Finish(moves, finish, lead, s, stock, tabs);
        (moves.HollowTurn, moves.Run) = (0, -1);
        return true;
    }

    /// <summary>What roughing does, in words.</summary>
    internal static string RoughReason(CutSettings s) => "Takes the waste off, short of the finished edge"
        + (s.Widen > 0 ? ", on two tracks so that the deep slot is wider than the bit and chips come out." : s.SlotFeed < s.Feed ? ", slowed because the bit cuts over its whole width." : ".");

    /// <summary>The closed track at a distance outside the piece, or within an opening, walked the way the finish goes; null with a finding if there is not just one.</summary>
    internal static PathRuler? Track(PlacedContour placed, double distance, bool climb, ICollection<Finding> findings)
    {
        OffsetResult offset = Offsetter.Closed(placed.Contour, placed.IsOpening ? -distance : distance);
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

        // Outside a piece, climbing goes clockwise; within an opening the other way.
        Contour track = offset.Loops[0].Contour;
        return new PathRuler(track.IsCounterClockwise == (climb != placed.IsOpening) ? track.Reversed() : track);
    }

    private static void Rough(MoveList moves, PathRuler path, PathRuler first, Point2 start, CutSettings s, StockOnBed stock, ImmutableArray<Tab> tabs)
    {
        const double Skim = 0.5;
        double slope = Math.Tan(s.RampAngle * Math.PI / 180);
        double z = stock.Top + Skim;
        double at = first.Nearest(start);
        moves.TravelTo(first.PointAt(at));
        moves.Descend(z, s.Plunge);
        foreach (double depth in s.Steps)
        {
            double level = stock.Top - depth;
            double ramp = (z - level) / slope;
            double end = at + ramp + first.Length;
            HeightProfile overTabs = TabHeights(first, tabs, s, stock.Bottom - s.Overcut, at, end);
            HeightProfile heights = HeightProfile.Through((at, z), (at + ramp, level)).Over(overTabs);
            moves.Along(first, at, at + ramp, heights, (s.SlotFeed, Purpose.Rough), (Math.Min(s.SlotFeed, s.RampFeed), Purpose.Ramp));
            moves.Along(first, at + ramp, end, heights, (s.SlotFeed, Purpose.Rough), (Math.Min(s.SlotFeed, s.TabFeed), Purpose.OverTab));
            at = end;
            z = heights.At(end);
            if (first != path)
            {
                Inner(moves, path, s, stock, tabs, level);
                moves.TravelTo(first.PointAt(at));
                moves.Descend(z, s.Plunge);
            }
        }

        moves.Retract();
    }

    // The second track of a widened slot: beside the first at the same depth, so that the bit cuts over part of its width only.
    private static void Inner(MoveList moves, PathRuler path, CutSettings s, StockOnBed stock, ImmutableArray<Tab> tabs, double level)
    {
        double from = path.Nearest(moves.At.Flat);
        double to = from + path.Length;
        HeightProfile heights = HeightProfile.Level(level).Over(TabHeights(path, tabs, s, stock.Bottom - s.Overcut, from, to));
        moves.Along(new Segment(moves.At.Flat, path.PointAt(from)), moves.At.Z, s.SlotFeed, Purpose.Rough);
        moves.Along(path, from, to, heights, (s.Feed, Purpose.Rough), (s.TabFeed, Purpose.OverTab));
    }

    private static void Finish(MoveList moves, PathRuler path, PlateLead lead, CutSettings s, StockOnBed stock, ImmutableArray<Tab> tabs)
    {
        HeightProfile overTabs = TabHeights(path, tabs, s, stock.Bottom - s.Overcut, lead.From, lead.To);
        foreach (double depth in s.FinishDepths)
        {
            double level = stock.Top - depth;
            moves.TravelTo(lead.In.Start);
            moves.Descend(level, s.Plunge);
            moves.Along(lead.In, level, s.Feed, Purpose.LeadIn);
            moves.Along(path, lead.From, lead.To, HeightProfile.Level(level).Over(overTabs), (s.Feed, Purpose.Finish), (s.TabFeed, Purpose.OverTab));
            moves.Along(lead.Out, level, s.Feed, Purpose.LeadOut);
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
