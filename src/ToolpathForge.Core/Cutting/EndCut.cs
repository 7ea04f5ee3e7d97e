using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Cutting;

/// <summary>
/// Cuts the profile into the end of a board. At each depth, corners at which the tooth would break out a long face are cut first, from that face
/// inwards; then the bit goes along a track beside the profile. The finish follows the profile in runs, each conventional or climb as the grain
/// asks. Where a run reaches the end of the profile it begins and ends beyond the stock; elsewhere runs overlap on arcs that touch the track.
/// </summary>
internal static class EndCut
{
    /// <summary>The bit would cut further into the fence than the job allows.</summary>
    internal static readonly FindingKind FenceRoom = new(
        "fence-room",
        Severity.Stop,
        "Leaving the end cut takes the bit {found} past the reference edge, into the fence; the job allows {allowed}.",
        "Fit a sacrificial, metal-free fence that may be cut that far, or one that stops short of the end, and state it as fence-room; or use a smaller bit.");

    /// <summary>Leaving the end cut would take the bit into the board beside.</summary>
    internal static readonly FindingKind NeighbourNear = new(
        "gap-for-end-cut",
        Severity.Stop,
        "Leaving the end cut asks for {found} between boards that lie side by side; the job leaves {allowed}.",
        "Widen the gap, leave it to the program, or use a smaller bit.");

    /// <summary>How far neighbouring runs overlap, mm (common practice).</summary>
    private const double Overlap = 2;

    /// <summary>Share of the allowance by which a lead arc comes off the finished track: within the slot, clear of the edge.</summary>
    private const double LeadShare = 0.8;

    /// <summary>Cuts one end; false when a finding says why not.</summary>
    internal static bool Add(
        MoveList moves, List<Run> runs, PlacedContour placed, CutSettings s, Clamping clamping, ICollection<Finding> findings)
    {
        Make make = placed.Placed.Piece.Make;
        StockOnBed stock = clamping.Stock with { Box = placed.Placed.Block };
        double radius = make.Bit.Radius;
        Contour profile = Profile(placed);
        if (EndTrack.Beside(placed, profile, radius + s.Allowance, stock, findings) is not { } rough
            || (s.Widen > 0 ? EndTrack.Beside(placed, profile, radius + s.Allowance + s.Widen, stock, findings) : rough) is not { } outer
            || EndTrack.Beside(placed, profile, radius, stock, findings) is not { } finish)
        {
            return false;
        }

        IReadOnlyList<Segment>? rows = ((BoardEndMake)make).Batch.Waste == Waste.Chips ? WasteRows.Of(placed, radius + s.Allowance, stock.Box, findings) : [];
        if (rows is null)
        {
            return false;
        }

        FinishPlan plan = FinishRuns.For(profile, Fibres(placed), After(placed), make.Cut.Direction ?? DirectionChoice.ByGrain, make.Bit.Diameter);
        bool climb = plan.RoughClimbs;
        string which = clamping.Pieces.Length == 1 ? make.Id : placed.Placed.Name;
        moves.Run = runs.Count;
        runs.Add(new Run(RunKind.Roughing, $"Rough {which}", s.Steps[^1], s.SlotFeed, climb, PlateCut.RoughReason(s)));
        foreach (double depth in s.Steps)
        {
            foreach (Segment row in rows)
            {
                Pass(moves, [(row, Purpose.Rough)], stock.Top - depth, s with { Feed = s.SlotFeed }, Purpose.Rough);
            }

            foreach (EndTrack track in outer == rough ? (ReadOnlySpan<EndTrack>)[rough] : [outer, rough])
            {
                // Beside a slot that is there already the bit cuts over part of its width only.
                CutSettings feeds = track != outer ? s : s with { Feed = s.SlotFeed };
                foreach (FinishRun corner in plan.CornersFirst)
                {
                    Pass(moves, track.Way(corner.From, corner.To, corner.Climb, 0, make.Bit.Diameter), stock.Top - depth, feeds, Purpose.Rough);
                }

                Pass(moves, track.Way(0, profile.Length, climb, 0, make.Bit.Diameter), stock.Top - depth, feeds, Purpose.Rough);
            }
        }

        foreach (FinishRun run in plan.CornersFirst.Concat(plan.Runs))
        {
            moves.Run = runs.Count;
            string name = plan.CornersFirst.Contains(run) ? "Corner" : "Finish";
            runs.Add(new Run(RunKind.Finishing, $"{name} {which}", s.Steps[^1], s.Feed, run.Climb, run.Reason));
            double from = run.From > 0 ? run.From - Overlap : 0;
            double to = run.To < profile.Length ? run.To + Overlap : profile.Length;
            List<(Segment Segment, Purpose Purpose)> way = finish.Way(from, to, run.Climb, s.Allowance * LeadShare, make.Bit.Diameter);
            (moves.HollowTurn, moves.HollowRadius) = (run.Climb ? 1 : -1, radius);
            foreach (double depth in s.FinishDepths)
            {
                Pass(moves, way, stock.Top - depth, s, Purpose.Finish);
            }
        }

        (moves.HollowTurn, moves.Run) = (0, -1);
        return CheckFence(placed.Placed, clamping.Gap, Math.Max(finish.MaxY, Math.Max(rough.MaxY, outer.MaxY)), findings);
    }

