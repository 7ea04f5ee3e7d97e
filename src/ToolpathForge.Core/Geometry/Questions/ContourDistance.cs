namespace ToolpathForge.Geometry;

/// <summary>The nearest points of two contours.</summary>
/// <param name="Distance">How far apart they are, mm; 0 where they cross, a rounded 0 where they touch.</param>
/// <param name="OnA">The point on the first; where they cross, the crossing.</param>
/// <param name="OnB">The point on the second.</param>
/// <param name="SegmentA">The segment of the first.</param>
/// <param name="SegmentB">The segment of the second.</param>
public readonly record struct ContourGap(double Distance, Point2 OnA, Point2 OnB, int SegmentA, int SegmentB);

/// <summary>Distance between the lines of two contours, exact for lines and arcs. One that lies within the other is as far away as its line is from the other's.</summary>
public static class ContourDistance
{
    /// <summary>The nearest points; of several equal pairs one of them, the same at each call.</summary>
    /// <param name="a">One contour.</param>
    /// <param name="b">The other.</param>
    public static ContourGap Between(Contour a, Contour b)
    {
        var index = new EdgeIndex([(a.Vertices.ToArray(), a.IsClosed), (b.Vertices.ToArray(), b.IsClosed)], 0);
        int first = index.FirstOf[1];

        // Some pair to begin with; from then on only what may lie nearer is looked at.
        var best = new ContourGap(double.PositiveInfinity, default, default, 0, 0);
        for (int j = first; j < index.Edges.Length; j++)
        {
            Take(0, j);
        }

        var near = new List<int>();
        for (int i = 1; i < first && best.Distance > 0; i++)
        {
            Box2 box = a[i].Box.Grown(best.Distance);
            index.Near(box.MinX - index.Shift.X, box.MinY - index.Shift.Y, box.MaxX - index.Shift.X, box.MaxY - index.Shift.Y, first, near);
            foreach (int j in near)
            {
                Take(i, j);
            }
        }

        return best;

        void Take(int i, int j)
        {
            SegmentGap gap = SegmentDistance.Between(a[i], b[j - first]);
            if (gap.Distance < best.Distance)
            {
                best = new ContourGap(gap.Distance, gap.On, gap.To, i, j - first);
            }
        }
    }
}
