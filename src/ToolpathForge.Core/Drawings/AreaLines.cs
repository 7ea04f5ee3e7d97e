using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Drawings;

/// <summary>Where a straight line lies inside an area bounded by exact curves.</summary>
internal static class AreaLines
{
    /// <summary>
    /// The stretches of the line {p : p·along.Left = level} inside the rings, as coordinates along the line, in order.
    /// Each curve is cut where it turns back; a piece then meets the line once or not at all, and a piece owns its lower end but not its upper one,
    /// so that a corner on the line counts once and a peak that touches it counts twice or not at all.
    /// </summary>
    internal static List<(double From, double To)> Inside(ImmutableArray<Outline> rings, Point2 along, double level)
    {
        Point2 across = along.Left;
        var hits = new List<double>();
        foreach (Outline ring in rings)
        {
            foreach (Curve curve in ring.Curves)
            {
                List<double> turns = CurveExtent.Turns(curve, across);
                for (int i = 0; i + 1 < turns.Count; i++)
                {
                    AddHit(hits, curve, turns[i], turns[i + 1], along, across, level);
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
    }

    private static void AddHit(List<double> hits, Curve curve, double from, double to, Point2 along, Point2 across, double level)
    {
        bool startsBelow = curve.PointAt(from).Dot(across) <= level;
        bool endsBelow = curve.PointAt(to).Dot(across) <= level;
        if (startsBelow == endsBelow)
        {
            return;
        }

        // The coordinate is monotone in between: halving the parameter 60 times leaves nothing of it.
        for (int i = 0; i < 60; i++)
        {
            double middle = (from + to) / 2;
            if (curve.PointAt(middle).Dot(across) <= level == startsBelow)
            {
                from = middle;
            }
            else
            {
                to = middle;
            }
        }

        hits.Add(curve.PointAt((from + to) / 2).Dot(along));
    }
}
