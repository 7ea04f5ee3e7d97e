using ToolpathForge.Geometry;
using ToolpathForge.Nesting;

namespace ToolpathForge.Tests.Nesting;

/// <summary>
/// A fair packing of boxes to compare with: the free room is kept as all its largest rectangles, a box goes where it fits best, quarter turns allowed,
/// several orders and rules of fit; the best of all counts. Boxes keep the same gap as the pieces.
/// </summary>
internal static class BoxPacking
{
    /// <summary>The largest share that any order and rule gives, reckoned like that of a nest.</summary>
    internal static double BestUsedShare(NestRequest request)
    {
        (double W, double H)[] boxes = [.. request.Parts.SelectMany(p => Enumerable.Repeat((p.Shape.Box.Width + request.Gap, p.Shape.Box.Height + request.Gap), p.Count))];
        double area = request.Parts.Sum(p => p.Count * p.Shape.Area);
        double best = 0;
        foreach (Func<(double W, double H), double> size in (Func<(double W, double H), double>[])[b => b.W * b.H, b => Math.Max(b.W, b.H), b => Math.Min(b.W, b.H), b => b.W + b.H, b => b.H, b => b.W])
        {
            for (int rule = 0; rule < 4; rule++)
            {
                best = Math.Max(best, area / Used([.. boxes.OrderByDescending(size)], request.Room, request.Gap, rule));
            }
        }

        return best;
    }

    private static double Used((double W, double H)[] boxes, Box2 room, double gap, int rule)
    {
        var panels = new List<(List<Box2> Free, double Top)>();
        foreach ((double w, double h) in boxes)
        {
            for (int p = 0; ; p++)
            {
                if (p == panels.Count)
                {
                    panels.Add(([new Box2(0, 0, room.Width + gap, room.Height + gap)], 0));
                }

                if (Best(panels[p].Free, w, h, rule) is { } box)
                {
                    panels[p] = (Without(panels[p].Free, box), Math.Max(panels[p].Top, box.MaxY - gap));
                    break;
                }
            }
        }

        return room.Width * (((panels.Count - 1) * room.Height) + panels[^1].Top);
    }

    private static Box2? Best(List<Box2> free, double w, double h, int rule)
    {
        Box2? best = null;
        (double, double) least = (double.PositiveInfinity, 0);
        foreach (Box2 f in free)
        {
            foreach ((double a, double b) in ((double, double)[])[(w, h), (h, w)])
            {
                if (a > f.Width + 1e-9 || b > f.Height + 1e-9)
                {
                    continue;
                }

                (double, double) score = rule switch
                {
                    0 => (f.MinY + b, f.MinX),
                    1 => (Math.Min(f.Width - a, f.Height - b), Math.Max(f.Width - a, f.Height - b)),
                    2 => ((f.Width * f.Height) - (a * b), Math.Min(f.Width - a, f.Height - b)),
                    _ => (f.MinY, f.MinX),
                };
                if (score.CompareTo(least) < 0)
                {
                    (best, least) = (new Box2(f.MinX, f.MinY, f.MinX + a, f.MinY + b), score);
                }
            }
        }

        return best;
    }

    private static List<Box2> Without(List<Box2> free, Box2 box)
    {
        var parts = new List<Box2>();
        foreach (Box2 f in free)
        {
            if (box.MinX >= f.MaxX || box.MaxX <= f.MinX || box.MinY >= f.MaxY || box.MaxY <= f.MinY)
            {
                parts.Add(f);
                continue;
            }

            parts.AddRange(((Box2[])[f with { MaxX = box.MinX }, f with { MinX = box.MaxX }, f with { MaxY = box.MinY }, f with { MinY = box.MaxY }])
                .Where(r => r.Width > 1e-6 && r.Height > 1e-6));
        }

        return [.. parts.Where((r, i) => !parts.Where((o, k) => k != i && Holds(o, r) && (!Holds(r, o) || k < i)).Any())];
    }

    private static bool Holds(Box2 outer, Box2 inner) =>
        outer.MinX <= inner.MinX && outer.MinY <= inner.MinY && outer.MaxX >= inner.MaxX && outer.MaxY >= inner.MaxY;
}
