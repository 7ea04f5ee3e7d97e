using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Cutting;

/// <summary>
/// Cuts the profile into the end of a board: step by step along a track beside the profile, then once along the profile itself at full depth.
/// Every pass begins and ends beyond the stock, so the bit goes down in the open.
/// </summary>
internal static class EndCut
{
    /// <summary>The bit would cut further into the fence than the job allows.</summary>
    internal static readonly FindingKind FenceRoom = new(
        "fence-room",
        Severity.Stop,
        "Leaving the end cut takes the bit {found} past the reference edge, into the fence; the job allows {allowed}.",
        "Fit a sacrificial, metal-free fence that may be cut that far, or one that stops short of the end, and state it as fence-room; or use a smaller bit.");

    /// <summary>The track beside the profile is in several parts.</summary>
    internal static readonly FindingKind NotOneTrack = new(
        "profile-not-one-track",
        Severity.Stop,
        "The bit's track along the profile falls into {found} parts; {allowed} is expected.",
        "Use a smaller bit, or an easier curve.");

    /// <summary>Cuts one end; false when a finding says why not.</summary>
    internal static bool Add(
        MoveList moves, List<Run> runs, PlacedContour placed, CutSettings s, StockOnBed stock, ICollection<Finding> findings)
    {
        double radius = placed.Placed.Piece.Make.Bit.Radius;
        if (Track(placed, radius + s.Allowance, s, stock, findings) is not { } rough || Track(placed, radius, s, stock, findings) is not { } finish)
        {
            return false;
        }

        string name = placed.Placed.Piece.Make.Id;
        moves.Run = runs.Count;
        runs.Add(new Run($"Rough {name}", s.Steps[^1], s.Feed, s.Climb, "Takes the waste off in steps, short of the finished edge."));
        foreach (double depth in s.Steps)
        {
            Pass(moves, rough, stock.Top - depth, s, Purpose.Rough);
        }

        moves.Run = runs.Count;
        runs.Add(new Run($"Finish {name}", s.Steps[^1], s.Feed, s.Climb, s.DirectionReason));
        Pass(moves, finish, stock.Top - s.Steps[^1], s, Purpose.Finish);
        moves.Run = -1;
        return CheckFence(placed, finish, radius, findings);
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

        return Contour.FromSegments(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(segments), false);
    }

    private static void Pass(MoveList moves, Contour track, double z, CutSettings s, Purpose purpose)
    {
        moves.TravelTo(track.Start);
        moves.Descend(z, s.Plunge);
        for (int i = 0; i < track.SegmentCount; i++)
        {
            Purpose why = i == 0 ? Purpose.LeadIn : i == track.SegmentCount - 1 ? Purpose.LeadOut : purpose;
            moves.Along(track[i], z, s.Feed, why);
        }

        moves.Retract();
    }

    private static Contour? Track(PlacedContour placed, double distance, CutSettings s, StockOnBed stock, ICollection<Finding> findings)
    {
        // The board is on the left, so the bit runs on the right.
        OffsetResult offset = Offsetter.OneSide(Profile(placed), -distance);
        if (offset.Unproven is { } unproven)
        {
            findings.Add(unproven);
            return null;
        }

        if (offset.Loops.Length != 1)
        {
            Place where = placed.Placed.Piece.Make.At["shape"].OfMake(placed.Placed.Piece.Make.Id);
            findings.Add(Finding.Of(NotOneTrack, where, Quantity.Number(offset.Loops.Length), Quantity.Number(1)));
            return null;
        }

        Contour beside = offset.Loops[0].Contour;
        double clear = placed.Placed.Piece.Make.Bit.Radius + 2;
        var segments = new List<Segment>();
        segments.AddRange(OpenLead.Leaving(beside.Reversed(), boardOnLeft: false, stock.Box, clear).Select(l => l.Reversed).Reverse());
        for (int i = 0; i < beside.SegmentCount; i++)
        {
            segments.Add(beside[i]);
        }

        segments.AddRange(OpenLead.Leaving(beside, boardOnLeft: true, stock.Box, clear));
        Contour track = Contour.FromSegments(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(segments), false);
        return s.Climb ? track.Reversed() : track;
    }

    private static bool CheckFence(PlacedContour placed, Contour track, double radius, ICollection<Finding> findings)
    {
        // Laid as a right-hand piece, the fence is the line Y = 0 and the board lies below it.
        var make = (BoardEndMake)placed.Placed.Piece.Make;
        double past = track.Box.MaxY + radius;
        if (past <= make.FenceRoom + 1e-6)
        {
            return true;
        }

        findings.Add(Finding.Of(FenceRoom, make.At["fence-room"].OfMake(make.Id), Quantity.Length(past), Quantity.Length(make.FenceRoom)));
        return false;
    }
}
