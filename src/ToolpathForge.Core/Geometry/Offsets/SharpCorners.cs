using System.Numerics;

namespace ToolpathForge.Geometry;

/// <summary>
/// The kites that sharp joins add to what is within the distance: vertex, foot, apex, foot. A point in one of them is not outside the result though no edge is near.
/// </summary>
internal sealed class SharpCorners
{
    private readonly BoxTree _tree = new();
    private readonly List<Corner> _corners = [];
    private int[] _found = new int[16];
    private double _distance;

    /// <summary>True when there is at least one.</summary>
    internal bool Any => _corners.Count > 0;

    internal void Clear() => _corners.Clear();

    /// <summary>All of them, in the order of the walk.</summary>
    internal List<Corner> All => _corners;

    /// <summary>Adds the kite at the vertex between two edges.</summary>
    internal void Add(in Corner corner) => _corners.Add(corner);

    internal void Build(double distance)
    {
        _distance = distance;
        if (_corners.Count == 0)
        {
            return;
        }

        _tree.Reset(_corners.Count);
        double largest = 0;
        for (int i = 0; i < _corners.Count; i++)
        {
            largest = Math.Max(largest, Math.Max(Math.Abs(_corners[i].Apex.X), Math.Abs(_corners[i].Apex.Y)));
        }

        for (int i = 0; i < _corners.Count; i++)
        {
            // Both feet lie within the distance of the line from vertex to apex.
            Corner c = _corners[i];
            _tree.Set(i, Edge.Of(c.Vertex.X, c.Vertex.Y, c.Apex.X, c.Apex.Y, 0), distance + BoxTree.PadFor(largest + (2 * distance), 0));
        }

        _tree.Build(false);
    }

    /// <summary>True when the point lies in a kite by more than the margin from its border, which may be negative; the kite between two edges may be left out.</summary>
    internal bool Holds(Point2 p, double margin, int butEdge = -1, int butOther = -1)
    {
        if (_corners.Count == 0)
        {
            return false;
        }

        BoxTree.Box1 box = BoxTree.Box1.Around(p.X, p.Y, 0);
        int near = _tree.Collect(box, 0, ref _found);
        for (int k = 0; k < near; k++)
        {
            uint mask = _tree.Group(_found[k]).Meeting(box);
            while (mask != 0)
            {
                Corner c = _corners[(_found[k] << 3) + BitOperations.TrailingZeroCount(mask)];
                mask &= mask - 1;
                Point2 out_ = p - c.Vertex;
                double side = Math.Sign((c.Apex - c.Vertex).Cross(c.Arriving));
                if ((c.Edge != butEdge || c.Other != butOther)
                    && out_.Dot(c.Arriving) > margin
                    && out_.Dot(c.Leaving) < -margin
                    && side * out_.Cross(c.Arriving) < _distance - margin
                    && side * out_.Cross(c.Leaving) < _distance - margin)
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <param name="Vertex">The vertex.</param>
    /// <param name="Arriving">Direction of the walk into it, length 1.</param>
    /// <param name="Leaving">Direction of the walk out of it, length 1.</param>
    /// <param name="Apex">Where the parallels meet.</param>
    /// <param name="Edge">The edge that ends at the vertex.</param>
    /// <param name="Other">The edge that leaves it.</param>
    /// <param name="Role">What the candidates round it are.</param>
    internal readonly record struct Corner(Point2 Vertex, Point2 Arriving, Point2 Leaving, Point2 Apex, int Edge, int Other, CandidateRole Role);
}
