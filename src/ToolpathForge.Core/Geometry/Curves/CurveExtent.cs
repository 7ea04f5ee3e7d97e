
namespace ToolpathForge.Geometry;

/// <summary>How far exact curves reach, and where they turn back, along an axis.</summary>
internal static class CurveExtent
{
    /// <summary>Pieces that a curve without a closed form is cut into where it is drawn, boxed or hatched.</summary>
    internal const int ChordsOfUnknownCurve = 256;

    /// <summary>The smallest axis-parallel box round an outline.</summary>
    internal static Box2 Box(Outline outline)
    {
        Box2 box = Box2.Empty;
        foreach (Curve curve in outline.Curves)
        {
            (double left, double right) = Along(curve, new Point2(1, 0));
            (double low, double high) = Along(curve, new Point2(0, 1));
            box = box.Union(new Box2(left, low, right, high));
        }

        return box;
    }

    /// <summary>Least and greatest coordinate of a curve along an axis.</summary>
    internal static (double Low, double High) Along(Curve curve, Point2 axis)
    {
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        foreach (double t in Turns(curve, axis))
        {
            double x = curve.PointAt(t).Dot(axis);
            low = Math.Min(low, x);
            high = Math.Max(high, x);
        }

        return (low, high);
    }

    /// <summary>
    /// Parameters 0 … 1 between which the coordinate along the axis only rises or only falls. On an ellipse the coordinate is c + R·cos(u - φ),
    /// which turns at u = φ + kπ; a circle is the ellipse with equal axes.
    /// </summary>
    internal static List<double> Turns(Curve curve, Point2 axis)
    {
        var turns = new List<double> { 0 };
        switch (curve)
        {
            case LineCurve:
                break;
            case ArcCurve arc:
                AddTurns(turns, axis.Angle, arc.StartAngle, arc.Sweep);
                break;
            case EllipseCurve ellipse:
                AddTurns(turns, Math.Atan2(ellipse.Minor.Dot(axis), ellipse.Major.Dot(axis)), ellipse.StartParameter, ellipse.Sweep);
                break;
            case SplineCurve spline:
                turns.AddRange(spline.TurnsAlong(axis));
                break;
            default:
                for (int i = 1; i < ChordsOfUnknownCurve; i++)
                {
                    turns.Add((double)i / ChordsOfUnknownCurve);
                }

                break;
        }

        turns.Add(1);
        return turns;
    }

    private static void AddTurns(List<double> turns, double phase, double start, double sweep)
    {
        if (sweep == 0)
        {
            return;
        }

        double low = Math.Min(start, start + sweep);
        double high = Math.Max(start, start + sweep);
        int at = turns.Count;
        for (double k = Math.Ceiling((low - phase) / Math.PI); phase + (k * Math.PI) < high; k++)
        {
            double t = (phase + (k * Math.PI) - start) / sweep;
            if (t is > 0 and < 1)
            {
                turns.Add(t);
            }
        }

        if (sweep < 0)
        {
            turns.Reverse(at, turns.Count - at);
        }
    }
}