    /// <summary>The open chain that is cut, board on the left.</summary>
    internal static Contour Profile(PlacedContour placed)
    {
        FittedContour fitted = placed.Fitted;
        var segments = new List<Segment>();
        for (int i = 0; i < fitted.Contour.SegmentCount; i++)
        {
            if (placed.Placed.Piece.Roles[fitted.CurveOf[i]] != EdgeRole.Existing)
            {
                segments.Add(fitted.Contour[i]);
            }
        }

        return Contour.FromSegments(CollectionsMarshal.AsSpan(segments), false);
    }

    /// <summary>
    /// Directions of the fibres on the bed that the program must serve, radians: one for boards cut at one end, two where a slope comes back from the
    /// other side when the board is turned end over end; none without grain.
    /// </summary>
    internal static ImmutableArray<double> Fibres(PlacedContour placed)
    {
        Make make = placed.Placed.Piece.Make;
        if (!make.Material.HasGrain)
        {
            return [];
        }

        double slope = make is BoardEndMake end ? end.GrainSlope * Math.PI / 180 : 0;
        double On(double angle) => placed.Placed.Placement.Direction(Point2.Direction(angle)).Angle;
        return slope != 0 && ((BoardEndMake)make).Batch.BothEnds ? [On(slope), On(-slope)] : [On(slope)];
    }

    // The face that the tooth would break out at the profile's end: the board's own edge that follows.
    private static Point2 After(PlacedContour placed)
    {
        int next = placed.Placed.Piece.Roles.IndexOf(EdgeRole.Existing);
        return placed.Placed.Exact.Curves[next].DirectionAt(0);
    }

    private static void Pass(MoveList moves, List<(Segment Segment, Purpose Purpose)> way, double z, CutSettings s, Purpose purpose)
    {
        moves.TravelTo(way[0].Segment.Start);
        moves.Descend(z, s.Plunge);
        foreach ((Segment segment, Purpose why) in way)
        {
            moves.Along(segment, z, s.Feed, why == Purpose.Finish ? purpose : why);
        }

        moves.Retract();
    }

    // At the fence the job says how far the bit may go past the reference edge; elsewhere it stays 2 mm off the neighbour.
    private static bool CheckFence(Placed placed, double gap, double farthest, ICollection<Finding> findings)
    {
        var make = (BoardEndMake)placed.Piece.Make;
        double past = farthest + make.Bit.Radius - placed.Block.MaxY;
        double allowed = placed.Number == 1 ? make.FenceRoom : gap - 2;
        if (past <= allowed + 1e-6)
        {
            return true;
        }

        findings.Add(placed.Number == 1
            ? Finding.Of(FenceRoom, make.At["end.fence-room"].OfMake(make.Id), Quantity.Length(past), Quantity.Length(allowed))
            : Finding.Of(NeighbourNear, make.At["end.gap"].OfMake(make.Id), Quantity.Length(past + 2), Quantity.Length(gap)));
        return false;
    }
}
