using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>Whether a way of the bit's axis stays clear of an edge.</summary>
internal static class Clearance
{
    /// <summary>A track is as far from its edge as arithmetic allows, mm.</summary>
    private const double Hair = 1e-6;

    /// <summary>True when no place looked at is nearer than the distance; the start, where the way leaves a track, is known to be at it.</summary>
    /// <param name="way">The way.</param>
    /// <param name="edge">What to stay clear of.</param>
    /// <param name="distance">How far, mm.</param>
    /// <param name="parts">Into how many parts the way is cut, each looked at where it ends.</param>
    internal static bool Holds(Segment way, Contour edge, double distance, int parts)
    {
        for (int i = 1; i <= parts; i++)
        {
            if (edge.Distance(way.PointAt((double)i / parts)) < distance - Hair)
            {
                return false;
            }
        }

        return true;
    }
}
