using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>
/// A short arc by which the bit leaves a finished track into the slot that roughing has cut, touching the track so that no mark shows. It turns
/// towards the waste until it is the gap away from the track.
/// </summary>
internal static class SlotLead
{
    /// <summary>The arc that leaves the track.</summary>
    /// <param name="path">The track.</param>
    /// <param name="at">Where it is left, distance along it.</param>
    /// <param name="forward">Whether the bit travels in the track's direction.</param>
    /// <param name="wasteOnRight">Whether the waste is on the right of the travel.</param>
    /// <param name="gap">How far to get away, mm, more than 0.</param>
    /// <param name="diameter">Of the bit, mm: the usual radius of the arc.</param>
    internal static Segment Leaving(PathRuler path, double at, bool forward, bool wasteOnRight, double gap, double diameter)
    {
        Point2 start = path.PointAt(at);
        Point2 direction = forward ? path.DirectionAt(at) : -path.DirectionAt(at);

        // Where the track itself bends towards the waste, the arc has to bend twice as sharply to come away from it.
        double bend = path.CurvatureAt(at) * (forward ? 1 : -1);
        double towardsWaste = wasteOnRight ? -bend : bend;
        double radius = towardsWaste > 0 ? Math.Min(diameter, 0.5 / towardsWaste) : diameter;

        double low = 0;
        double high = Math.PI / 2;
        Segment Arc(double turn) => ArcFrom(start, direction, radius, wasteOnRight ? -turn : turn);
        for (int i = 0; i < 50; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = path.Contour.Distance(Arc(middle).End) < gap ? (middle, high) : (low, middle);
        }

        return Arc(high);
    }

    private static Segment ArcFrom(Point2 start, Point2 direction, double radius, double sweep)
    {
        double size = Math.Abs(sweep);
        Point2 side = sweep > 0 ? direction.Left : direction.Right;
        Point2 end = start + (direction * (radius * Math.Sin(size))) + (side * (radius * (1 - Math.Cos(size))));
        return new Segment(start, end, Math.Tan(sweep / 4));
    }
}
