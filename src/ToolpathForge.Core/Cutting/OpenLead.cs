using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>
/// How an open track goes on past its end until the bit is clear of the stock: straight on where that leads out and stays clear of the piece, else turned
/// away from the board, by as little as it takes; else round away from it.
/// </summary>
internal static class OpenLead
{
    /// <summary>Step in which the clearance of a lead is looked at, mm.</summary>
    private const double Step = 0.25;

    /// <summary>The segments to add after the track's end.</summary>
    /// <param name="track">Ends beside the board's edge.</param>
    /// <param name="boardOnLeft">Which side of the track the board is on.</param>
    /// <param name="stock">What to get clear of.</param>
    /// <param name="clear">Distance to reach, mm.</param>
    /// <param name="piece">What to stay clear of on the way.</param>
    /// <param name="distance">How far from it, mm: that of the track.</param>
    internal static IEnumerable<Segment> Leaving(Contour track, bool boardOnLeft, Box2 stock, double clear, Contour piece, double distance)
    {
        Point2 end = track.End;
        Point2 direction = track[track.SegmentCount - 1].EndDirection;

        // Straight on leaves no mark; it is taken when it gets clear within a reasonable length (a slope of about one in four and steeper).
        // Where the track's end was trimmed, because the bit is too thick for the curve there, straight on leads back into the piece.
        for (int turn = 0; turn <= 90; turn += 5)
        {
            Point2 turned = direction.Rotated(turn * Math.PI / (boardOnLeft ? -180 : 180));
            if (Straight(end, turned, stock, clear, 4 * clear) is { } straight
                && Clearance.Holds(straight, piece, distance, (int)Math.Ceiling(straight.Length / Step)))
            {
                yield return straight;
                yield break;
            }
        }

        Point2 away = boardOnLeft ? direction.Right : direction.Left;
        Point2 round = end + ((direction + away) * clear);
        double quarter = Math.Tan(Math.PI / 8) * (boardOnLeft ? -1 : 1);
        yield return new Segment(end, round, quarter);
        if (Straight(round, away, stock, clear, 4 * clear) is { } rest && rest.Chord > 1e-9)
        {
            yield return rest;
        }
    }

    private static Segment? Straight(Point2 from, Point2 direction, Box2 stock, double clear, double most)
    {
        if (stock.Distance(from + (direction * most)) < clear)
        {
            return null;
        }

        // Distance to a convex box along a ray that leaves it grows once it has begun to: halve down to the first clear point.
        double least = 0;
        double enough = most;
        for (int i = 0; i < 60; i++)
        {
            double middle = (least + enough) / 2;
            (least, enough) = stock.Distance(from + (direction * middle)) < clear ? (middle, enough) : (least, middle);
        }

        return new Segment(from, from + (direction * enough));
    }
}
