using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Shapes;

namespace ToolpathForge.Cutting;

/// <summary>A bridge left standing between a piece and its waste, on a straight unfinished edge.</summary>
/// <param name="Center">Middle of the tab on the finished edge, on the bed.</param>
/// <param name="Along">Unit direction of the edge there.</param>
/// <param name="Length">Length at its top, mm.</param>
/// <param name="Reach">From its middle to where the bit is back at full depth, along the edge, mm.</param>
/// <param name="Top">Height of its upper face in the program's Z, mm.</param>
/// <param name="Flat">From its middle to where the bit begins to sink, along the edge, mm: half the tab and the bit's radius.</param>
public sealed record Tab(Point2 Center, Point2 Along, double Length, double Reach, double Top, double Flat);

/// <summary>Finds places for tabs.</summary>
internal static class TabPlacing
{
    /// <summary>No straight unfinished edge has room.</summary>
    internal static readonly FindingKind Impossible = new(
        "tabs-impossible",
        Severity.Stop,
        "There is room for {found} tabs of {length} on the straight unfinished edges; {allowed} are wanted.",
        "Shorten the tabs, ask for fewer (three at least), or give the plate more hold or seat.");

    /// <summary>Fewer than three tabs let a plate turn as it comes free.</summary>
    internal static readonly FindingKind TooFew = new(
        "tabs-too-few",
        Severity.Stop,
        "{found} tabs cannot hold a plate still; at least {allowed} are needed.",
        "Ask for three tabs or more.");

    private const int Fewest = 3;

    /// <summary>
    /// Spreads tabs evenly over the straight free edges, clear of corners by two diameters; null with a finding when they do not fit.
    /// </summary>
    internal static ImmutableArray<Tab>? Place(Placed placed, CutSettings settings, double bottom, ICollection<Finding> findings)
    {
        double diameter = placed.Piece.Make.Bit.Diameter;
        Place at = placed.Piece.Make.At["cut.tabs"].OfMake(placed.Piece.Make.Id);
        if (settings.TabCount < Fewest)
        {
            findings.Add(Finding.Of(TooFew, at, Quantity.Number(settings.TabCount), Quantity.Number(Fewest)));
            return null;
        }

        double slope = Math.Tan(settings.RampAngle * Math.PI / 180);
        double reach = ((settings.TabLength + diameter) / 2) + ((settings.TabHeight + settings.Overcut) / slope);
        double clear = 2 * diameter;
        var rooms = new List<(Point2 From, Point2 Along, double Room)>();
        for (int i = 0; i < placed.Exact.Curves.Length; i++)
        {
            if (placed.Piece.Roles[i] == EdgeRole.Free && placed.Exact.Curves[i] is LineCurve line)
            {
                Point2 along = (line.To - line.From).Unit();
                double room = line.From.DistanceTo(line.To) - (2 * (clear + reach));
                if (room >= 0)
                {
                    rooms.Add((line.From + (along * (clear + reach)), along, room));
                }
            }
        }

        // Tabs next to each other keep a lead's room between them as well.
        double apart = (2 * reach) + clear;
        int most = rooms.Sum(r => 1 + (int)Math.Floor(r.Room / apart));
        if (most < settings.TabCount)
        {
            findings.Add(Finding.Of(
                Impossible, at, Quantity.Number(most), Quantity.Number(settings.TabCount), Arg.Of("length", Quantity.Length(settings.TabLength))));
            return null;
        }

        int[] shares = Share(rooms, settings.TabCount, apart);
        var tabs = ImmutableArray.CreateBuilder<Tab>();
        for (int i = 0; i < rooms.Count; i++)
        {
            (Point2 from, Point2 along, double room) = rooms[i];
            for (int k = 0; k < shares[i]; k++)
            {
                double s = shares[i] == 1 ? room / 2 : room * k / (shares[i] - 1);
                tabs.Add(new Tab(from + (along * s), along, settings.TabLength, reach, bottom + settings.TabHeight, (settings.TabLength + diameter) / 2));
            }
        }

        return tabs.ToImmutable();
    }

    // One tab at a time to the edge whose tabs are then the furthest apart; the first edge wins a tie.
    private static int[] Share(List<(Point2 From, Point2 Along, double Room)> rooms, int count, double apart)
    {
        int[] shares = new int[rooms.Count];
        for (int placed = 0; placed < count; placed++)
        {
            int best = -1;
            double widest = double.NegativeInfinity;
            for (int i = 0; i < rooms.Count; i++)
            {
                if (shares[i] > Math.Floor(rooms[i].Room / apart))
                {
                    continue;
                }

                double gap = (rooms[i].Room + apart) / (shares[i] + 1);
                if (gap > widest)
                {
                    (widest, best) = (gap, i);
                }
            }

            shares[best]++;
        }

        return shares;
    }
}
