using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Nesting;
using ToolpathForge.Pieces;

namespace ToolpathForge.Clampings;

/// <summary>Plates of one make nested by their true outline, some turned, where the job allows that and a blank then holds more than in even rows.</summary>
internal static class TurnedLayout
{
    /// <summary>The outline is fitted as finely as this and kept that much farther away, mm.</summary>
    internal const double Fit = 0.01;

    /// <summary>The angles that a piece may be turned by; half a turn is how a right-hand pattern lies.</summary>
    internal static ImmutableArray<double> Turns(PlateTurn turned) => turned switch
    {
        PlateTurn.None => [Math.PI],
        PlateTurn.Half => [Math.PI, 0],
        _ => [Math.PI, 0, Math.PI / 2, -Math.PI / 2],
    };

    /// <summary>Where the plates of one blank lie; null when rows hold as many.</summary>
    /// <param name="job">Says the machine's travel.</param>
    /// <param name="make">What is made, how many, and how it may be turned.</param>
    /// <param name="plate">The plate.</param>
    /// <param name="margin">Room between plates and the blank's edge, mm.</param>
    /// <param name="gap">Room between plates, mm.</param>
    /// <param name="clear">Room between plates and what the bit must not touch, mm.</param>
    /// <param name="inRows">How many a blank holds in rows.</param>
    /// <param name="keepOuts">What the bit must not touch.</param>
    internal static ImmutableArray<Placement>? Lay(
        Job job, Make make, Piece plate, double margin, double gap, double clear, int inRows, ImmutableArray<KeepOut> keepOuts)
    {
        var room = new Box2(margin, margin, job.Machine.TravelX - margin, job.Machine.TravelY - margin);
        if (make.Sheet!.Turned == PlateTurn.None || make.Count == 1 || room.IsEmpty)
        {
            return null;
        }

        ImmutableArray<double> turns = Turns(make.Sheet.Turned);
        Region shape = Region.Of(ArcFit.Fit(plate.Exact, Fit).Contour);
        int most = Math.Min(make.Count, (int)(room.Width * room.Height / shape.Area) + 1);
        ImmutableArray<NestObstacle> obstacles = [.. keepOuts.Select(k => new NestObstacle(Region.Of(Contour.Rectangle(k.Box)), clear + Fit))];
        NestResult NestOf(int count) => Nester.Nest(new NestRequest([new NestPart(shape, count)], room, gap + (2 * Fit), turns, obstacles));
        NestResult full = NestOf(most);
        if (full.Panels.IsEmpty || full.Panels[0].Pieces.Length <= inRows)
        {
            return null;
        }

        // An even share each time, as long as it still fits on one blank.
        int each = full.Panels[0].Pieces.Length;
        int times = (make.Count + each - 1) / each;
        int share = (make.Count + times - 1) / times;
        NestResult even = share < each ? NestOf(share) : full;
        return [.. (even.Panels[0].Pieces.Length == share ? even : full).Panels[0].Pieces.Select(p => p.Placement)];
    }
}
