using CsCheck;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>What must hold for any shape; a failing sample prints its seed.</summary>
public class OffsetPropertyTests
{
    private static readonly Gen<(Contour Shape, double Distance)> Stars =
        from seed in Gen.Int[0, int.MaxValue - 1]
        from count in Gen.Int[3, 30]
        from distance in Gen.Double[0.1, 12]
        from inwards in Gen.Bool
        select (RandomShapes.Star(new Random(seed), count, 0.7), inwards ? -distance : distance);

    [Fact]
    public void Outward_offsets_of_convex_shapes_add() => Convex().Sample(
        static pair =>
        {
            Region once = Proven(Offsetter.Closed(pair.Shape, pair.First));
            double twice = Proven(Offsetter.Closed(once, pair.Second)).Area;
            double whole = Proven(Offsetter.Closed(pair.Shape, pair.First + pair.Second)).Area;

            // By Steiner, too: A + L·d + π·d².
            double d = pair.First + pair.Second;
            double steiner = Math.Abs(pair.Shape.SignedArea) + (pair.Shape.Length * d) + (Math.PI * d * d);
            return Close(twice, whole, 1e-6 * whole) && Close(whole, steiner, 1e-9 * whole);
        },
        iter: 300);

    [Fact]
    public void Reversing_starting_elsewhere_and_mirroring_commute() => Stars.Sample(
        static pair =>
        {
            (Contour shape, double distance) = pair;
            OffsetResult plain = Offsetter.Closed(shape, distance);
            double area = Proven(plain).Area;
            double allowed = 1e-7 * (1 + shape.Length);
            OffsetResult mirrored = Offsetter.Closed(Mirrored(shape), distance);
            return Close(Proven(Offsetter.Closed(shape.Reversed(), distance)).Area, area, allowed)
                && Close(Proven(Offsetter.Closed(Variants.Started(shape, shape.Vertices.Length / 2), distance)).Area, area, allowed)
                && Close(Proven(mirrored).Area, area, allowed)
                && mirrored.Loops.Length == plain.Loops.Length;
        },
        iter: 600);

    [Fact]
    public void Area_is_the_limit_of_polygons() => Stars.Sample(
        static pair =>
        {
            Region result = Proven(Offsetter.Closed(pair.Shape, pair.Distance));
            double polygons = 0;
            double length = 0;
            foreach (Contour loop in result.Loops)
            {
                List<NetTopologySuite.Geometries.Coordinate> points = PolygonOracle.Chords(loop);
                for (int i = 0; i + 1 < points.Count; i++)
                {
                    polygons += ((points[i].X * points[i + 1].Y) - (points[i].Y * points[i + 1].X)) / 2;
                }

                length += loop.Length;
            }

            // Between chord and arc lie at most two thirds of chord times sagitta.
            return Close(result.Area, polygons, (length * PolygonOracle.ChordError) + 1e-9);
        },
        iter: 300);

    [Fact]
    public void An_offset_is_larger_the_larger_its_distance() => Stars.Sample(
        static pair =>
        {
            double area = Proven(Offsetter.Closed(pair.Shape, pair.Distance)).Area;
            double more = Proven(Offsetter.Closed(pair.Shape, pair.Distance + 0.05)).Area;
            return more >= area;
        },
        iter: 300);

    private static Gen<(Contour Shape, double First, double Second)> Convex() =>
        from count in Gen.Int[3, 12]
        from turn in Gen.Double[0, 1]
        from stretch in Gen.Double[0.1, 1]
        from first in Gen.Double[0.01, 20]
        from second in Gen.Double[0.01, 20]
        select (Contour.Polygon([.. Enumerable.Range(0, count).Select(i =>
        {
            Point2 p = Point2.Direction((2 * Math.PI * i / count) + turn);
            return new Point2(30 * p.X, 30 * stretch * p.Y);
        })]), first, second);

    private static Contour Mirrored(Contour shape)
    {
        var vertices = new Vertex[shape.Vertices.Length];
        for (int i = 0; i < vertices.Length; i++)
        {
            Vertex v = shape.Vertices[i];
            vertices[i] = new Vertex(-v.X, v.Y, -v.Bulge);
        }

        return new Contour(vertices, true);
    }

    private static bool Close(double a, double b, double allowed) => Math.Abs(a - b) <= allowed;

    private static Region Proven(OffsetResult result) => result.Unproven is null
        ? result.ToRegion()
        : throw new InvalidOperationException(OffsetFuzzTests.Reason(result));
}
