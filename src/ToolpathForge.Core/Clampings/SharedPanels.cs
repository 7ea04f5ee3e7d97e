using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Nesting;
using ToolpathForge.Pieces;

namespace ToolpathForge.Clampings;

/// <summary>Lays pieces of several makes together on as few blanks as the nester finds. The near left corner of each blank is the work zero.</summary>
internal static class SharedPanels
{
    /// <summary>
    /// The clampings, one a blank; blanks that are laid alike are one clamping, run as often as there are of them. Kinds that fit on no blank lie on one
    /// of their own, where the checks tell what is too large.
    /// </summary>
    /// <param name="job">Says the machine's travel, the blank and the gap.</param>
    /// <param name="pieces">One a make, at least two; cut alike but for their tabs.</param>
    /// <param name="track">Room that the bit's track takes beside a piece, mm.</param>
    /// <param name="name">The name of the next blank.</param>
    internal static ImmutableArray<Clamping> Lay(Job job, ImmutableArray<Piece> pieces, double track, Func<string> name)
    {
        Make first = pieces[0].Make;
        double margin = track + PanelLayout.Rim;
        PanelSharing sharing = job.Panels;
        (double bottom, double top) = Clamping.Heights(job, first.Thickness);
        NestRequest request = Request(job, pieces, track);
        NestResult nest = request.Room.IsEmpty ? new NestResult([], [.. Enumerable.Range(0, pieces.Length)]) : Nester.Nest(request);
        var made = new Dictionary<string, int>(StringComparer.Ordinal);
        return
        [
            .. Alike(nest.Panels).Select(panel => Blank(panel.Panel, panel.Times)),
            .. nest.Left.Select(left => PanelLayout.Lay(job, pieces[left].Make, pieces[left], track)),
        ];

        int Next(string make) => made[make] = made.GetValueOrDefault(make) + 1;

        Clamping Blank(NestedPanel panel, int times)
        {
            // In the job's order, so that the numbers of a make's pieces follow one another.
            (Piece Piece, Placement At, Outline Exact)[] laid =
                [.. panel.Pieces.OrderBy(p => p.Part).Select(p => (pieces[p.Part], p.Placement, pieces[p.Part].Exact.Placed(p.Placement)))];
            Box2 all = laid.Aggregate(Box2.Empty, (box, l) => box.Union(CurveExtent.Box(l.Exact)));
            var stock = new Box2(
                0, 0, sharing.Length ?? ShopText.Up(all.MaxX + margin, job.Unit), sharing.Width ?? ShopText.Up(all.MaxY + margin, job.Unit));
            return new Clamping(
                name(),
                [.. laid.Select((l, i) => new Placed(l.Piece, i + 1, l.At, l.Exact, stock) { OfMake = Next(l.Piece.Make.Id) })],
                new StockOnBed(stock, bottom, top),
                Lie.AsLaid,
                new Box2(0, 0, job.Machine.TravelX, job.Machine.TravelY),
                times)
            {
                KeepOuts = KeepOuts(pieces, bottom),
            };
        }
    }

    /// <summary>What is asked of the nest; its room is empty where the margins leave none.</summary>
    /// <param name="job">Says the machine's travel, the blank, the gap and the turns.</param>
    /// <param name="pieces">One a make.</param>
    /// <param name="track">Room that the bit's track takes beside a piece, mm.</param>
    internal static NestRequest Request(Job job, ImmutableArray<Piece> pieces, double track)
    {
        double margin = track + PanelLayout.Rim;
        PanelSharing sharing = job.Panels;
        var room = new Box2(
            margin,
            margin,
            Math.Min(job.Machine.TravelX, sharing.Length ?? double.PositiveInfinity) - margin,
            Math.Min(job.Machine.TravelY, sharing.Width ?? double.PositiveInfinity) - margin);
        return new NestRequest(
            [.. pieces.Select(p => new NestPart(HeldWaste.Taken(p, Placement.Identity), p.Make.Count))],
            room,
            track + track + sharing.Gap + (2 * TurnedLayout.Fit),
            TurnedLayout.Turns(sharing.Turned),
            [.. KeepOuts(pieces, 0).Select(k => new NestObstacle(Region.Of(Contour.Rectangle(k.Box)), track + TurnedLayout.Fit))]);
    }

    private static ImmutableArray<KeepOut> KeepOuts(ImmutableArray<Piece> pieces, double bottom) => Obstacles.Clamps(pieces.Select(p => p.Make), bottom);

    private static IEnumerable<(NestedPanel Panel, int Times)> Alike(ImmutableArray<NestedPanel> panels)
    {
        var rest = panels.ToList();
        while (rest.Count > 0)
        {
            NestedPanel first = rest[0];
            yield return (first, rest.RemoveAll(p => IsLaidAlike(p, first)));
        }
    }

    private static bool IsLaidAlike(NestedPanel a, NestedPanel b) =>
        a.Pieces.Length == b.Pieces.Length && a.Pieces.Zip(b.Pieces).All(p => p.First.Part == p.Second.Part && p.First.Placement == p.Second.Placement);
}
