namespace ToolpathForge.Cutting;

/// <summary>
/// Height of the bit's tip along a path: straight between nodes, held beyond the first and last. Two nodes at one distance are a step straight up or down.
/// </summary>
internal sealed class HeightProfile
{
    private readonly List<(double S, double Z)> _nodes;

    private HeightProfile(List<(double S, double Z)> nodes) => _nodes = nodes;

    /// <summary>Distances along the path at which the slope may change.</summary>
    internal IEnumerable<double> Breaks => _nodes.Select(n => n.S);

    internal static HeightProfile Level(double z) => new([(0, z)]);

    /// <summary>Nodes in order of distance.</summary>
    internal static HeightProfile Through(params ReadOnlySpan<(double S, double Z)> nodes) => new([.. nodes]);

    /// <summary>Height at a distance; before the step where there is one.</summary>
    internal double At(double s)
    {
        if (s <= _nodes[0].S)
        {
            return _nodes[0].Z;
        }

        for (int i = 1; i < _nodes.Count; i++)
        {
            (double s1, double z1) = _nodes[i];
            if (s <= s1)
            {
                (double s0, double z0) = _nodes[i - 1];
                return s1 > s0 ? z0 + ((z1 - z0) * (s - s0) / (s1 - s0)) : z1;
            }
        }

        return _nodes[^1].Z;
    }

    /// <summary>Height at a distance; after the step where there is one.</summary>
    internal double After(double s)
    {
        double z = At(s);
        foreach ((double at, double height) in _nodes)
        {
            z = at == s ? height : z;
        }

        return z;
    }

    /// <summary>The higher of two profiles at every distance.</summary>
    internal HeightProfile Over(HeightProfile other)
    {
        List<double> breaks = [.. Breaks.Concat(other.Breaks).Distinct().Order()];
        var nodes = new List<(double S, double Z)>();
        for (int i = 0; i < breaks.Count; i++)
        {
            double s = breaks[i];
            double before = Math.Max(At(s), other.At(s));
            double after = Math.Max(After(s), other.After(s));
            nodes.Add((s, before));
            if (after != before)
            {
                nodes.Add((s, after));
            }

            if (i + 1 < breaks.Count)
            {
                // Where the two cross between breaks the slope changes as well.
                double t = breaks[i + 1];
                double d0 = After(s) - other.After(s);
                double d1 = At(t) - other.At(t);
                if (d0 * d1 < 0)
                {
                    double at = s + ((t - s) * d0 / (d0 - d1));
                    nodes.Add((at, At(at)));
                }
            }
        }

        return new HeightProfile(Simplified(nodes));
    }

    // A node at which the slope goes on as before would only cut a move in two.
    private static List<(double S, double Z)> Simplified(List<(double S, double Z)> nodes)
    {
        var kept = new List<(double S, double Z)>();
        for (int i = 0; i < nodes.Count; i++)
        {
            if (kept.Count > 0 && i + 1 < nodes.Count && kept[^1].S < nodes[i].S && nodes[i].S < nodes[i + 1].S)
            {
                (double s0, double z0) = kept[^1];
                (double s1, double z1) = nodes[i + 1];
                double straight = s1 > s0 ? z0 + ((z1 - z0) * (nodes[i].S - s0) / (s1 - s0)) : z0;
                if (Math.Abs(straight - nodes[i].Z) < 1e-9)
                {
                    continue;
                }
            }

            kept.Add(nodes[i]);
        }

        return kept;
    }
}
