using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;

namespace ToolpathForge.Clampings;

/// <summary>
/// Lays the plates of one make in even rows on a blank, or nested where the job allows turns and that holds more. The blank's near left corner is the work zero. In rows each plate lies as a right-hand pattern is
/// used: face up, profile edge towards you, end at your right.
/// </summary>
internal static class PanelLayout
{
    /// <summary>Room between a plate and the blank's edge beyond the bit's own track, mm: common practice, for clamps and a blank sawn by hand.</summary>
    internal const double Rim = 12;

    /// <summary>As many plates a blank as the machine's travel takes; the program is repeated for the rest.</summary>
    internal static Clamping Lay(Job job, Make make, Piece plate, double track)
    {
        // Half a turn brings the end to the right and the profile edge towards you without mirroring.
        var turn = new Placement(Math.PI, default, false);
        Box2 box = CurveExtent.Box(plate.Exact.Placed(turn));
        double margin = track + Rim;
        double pitchX = box.Width + track + track + job.Panels.Gap;
        double pitchY = box.Height + track + track + job.Panels.Gap;
        int across = Fitting(job.Machine.TravelX, box.Width, margin, pitchX);
        int up = Fitting(job.Machine.TravelY, box.Height, margin, pitchY);
        (double bottom, double top) = Clamping.Heights(job, make.Thickness);
        ImmutableArray<KeepOut> keepOuts = Obstacles.Clamps([make], bottom);
        if (TurnedLayout.Lay(job, make, plate, margin, track + track + job.Panels.Gap, track, across * up, keepOuts) is { } nested)
        {
            return Nested(job, make, plate, nested, margin, (bottom, top), keepOuts);
        }

        int each = Math.Max(1, Math.Min(make.Count, across * up));
        int times = (make.Count + each - 1) / each;

        // An even share each time, so that no run is left with a lone plate when two would do.
        each = (make.Count + times - 1) / times;
        int columns = Math.Max(1, Math.Min(across, each));
        int rows = (each + columns - 1) / columns;
        double width = ShopText.Up(((columns - 1) * pitchX) + box.Width + (2 * margin), job.Unit);
        double height = ShopText.Up(((rows - 1) * pitchY) + box.Height + (2 * margin), job.Unit);
        var stock = new Box2(0, 0, width, height);
        var placed = ImmutableArray.CreateBuilder<Placed>();
        for (int i = 0; i < each; i++)
        {
            Placement at = turn with
            {
                Shift = new Point2(
                    margin - box.MinX + (i % columns * pitchX),
                    margin - box.MinY + (i / columns * pitchY)),
            };
            placed.Add(new Placed(plate, i + 1, at, plate.Exact.Placed(at), stock));
        }

        return new Clamping(
            make.Id,
            placed.ToImmutable(),
            new StockOnBed(stock, bottom, top),
            Lie.AsLaid,
            new Box2(0, 0, job.Machine.TravelX, job.Machine.TravelY),
            times)
        {
            KeepOuts = keepOuts,
        };
    }

    private static Clamping Nested(
        Job job, Make make, Piece plate, ImmutableArray<Placement> places, double margin, (double Bottom, double Top) heights, ImmutableArray<KeepOut> keepOuts)
    {
        Outline[] outlines = [.. places.Select(p => plate.Exact.Placed(p))];
        Box2 all = outlines.Aggregate(Box2.Empty, (box, outline) => box.Union(CurveExtent.Box(outline)));
        var stock = new Box2(0, 0, ShopText.Up(all.MaxX + margin, job.Unit), ShopText.Up(all.MaxY + margin, job.Unit));
        return new Clamping(
            make.Id,
            [.. outlines.Select((outline, i) => new Placed(plate, i + 1, places[i], outline, stock))],
            new StockOnBed(stock, heights.Bottom, heights.Top),
            Lie.AsLaid,
            new Box2(0, 0, job.Machine.TravelX, job.Machine.TravelY),
            (make.Count + places.Length - 1) / places.Length)
        {
            KeepOuts = keepOuts,
        };
    }

    private static int Fitting(double travel, double size, double margin, double pitch) =>
        1 + (int)Math.Max(0, Math.Floor((travel - size - (2 * margin)) / pitch));
}
