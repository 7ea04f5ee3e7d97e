using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>One shape told in many ways: every start, both directions, turned, scaled and moved as far out as coordinates may lie.</summary>
internal static class Variants
{
    /// <param name="Name">What was done to the shape.</param>
    /// <param name="Loops">The shape so changed.</param>
    /// <param name="Scale">How many times larger it is.</param>
    /// <param name="Reversed">Whether it runs the other way.</param>
    internal readonly record struct Variant(string Name, Contour[] Loops, double Scale, bool Reversed);

    /// <summary>All of them. Long contours start at some of their vertices only, of many loops the first three are begun anew, and what would leave the accepted coordinates is left out.</summary>
    /// <param name="loops">The shape.</param>
    /// <param name="leastScale">The smallest scale at which the shape still means something: steps and distances above <see cref="Accuracy.SamePoint"/>.</param>
    internal static IEnumerable<Variant> Of(Contour[] loops, double leastScale = 1e-3)
    {
        foreach (bool reversed in (bool[])[false, true])
        {
            Contour[] turned = reversed ? [.. loops.Select(static l => l.Reversed())] : loops;
            for (int which = 0; which < Math.Min(turned.Length, 3); which++)
            {
                int count = turned[which].IsClosed ? turned[which].Vertices.Length : 1;
                for (int start = 0; start < count; start += Math.Max(1, count / 64))
                {
                    Contour[] started = [.. turned];
                    started[which] = Started(turned[which], start);
                    yield return new Variant($"reversed {reversed}, loop {which} from vertex {start}", started, 1, reversed);
                }
            }

            foreach (double angle in (double[])[0.7, Math.PI / 2, 2.9])
            {
                yield return new Variant($"reversed {reversed}, turned by {angle}", Mapped(turned, angle, 1, default), 1, reversed);
            }

            foreach (double scale in (double[])[1e-3, 1e-2, 0.1, 10, 100, 1000])
            {
                if (scale >= leastScale && Largest(turned) * scale < Accuracy.LargestCoordinate)
                {
                    yield return new Variant($"reversed {reversed}, scaled by {scale}", Mapped(turned, 0, scale, default), scale, reversed);
                }
            }

            double room = Math.Floor(Accuracy.LargestCoordinate - Largest(turned));
            yield return new Variant($"reversed {reversed}, far out", Mapped(turned, 0, 1, new Point2(room, -room)), 1, reversed);
            yield return new Variant($"reversed {reversed}, turned and far out", Mapped(turned, 0.3, 1, new Point2(-room * 0.7, room * 0.6)), 1, reversed);
        }
    }

    internal static Contour Started(Contour contour, int start)
    {
        ReadOnlySpan<Vertex> v = contour.Vertices;
        return start == 0 ? contour : new Contour((Vertex[])[.. v[start..], .. v[..start]], contour.IsClosed);
    }

    internal static Contour[] Mapped(Contour[] loops, double angle, double scale, Point2 shift) => [.. loops.Select(l =>
    {
        var vertices = new Vertex[l.Vertices.Length];
        for (int i = 0; i < vertices.Length; i++)
        {
            Vertex v = l.Vertices[i];
            vertices[i] = new Vertex((v.Point.Rotated(angle) * scale) + shift, v.Bulge);
        }

        return new Contour(vertices, l.IsClosed);
    })];

    private static double Largest(Contour[] loops) => loops.Max(static l => Math.Max(Reach(l.Box.MinX, l.Box.MaxX), Reach(l.Box.MinY, l.Box.MaxY))) * Math.Sqrt(2);

    private static double Reach(double a, double b) => Math.Max(Math.Abs(a), Math.Abs(b));
}
