using NetTopologySuite.Geometries;
using ToolpathForge.Geometry;

namespace ToolpathForge.Benchmarks.Ratios;

/// <summary>Offsets, with the engine's own check of each result switched on, as it always is.</summary>
internal static class OffsetFigures
{
    private const double Distance = 3.175;
    private const string Polygons = "polygon buffer at 1 um";
    private const string Linear = "1 is linear";

    internal static IEnumerable<Func<Figure>> All()
    {
        foreach (double d in (double[])[Distance, -Distance])
        {
            string side = d > 0 ? "out" : "in";
            yield return () => AgainstPolygons($"offset plate of 16, {side}", 30, Shapes.Plate(), d);
            yield return () => AgainstPolygons($"offset gear of 1,000, {side}", 12, Shapes.Gear(1_000), d);
            yield return () => AgainstPolygons($"offset gear of 20,000, {side}", 12, Shapes.Gear(20_000), d);
            yield return () => AgainstPolygons($"offset noisy ring of 20,000, {side}", 1.2, Shapes.NoisyRing(20_000), d);
            yield return () => Growth($"offset gear 1,000 to 200,000, {side}", 200, Shapes.Gear(1_000), Shapes.Gear(200_000), d);
            yield return () => Growth($"offset noisy ring 1,000 to 200,000, {side}", 200, Shapes.NoisyRing(1_000), Shapes.NoisyRing(200_000), d);
            yield return () => Growth($"offset deep comb of 50 to 2,000 teeth, {side}", 40, Shapes.Comb(50), Shapes.Comb(2_000), d);
        }

        // The loops lie one inside the other, so that each box holds all that lie within.
        Region few = Shapes.Nested(5);
        Region many = Shapes.Nested(100);
        double sizes = many.Loops.Sum(static l => l.SegmentCount) / (double)few.Loops.Sum(static l => l.SegmentCount);
        yield return () => Pairs.Growth("offset nested loops, 5 to 100", Linear, 1.25, sizes, Work(few, 1), Work(many, 1));
    }

    private static Figure AgainstPolygons(string name, double goal, Contour contour, double distance)
    {
        Polygon polygon = Shapes.Polygon(contour);
        return Pairs.Ratio(name, Polygons, goal, Work(contour, distance), () => PolygonLibrary.Offset(polygon, distance));
    }

    private static Figure Growth(string name, double sizes, Contour small, Contour large, double distance) =>
        Pairs.Growth(name, Linear, 1.25, sizes, Work(small, distance), Work(large, distance));

    private static Func<object> Work(Contour contour, double distance) => () => Proven(Offsetter.Closed(contour, distance));

    private static Func<object> Work(Region region, double distance) => () => Proven(Offsetter.Closed(region, distance));

    // A result that is not vouched for would be a figure about nothing.
    private static OffsetResult Proven(OffsetResult result) =>
        result.Unproven is null ? result : throw new InvalidOperationException("An offset of the figures could not be proven: " + result.Unproven);
}
