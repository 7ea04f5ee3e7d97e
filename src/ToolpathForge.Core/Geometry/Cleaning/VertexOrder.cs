namespace ToolpathForge.Geometry;

/// <summary>A total order of vertex rows, and the one way of writing each: what makes a result independent of the order and direction in which pieces came.</summary>
internal static class VertexOrder
{
    /// <summary>By X, then Y.</summary>
    internal static int Compare(Point2 a, Point2 b)
    {
        int x = a.X.CompareTo(b.X);
        return x != 0 ? x : a.Y.CompareTo(b.Y);
    }

    /// <summary>By X, then Y, then bulge.</summary>
    internal static int Compare(in Vertex a, in Vertex b)
    {
        int place = Compare(a.Point, b.Point);
        return place != 0 ? place : a.Bulge.CompareTo(b.Bulge);
    }

    /// <summary>Vertex by vertex; where one row is the beginning of the other, the shorter comes first.</summary>
    internal static int Compare(ReadOnlySpan<Vertex> a, ReadOnlySpan<Vertex> b)
    {
        int common = Math.Min(a.Length, b.Length);
        for (int i = 0; i < common; i++)
        {
            int order = Compare(a[i], b[i]);
            if (order != 0)
            {
                return order;
            }
        }

        return a.Length.CompareTo(b.Length);
    }

    /// <summary>The row walked the other way; a closed one keeps its first vertex.</summary>
    internal static Vertex[] Reversed(ReadOnlySpan<Vertex> row, bool isClosed)
    {
        int n = row.Length;
        var result = new Vertex[n];
        for (int i = 0; i < n; i++)
        {
            int from = isClosed ? (n - i) % n : n - 1 - i;
            int leaving = isClosed ? (from + n - 1) % n : from - 1;

            // Adding 0 makes +0 of -0, which would be written differently.
            result[i] = new Vertex(row[from].Point, leaving >= 0 ? -row[leaving].Bulge + 0.0 : 0);
        }

        return result;
    }

    /// <summary>The row in its one way of writing: an open one from its smaller end, a closed one from its smallest vertex, in the direction that gives the smaller row.</summary>
    internal static Vertex[] Canonical(ReadOnlySpan<Vertex> row, bool isClosed)
    {
        Vertex[] forward = isClosed ? FromSmallest(row) : row.ToArray();
        Vertex[] backward = Reversed(row, isClosed);
        if (isClosed)
        {
            backward = FromSmallest(backward);
        }

        return Compare(forward, backward) <= 0 ? forward : backward;
    }

    /// <summary>A closed row begun at its smallest vertex; of several at one point, at the one that gives the smallest row.</summary>
    internal static Vertex[] FromSmallest(ReadOnlySpan<Vertex> row)
    {
        int n = row.Length;
        int best = 0;
        for (int i = 1; i < n; i++)
        {
            int order = Compare(row[i], row[best]);
            if (order < 0 || (order == 0 && RotationOrder(row, i, best) < 0))
            {
                best = i;
            }
        }

        return [.. row[best..], .. row[..best]];
    }

    private static int RotationOrder(ReadOnlySpan<Vertex> row, int a, int b)
    {
        for (int k = 0; k < row.Length; k++)
        {
            int order = Compare(row[(a + k) % row.Length], row[(b + k) % row.Length]);
            if (order != 0)
            {
                return order;
            }
        }

        return 0;
    }
}
