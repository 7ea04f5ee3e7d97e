using ToolpathForge.Drawings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>Whether a drawn curve with its end cut can be the end of a board: within it, simple, and sound at its points.</summary>
internal static class ProfileCheck
{
    /// <summary>A point sharper than this breaks off, degrees: common practice.</summary>
    internal const double Sharpest = 20;

    /// <summary>How far a curve must stay clear of the board's own edge once it has begun, mm.</summary>
    private const double Clear = 0.01;

    /// <summary>A parameter of the first curve up to this is its start, whose direction may lie along the edge.</summary>
    private const double AtStart = 1e-9;

    /// <summary>Distance within which the fitted curve stands for the exact one, mm.</summary>
    private const double Fit = 0.001;

    /// <summary>True when the curve can be cut into the board; otherwise a finding says why not.</summary>
    /// <param name="curves">From the lower edge (depth 0) to the reference edge (depth = width), in the view of <see cref="ShapePen"/>.</param>
    /// <param name="spec">The shape's answers.</param>
    /// <param name="width">Design width of the board, mm.</param>
    /// <param name="findings">Takes what is wrong.</param>
    internal static bool IsSound(List<Curve> curves, ShapeSpec spec, double width, ICollection<Finding> findings)
    {
        double deepest = curves.SkipLast(1).Max(c => Extent(c, new Point2(0, 1)).High);
        if (deepest > (width * ProfileMaker.DeepestShare) + Accuracy.SamePoint)
        {
            findings.Add(ProfileMaker.DeepFinding(spec, deepest, width));
            return false;
        }

        double lowest = LeastAfterStart(curves, new Point2(0, 1));
        if (lowest < Clear)
        {
            findings.Add(Finding.Of(
                ShapeFindings.LeavesBoard, spec.At, Quantity.Length(lowest), Quantity.Length(Clear), Arg.Of("edge", "lower edge of the board")));
            return false;
        }

        double inmost = curves.Min(c => Extent(c, new Point2(1, 0)).Low);
        if (inmost < -Accuracy.SamePoint)
        {
            findings.Add(Finding.Of(
                ShapeFindings.LeavesBoard, spec.At, Quantity.Length(inmost), Quantity.Length(0), Arg.Of("edge", "line square across the board from where it begins")));
            return false;
        }

        Contour contour = ArcFit.Quick(new Outline([.. curves], false), Fit).Contour;
        return PointsAreSound(contour, spec, findings) && IsSimple(contour, spec, findings);
    }

    /// <summary>Least and greatest coordinate of a curve along an axis.</summary>
    internal static (double Low, double High) Extent(Curve curve, Point2 axis) => CurveExtent.Along(curve, axis);

    // The start itself lies on the edge; a straight first part must have left it by its end, and nothing may come back.
    private static double LeastAfterStart(List<Curve> curves, Point2 axis)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < curves.Count; i++)
        {
            foreach (double t in CurveExtent.Turns(curves[i], axis).Where(t => i > 0 || t > AtStart))
            {
                least = Math.Min(least, curves[i].PointAt(t).Dot(axis));
            }
        }

        return least;
    }

    private static bool PointsAreSound(Contour contour, ShapeSpec spec, ICollection<Finding> findings)
    {
        foreach (Corner corner in Corners.Of(contour))
        {
            double inside = corner.AngleOnLeft * 180 / Math.PI;
            double outside = 360 - inside;
            if (inside < Sharpest || outside < 1)
            {
                findings.Add(At(
                    Finding.Of(ShapeFindings.TooSharp, spec.At, Quantity.Angle(Math.Min(inside, outside)), Quantity.Angle(Sharpest)), corner.At));
                return false;
            }
        }

        return true;
    }

    private static bool IsSimple(Contour contour, ShapeSpec spec, ICollection<Finding> findings)
    {
        Edge[] edges = new Edge[contour.SegmentCount];
        for (int i = 0; i < edges.Length; i++)
        {
            Segment s = contour[i];
            edges[i] = Edge.Of(s.Start.X, s.Start.Y, s.End.X, s.End.Y, s.Bulge);
        }

        Meetings found = default;
        for (int i = 0; i < edges.Length; i++)
        {
            for (int j = i + 1; j < edges.Length; j++)
            {
                EdgeMeeting.Find(edges[i], edges[j], 1e-9, ref found);
                for (int k = 0; k < found.Count; k++)
                {
                    var at = new Point2(found[k].X, found[k].Y);

                    // Neighbours meet where one ends and the other begins.
                    if (j > i + 1 || at.DistanceTo(contour[i].End) > Fit)
                    {
                        findings.Add(At(Finding.Of(ShapeFindings.CrossesItself, spec.At), at));
                        return false;
                    }
                }
            }
        }

        return true;
    }

    private static Finding At(Finding finding, Point2 at) => finding with
    {
        Args = [Arg.Of("along", Quantity.Length(at.X)), Arg.Of("across", Quantity.Length(at.Y))],
    };
}
