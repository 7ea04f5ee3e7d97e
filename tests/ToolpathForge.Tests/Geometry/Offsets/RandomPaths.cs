using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>Seeded random open paths; some cross themselves, some turn right round, some have steps of next to nothing.</summary>
internal static class RandomPaths
{
    /// <summary>A path and a positive distance that does something to it.</summary>
    internal static (Contour Path, double Distance) Any(int seed)
    {
        var random = new Random(seed);
        int count = 2 + random.Next(seed % 4 == 0 ? 60 : 14);
        var vertices = new Vertex[count];
        Point2 at = default;
        double heading = 2 * Math.PI * random.NextDouble();
        for (int i = 0; i < count; i++)
        {
            double bulge = random.Next(2) == 0 ? 0 : (1.6 * random.NextDouble()) - 0.8;
            vertices[i] = new Vertex(at, bulge);
            heading += random.Next(12) switch
            {
                0 => Math.PI,
                1 => Math.PI / 2,
                2 => 0,
                _ => 2.4 * (random.NextDouble() - 0.5),
            };
            double step = random.Next(15) == 0 ? Math.Pow(10, -7 * random.NextDouble()) : 1 + (19 * random.NextDouble());
            at += Point2.Direction(heading) * step;
        }

        return (new Contour(vertices, false), 0.05 * Math.Pow(300, random.NextDouble()));
    }
}
