using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Drawings;

/// <summary>Where a straight line lies inside an area bounded by exact curves.</summary>
internal static class AreaLines
{
    /// <summary>
    /// The stretches of the line {p : p·along.Left = level} inside the rings, as coordinates along the line, in order.
    /// Each curve is cut where it turns back; a piece then meets the line once or not at all, and a point on the line counts as below it,
    /// so that a corner on the line counts once and a peak that touches it counts twice or not at all. Hits of a ring are always even in number.
    /// </summary>
    internal static List<(double From, double To)> Inside(ImmutableArray<Outline> rings, Point2 along, double level)
    {
        Point2 across = along.Left;
        var hits = new List<double>();
        foreach (Outline ring in rings)
        {
            for (int c = 0; c < ring.Curves.Length; c++)
            {
                // Where two curves join, the later one's start decides for both: their ends agree only up to rounding, and a line through the joint must not
                // meet one of them without the other.
                Curve curve = ring.Curves[c];
                Curve next = ring.Curves[(c + 1) % ring.Curves.Length];
                List<double> turns = CurveExtent.Turns(curve, across);
                bool below = IsBelow(curve, 0);
                for (int i = 0; i + 1 < turns.Count; i++)
                {
                    bool nextBelow = i + 2 == turns.Count ? IsBelow(next, 0) : IsBelow(curve, turns[i + 1]);
                    if (below != nextBelow)
                    {
                        hits.Add(Crossing(curve, turns[i], turns[i + 1], below));
                    }

                    below = nextBelow;
                }
            }
        }

        hits.Sort();
        var stretches = new List<(double, double)>(hits.Count / 2);
        for (int i = 0; i + 1 < hits.Count; i += 2)
        {
            stretches.Add((hits[i], hits[i + 1]));
        }

        return stretches;

        bool IsBelow(Curve curve, double t) => curve.PointAt(t).Dot(across) <= level;

        // The coordinate is monotone in between: halving the parameter 60 times leaves nothing of it.
        double Crossing(Curve curve, double from, double to, bool startsBelow)
        {
            for (int i = 0; i < 60; i++)
            {
                double middle = (from + to) / 2;
                if (IsBelow(curve, middle) == startsBelow)
                {
                    from = middle;
                }
                else
                {
                    to = middle;
                }
            }

            return curve.PointAt((from + to) / 2).Dot(along);
        }
    }
}
