using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>
/// Reads SPLINE: degree, knots, control points and weights as they are; a closed or periodic one carries its repeated control points and knots in the file.
/// One that gives points to pass through and no control points says nothing about the curve between them, and is left out.
/// </summary>
internal static class DxfSplineReader
{
    internal static DxfSpline? Read(DxfRecord record)
    {
        int degree = record.Whole(71, 3);
        var poles = new List<Space3>();
        var knots = new List<double>();
        var weights = new List<double>();
        int fitPoints = 0;
        foreach (DxfTag tag in record.Tags)
        {
            switch (tag.Code)
            {
                case 10:
                    poles.Add(new Space3(record.Number(tag), double.NaN, 0));
                    break;
                case 20 when poles.Count > 0:
                    poles[^1] = poles[^1] with { Y = record.Number(tag) };
                    break;
                case 30 when poles.Count > 0:
                    poles[^1] = poles[^1] with { Z = record.Number(tag) };
                    break;
                case 40:
                    knots.Add(record.Number(tag));
                    break;
                case 41:
                    weights.Add(record.Number(tag));
                    break;
                case 11:
                    fitPoints++;
                    break;
            }
        }

        if (record.Failed)
        {
            return null;
        }

        string? reason = Trouble(degree, poles, knots, weights, fitPoints);
        if (reason is not null)
        {
            record.Fail(RepairFindings.SplineUnusable, Arg.Of("reason", reason));
            return null;
        }

        return new DxfSpline(record.Head(), degree, [.. poles], [.. knots], [.. weights]);
    }

    private static string? Trouble(int degree, List<Space3> poles, List<double> knots, List<double> weights, int fitPoints)
    {
        if (poles.Count == 0)
        {
            return fitPoints > 0 ? "it has points to pass through but no control points, and programs differ about the curve between" : "it has no control points";
        }

        if (degree is < 1 or > SplineCurve.HighestDegree)
        {
            return FormattableString.Invariant($"its degree is {degree}, and 1 to {SplineCurve.HighestDegree} are read");
        }

        if (poles.Count <= degree)
        {
            return FormattableString.Invariant($"degree {degree} needs at least {degree + 1} control points, and it has {poles.Count}");
        }

        if (poles.Exists(p => double.IsNaN(p.Y)))
        {
            return "a control point has no y";
        }

        if (knots.Count != poles.Count + degree + 1)
        {
            return FormattableString.Invariant($"{poles.Count} control points of degree {degree} need {poles.Count + degree + 1} knots, and it has {knots.Count}");
        }

        if (weights.Count != 0 && weights.Count != poles.Count)
        {
            return FormattableString.Invariant($"it has {weights.Count} weights for {poles.Count} control points");
        }

        if (weights.Exists(w => w <= 0) || (weights.Count > 0 && weights.Max() > weights.Min() * SplineCurve.LargestWeightRatio))
        {
            return "its weights are not all more than 0, or too far apart";
        }

        for (int i = 1; i < knots.Count; i++)
        {
            if (knots[i] < knots[i - 1])
            {
                return "its knots fall somewhere, and knots only rise";
            }
        }

        return knots[degree] < knots[poles.Count] ? Gap(degree, poles.Count, knots) : "its knots leave no curve";
    }

    private static string? Gap(int degree, int poles, List<double> knots)
    {
        for (int i = 1; i + degree < knots.Count - 1; i++)
        {
            if (knots[i] == knots[i + degree] && knots[i] > knots[degree] && knots[i] < knots[poles])
            {
                return "a knot stands there so often that the curve has a gap";
            }
        }

        return null;
    }
}
