using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>Seeded random shapes that do not cross themselves; the same seed gives the same shape everywhere.</summary>
internal static class RandomShapes
{
    /// <summary>A shape of one of several kinds, and a distance that does something to it.</summary>
    internal static (Region Shape, double Distance) Any(int seed)
    {
        var random = new Random(seed);
        Region shape = (seed % 5) switch
        {
            0 or 1 => Region.Of(Star(random, 3 + random.Next(40), 0.9)),
            2 => Region.Of(Star(random, 3 + random.Next(12), 0.2)),
            3 => Cells(random),
            _ => Plate(random),
        };
        double distance = seed % 5 == 3 && random.Next(2) == 0
            ? 2.5 * (1 + random.Next(6))
            : 0.05 * Math.Pow(400, random.NextDouble());
        return (shape, random.Next(2) == 0 ? distance : -distance);
    }

    /// <summary>Vertices at rising angles about the origin, joined by lines and arcs that rise likewise: it cannot cross itself.</summary>
    internal static Contour Star(Random random, int count, double depth, Point2 about = default, double size = 50)
    {
        // Neighbours are less than half a turn apart, or a line between them would pass on the far side of the middle.
        double spread = count < 5 ? 0.4 : 0.7;
        var points = new Point2[count];
        for (int i = 0; i < count; i++)
        {
            double angle = 2 * Math.PI * (i + (spread * random.NextDouble())) / count;
            points[i] = Point2.Direction(angle) * (size * (1 - (depth * random.NextDouble())));
        }

        var vertices = new Vertex[count];
        for (int i = 0; i < count; i++)
        {
            double bulge = random.Next(3) == 0 ? 0 : (random.NextDouble() * 2) - 1;
            while (bulge != 0 && !Rises(new Segment(points[i], points[(i + 1) % count], bulge)))
            {
                bulge = Math.Abs(bulge) < 0.01 ? 0 : bulge / 2;
            }

            vertices[i] = new Vertex(points[i] + about, bulge);
        }

        return new Contour(vertices, true);
    }

    /// <summary>Cells of a grid joined together: many corners in line, gaps of exactly one cell.</summary>
    private static Region Cells(Random random)
    {
        const int Side = 5;
        const double Size = 10;
        var taken = new bool[Side, Side];
        int x = Side / 2;
        int y = Side / 2;
        for (int k = 0; k < 30; k++)
        {
            taken[x, y] = true;
            (int dx, int dy) = random.Next(4) switch { 0 => (1, 0), 1 => (-1, 0), 2 => (0, 1), _ => (0, -1) };
            x = Math.Clamp(x + dx, 0, Side - 1);
            y = Math.Clamp(y + dy, 0, Side - 1);
        }

        // No two cells that touch at a corner alone: what lies within a distance would hang on a point.
        for (bool changed = true; changed;)
        {
            changed = false;
            for (int i = 0; i + 1 < Side; i++)
            {
                for (int j = 0; j + 1 < Side; j++)
                {
                    bool slash = taken[i, j] && taken[i + 1, j + 1] && !taken[i + 1, j] && !taken[i, j + 1];
                    bool back = !taken[i, j] && !taken[i + 1, j + 1] && taken[i + 1, j] && taken[i, j + 1];
                    if (slash || back)
                    {
                        taken[i, j] = taken[i + 1, j] = true;
                        taken[i, j + 1] = taken[i + 1, j + 1] = true;
                        changed = true;
                    }
                }
            }
        }

        var cells = new List<Region>();
        for (int i = 0; i < Side; i++)
        {
            for (int j = 0; j < Side; j++)
            {
                if (taken[i, j])
                {
                    Point2 a = new(i * Size, j * Size);
                    cells.Add(Region.Of(Contour.Polygon(a, a + new Point2(Size, 0), a + new Point2(Size, Size), a + new Point2(0, Size))));
                }
            }
        }

        RegionResult joined = RegionOps.Union(cells.ToArray());
        Assert.Null(joined.Unproven);
        return joined.Region;
    }

    /// <summary>An outline with holes and perhaps an island in one of them; what would cross what is there already is left out.</summary>
    private static Region Plate(Random random)
    {
        var loops = new List<Contour> { Star(random, 4 + random.Next(12), 0.3, default, 100) };
        for (int k = 0; k < 4; k++)
        {
            Point2 at = new(((k & 1) * 44) - 22, ((k >> 1) * 44) - 22);
            int what = random.Next(4);
            if (what == 0)
            {
                continue;
            }

            AddFree(loops, what == 1 ? Contour.Circle(at, 2 + (16 * random.NextDouble())) : Star(random, 3 + random.Next(9), 0.3, at, 18), at);
            if (what == 3)
            {
                AddFree(loops, Star(random, 3 + random.Next(5), 0.3, at, 6), at);
            }
        }

        return Region.Of(loops.ToArray());
    }

    // Whatever lies within a circle that meets no other loop crosses none.
    private static void AddFree(List<Contour> loops, Contour loop, Point2 about)
    {
        double reach = 0;
        for (int i = 0; i < loop.SegmentCount; i++)
        {
            Box2 box = loop[i].Box;
            double across = Math.Max(about.X - box.MinX, box.MaxX - about.X);
            double up = Math.Max(about.Y - box.MinY, box.MaxY - about.Y);
            reach = Math.Max(reach, new Point2(across, up).Length);
        }

        foreach (Contour other in loops)
        {
            for (int i = 0; i < other.SegmentCount; i++)
            {
                if (other[i].Distance(about) < reach)
                {
                    return;
                }
            }
        }

        loops.Add(loop);
    }

    private static bool Rises(Segment s)
    {
        for (int i = 0; i <= 16; i++)
        {
            Point2 p = s.PointAt(i / 16.0);
            if (p.Cross(s.DirectionAt(i / 16.0)) <= 0.05 * p.Length)
            {
                return false;
            }
        }

        return true;
    }
}
