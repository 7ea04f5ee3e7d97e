using NetTopologySuite.Geometries;
using ToolpathForge.Geometry;

namespace ToolpathForge.Benchmarks;

/// <summary>The shapes that the figures are measured on; the same numbers give the same shapes everywhere.</summary>
internal static class Shapes
{
    /// <summary>Chord error of the polygons that stand for arcs in the polygon library, mm: what the arc engine is compared at.</summary>
    private const double ChordError = 1e-3;

    /// <summary>A plate with a profiled end: a quarter ellipse 200 x 120 as 12 arcs at equal steps of the parameter, then three corners. 16 segments.</summary>
    internal static Contour Plate()
    {
        const int Arcs = 12;
        var vertices = new List<Vertex>();
        Point2 At(double t) => new(200 * Math.Cos(t), 120 * Math.Sin(t));
        for (int i = 0; i < Arcs; i++)
        {
            double t0 = Math.PI / 2 * i / Arcs;
            double t1 = Math.PI / 2 * (i + 1) / Arcs;
            Point2 a = At(t0);
            Point2 b = At(t1);
            Point2 m = At((t0 + t1) / 2);
            Point2 chord = b - a;
            double sagitta = -chord.Unit().Cross(m - a);
            vertices.Add(new Vertex(a, 2 * sagitta / chord.Length));
        }

        vertices.Add(new Vertex(new Point2(0, 120)));
        vertices.Add(new Vertex(new Point2(-80, 120)));
        vertices.Add(new Vertex(new Point2(-80, -40)));
        vertices.Add(new Vertex(new Point2(200, -40)));
        return new Contour(vertices.ToArray(), true);
    }

    /// <summary>Vertices on a circle with chord 4, arcs bulging alternately outwards and inwards by 0.35.</summary>
    internal static Contour Gear(int segments)
    {
        double radius = 2 / Math.Sin(Math.PI / segments);
        var vertices = new Vertex[segments];
        for (int i = 0; i < segments; i++)
        {
            vertices[i] = new Vertex(Point2.Direction(2 * Math.PI * i / segments) * radius, (i & 1) == 0 ? 0.35 : -0.35);
        }

        return new Contour(vertices, true);
    }

    /// <summary>A ring of straight 2 mm steps whose radius jumps by up to 0.8 either way.</summary>
    internal static Contour NoisyRing(int segments, int seed = 1)
    {
        var random = new Random(seed);
        double radius = segments * 2 / (2 * Math.PI);
        var points = new Point2[segments];
        for (int i = 0; i < segments; i++)
        {
            points[i] = Point2.Direction(2 * Math.PI * i / segments) * (radius + ((random.NextDouble() * 1.6) - 0.8));
        }

        return Contour.Polygon(points);
    }

    /// <summary>A comb: teeth 200 deep and 8 wide at a pitch of 16.</summary>
    internal static Contour Comb(int teeth)
    {
        var points = new List<Point2> { new(0, -20), new(teeth * 16, -20) };
        for (int i = teeth - 1; i >= 0; i--)
        {
            double x = i * 16;
            points.Add(new Point2(x + 12, 0));
            points.Add(new Point2(x + 12, 200));
            points.Add(new Point2(x + 4, 200));
            points.Add(new Point2(x + 4, 0));
        }

        return Contour.Polygon(points.ToArray());
    }

    /// <summary>Wavy loops one inside the other, 8 mm apart, material between each second pair; segments of about 6 mm whatever the loop.</summary>
    internal static Region Nested(int loops)
    {
        var all = new Contour[loops];
        for (int k = 0; k < loops; k++)
        {
            double radius = 40 + (8 * k);
            int segments = 2 * (int)Math.Round(Math.PI * radius / 6);
            double half = Math.PI / segments;
            var vertices = new Vertex[segments];
            for (int i = 0; i < segments; i++)
            {
                vertices[i] = new Vertex(Point2.Direction(2 * half * i) * radius, (i & 1) == 0 ? 0.2 : -0.1);
            }

            all[k] = new Contour(vertices, true);
        }

        return Region.Of(all);
    }

    /// <summary>The same contour as a polygon whose chords leave the arcs by a micrometre at most.</summary>
    internal static Polygon Polygon(Contour contour)
    {
        var points = new List<Coordinate>();
        for (int i = 0; i < contour.SegmentCount; i++)
        {
            Segment s = contour[i];
            int chords = s.IsLine ? 1 : Math.Max(1, (int)Math.Ceiling(Math.Abs(s.Sweep) / (2 * Math.Acos(1 - (ChordError / s.Radius)))));
            for (int k = 0; k < chords; k++)
            {
                Point2 p = s.PointAt((double)k / chords);
                points.Add(new Coordinate(p.X, p.Y));
            }
        }

        points.Add(points[0].Copy());
        return new Polygon(new LinearRing(points.ToArray()));
    }
}
