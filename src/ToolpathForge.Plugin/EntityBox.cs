using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Plugin;

/// <summary>How far entities reach at most: enough to lay something beside them. Never too small; too large for arcs, turned ellipses and splines.</summary>
internal static class EntityBox
{
    /// <summary>Least X, least Y, greatest X and greatest Y of all; null when there is nothing.</summary>
    internal static double[]? Of(IEnumerable<WireEntity> entities)
    {
        double[]? box = null;
        foreach ((double[] at, double reach) in entities.SelectMany(Reaches))
        {
            double[] own = { at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach };
            box = box is null ? own : new[] { Math.Min(box[0], own[0]), Math.Min(box[1], own[1]), Math.Max(box[2], own[2]), Math.Max(box[3], own[3]) };
        }

        return box;
    }

    // Points, and how far the entity may be from them.
    private static IEnumerable<(double[] At, double Reach)> Reaches(WireEntity e)
    {
        var reaches = new List<(double[]?, double)>();
        switch (e.Kind)
        {
            case "line":
                reaches.Add((e.From, 0));
                reaches.Add((e.To, 0));
                break;
            case "ellipse":
                // The share is at most 1 in most CADs, but not in all.
                reaches.Add((e.Centre, e.Major is { Length: 2 } m ? Math.Sqrt((m[0] * m[0]) + (m[1] * m[1])) * Math.Max(1, e.Ratio ?? 1) : 0));
                break;
            case "polyline":
            case "spline":
                // An arc of bulge b over a chord c rises b c / 2 above it, and beyond half a circle is no wider than its diameter, c (b + 1/b) / 2 (DXF reference, LWPOLYLINE).
                double[][] points = e.Points ?? Array.Empty<double[]>();
                for (int i = 0; i < points.Length; i++)
                {
                    double[] next = points[(i + 1) % points.Length];
                    double b = e.Kind == "polyline" && e.Bulges is { } bulges && i < bulges.Length ? Math.Abs(bulges[i]) : 0;
                    double chord = b > 0 && points[i] is { Length: 2 } p && next is { Length: 2 } q ? Math.Sqrt(((q[0] - p[0]) * (q[0] - p[0])) + ((q[1] - p[1]) * (q[1] - p[1]))) : 0;
                    reaches.Add((points[i], b <= 1 ? b * chord / 2 : chord * (b + (1 / b)) / 2));
                    if (chord > 0)
                    {
                        reaches.Add((next, reaches[reaches.Count - 1].Item2));
                    }
                }

                break;
            default:
                reaches.Add((e.Centre, e.Radius ?? 0));
                break;
        }

        // What is malformed is left to the core to refuse.
        return reaches.Where(r => r.Item1 is { Length: 2 }).Select(r => (r.Item1!, r.Item2));
    }
}
