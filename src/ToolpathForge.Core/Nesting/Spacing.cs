using ToolpathForge.Geometry;

namespace ToolpathForge.Nesting;

/// <summary>Whether two regions keep a distance, measured between the lines and arcs themselves.</summary>
internal static class Spacing
{
    /// <summary>True when the regions have no point in common and are nowhere nearer than the gap.</summary>
    /// <param name="a">One region.</param>
    /// <param name="b">The other.</param>
    /// <param name="gap">mm, at least 0.</param>
    internal static bool IsKept(Region a, Region b, double gap)
    {
        if (!a.Box.Grown(gap).Meets(b.Box))
        {
            return true;
        }

        // Edges that nowhere meet leave one region wholly inside a loop of the other or wholly outside it: one point decides.
        return EdgesKeep(a, b, gap) && !b.Contains(a.Loops[0].Start) && !a.Contains(b.Loops[0].Start);
    }

    private static bool EdgesKeep(Region a, Region b, double gap)
    {
        Box2 near = b.Box.Grown(gap);
        foreach (Contour first in a.Loops)
        {
            for (int i = 0; i < first.SegmentCount; i++)
            {
                Segment s = first[i];
                Box2 reach = s.Box.Grown(gap);
                if (!reach.Meets(near))
                {
                    continue;
                }

                foreach (Contour second in b.Loops)
                {
                    for (int k = 0; k < second.SegmentCount; k++)
                    {
                        Segment t = second[k];
                        if (reach.Meets(t.Box) && SegmentDistance.Between(s, t).Distance < gap)
                        {
                            return false;
                        }
                    }
                }
            }
        }

        return true;
    }
}
