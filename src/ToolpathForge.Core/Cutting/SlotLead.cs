using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>
/// A short arc by which the bit leaves a finished track into the slot that roughing has cut, touching the track so that no mark shows. It turns
/// towards the waste until it is the gap away from the track.
/// </summary>
internal static class SlotLead
{
    private const int MostHalvings = 6;

    /// <summary>Places along a lead at which its clearance is looked at.</summary>
    private const int Looks = 16;

    /// <summary>The arc that leaves the track.</summary>
    /// <param name="path">The track.</param>
    /// <param name="at">Where it is left, distance along it.</param>
    /// <param name="forward">Whether the bit travels in the track's direction.</param>
    /// <param name="wasteOnRight">Whether the waste is on the right of the travel.</param>
    /// <param name="gap">How far to get away, mm, more than 0.</param>
    /// <param name="usual">The usual radius of the arc, mm; it is made smaller where the way ahead bends towards the waste.</param>
    /// <param name="clear">What the bit must stay clear of, and how far its axis; null for nothing.</param>
    internal static Segment Leaving(
        PathRuler path, double at, bool forward, bool wasteOnRight, double gap, double usual, (Contour Edge, double Distance)? clear = null)
    {
        Point2 start = path.PointAt(at);
        Point2 direction = forward ? path.DirectionAt(at) : -path.DirectionAt(at);

        // Where the track itself bends towards the waste, the arc has to bend twice as sharply to come away from it.
        double bend = path.CurvatureAt(at) * (forward ? 1 : -1);
        double towardsWaste = wasteOnRight ? -bend : bend;
        double radius = towardsWaste > 0 ? Math.Min(usual, 0.5 / towardsWaste) : usual;

        Segment Arc(double size, double turn) => ArcFrom(start, direction, size, wasteOnRight ? -turn : turn);
        Segment lead = Reaching(turn => Arc(radius, turn), path.Contour, gap);
        for (int i = 0; i < MostHalvings && clear is { } c && !Clearance.Holds(lead, c.Edge, c.Distance, Looks); i++)
        {
            // A sharper turn is away sooner: before a hollow corner that lies ahead.
            radius /= 2;
            lead = Reaching(turn => Arc(radius, turn), path.Contour, gap);
        }

        return lead;
    }

    // The least turn, a quarter at most, whose end is the gap away from the track.
    private static Segment Reaching(Func<double, Segment> arc, Contour track, double gap)
    {
        double low = 0;
        double high = Math.PI / 2;
        for (int i = 0; i < 50; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = track.Distance(arc(middle).End) < gap ? (middle, high) : (low, middle);
        }

        return arc(high);
    }

    private static Segment ArcFrom(Point2 start, Point2 direction, double radius, double sweep)
    {
        double size = Math.Abs(sweep);
        Point2 side = sweep > 0 ? direction.Left : direction.Right;
        Point2 end = start + (direction * (radius * Math.Sin(size))) + (side * (radius * (1 - Math.Cos(size))));
        return new Segment(start, end, Math.Tan(sweep / 4));
    }
}
