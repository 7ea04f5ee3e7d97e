using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>
/// A piece of the plane bounded by closed contours: outer loops run counter-clockwise, holes clockwise, so that the material always lies on the left.
/// Loops may touch one another but do not cross; loops that do are put right by <see cref="RegionOps.Union(ReadOnlySpan{Region})"/>.
/// </summary>
public sealed class Region
{
    private Region(ImmutableArray<Contour> loops) => Loops = loops;

    /// <summary>The region without any area.</summary>
    public static Region Empty { get; } = new([]);

    /// <summary>The loops in the order they were given, turned so that the material lies on the left.</summary>
    public ImmutableArray<Contour> Loops { get; }

    /// <summary>True when it has no loop.</summary>
    public bool IsEmpty => Loops.Length == 0;

    /// <summary>Area of the material, mm².</summary>
    public double Area
    {
        get
        {
            double sum = 0;
            foreach (Contour loop in Loops)
            {
                sum += loop.SignedArea;
            }

            return sum;
        }
    }

    /// <summary>The smallest axis-parallel box round it.</summary>
    public Box2 Box
    {
        get
        {
            Box2 box = Box2.Empty;
            foreach (Contour loop in Loops)
            {
                box = box.Union(loop.Box);
            }

            return box;
        }
    }

    /// <summary>
    /// A region from closed contours in any direction: one that lies inside an odd number of others is a hole, any other an outer loop.
    /// </summary>
    /// <param name="loops">Closed contours that do not cross each other or themselves.</param>
    /// <exception cref="ArgumentException">A contour that is open.</exception>
    public static Region Of(params ReadOnlySpan<Contour> loops)
    {
        var result = ImmutableArray.CreateBuilder<Contour>(loops.Length);
        var boxes = new Box2[loops.Length];
        var areas = new double[loops.Length];
        for (int i = 0; i < loops.Length; i++)
        {
            if (!loops[i].IsClosed)
            {
                throw new ArgumentException("A region is bounded by closed contours.", nameof(loops));
            }

            boxes[i] = loops[i].Box;
            areas[i] = loops[i].SignedArea;
        }

        for (int i = 0; i < loops.Length; i++)
        {
            int depth = 0;
            for (int j = 0; j < loops.Length; j++)
            {
                // What does not cross can only lie inside what is larger.
                if (j != i && Math.Abs(areas[j]) > Math.Abs(areas[i]) && boxes[j].Meets(boxes[i]) && IsInside(loops[i], loops[j]))
                {
                    depth++;
                }
            }

            result.Add(areas[i] > 0 == ((depth & 1) == 0) ? loops[i] : loops[i].Reversed());
        }

        return new Region(result.MoveToImmutable());
    }

    /// <summary>True when the point lies in the material; points on a loop may fall either way.</summary>
    /// <param name="p">The point asked about.</param>
    public bool Contains(Point2 p)
    {
        int winding = 0;
        foreach (Contour loop in Loops)
        {
            winding += Winding.Number(loop, p);
        }

        return winding > 0;
    }

    /// <summary>The region carried into another frame.</summary>
    /// <param name="placement">Where it goes.</param>
    public Region Placed(Placement placement)
    {
        var result = ImmutableArray.CreateBuilder<Contour>(Loops.Length);
        foreach (Contour loop in Loops)
        {
            Contour placed = loop.Placed(placement);
            result.Add(placement.Mirrored ? placed.Reversed() : placed);
        }

        return new Region(result.MoveToImmutable());
    }

    /// <summary>Takes loops that already run with the material on their left.</summary>
    internal static Region Oriented(ImmutableArray<Contour> loops) => loops.Length == 0 ? Empty : new Region(loops);

    // Loops of a region may touch in points, and a point on the other loop is undecided: two middles of segments out of three decide.
    private static bool IsInside(Contour inner, Contour outer)
    {
        int votes = 0;
        for (int k = 0; k < 3; k++)
        {
            int segment = k * (inner.SegmentCount - 1) / 2;
            votes += outer.Contains(inner[segment].PointAt(k == 1 ? 0.5 : 0.45)) ? 1 : 0;
            if (k == 1 && votes != 1)
            {
                break;
            }
        }

        return votes >= 2;
    }
}
