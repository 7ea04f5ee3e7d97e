using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>How the fibres lie to the tooth at a finished edge.</summary>
public enum GrainClass
{
    /// <summary>The edge runs with the fibres, within 5°: either way round will do.</summary>
    Along,

    /// <summary>The fibres rise out ahead of the tooth; splits run into the waste.</summary>
    With,

    /// <summary>The fibres dive into the piece ahead of the tooth; splits run into the finished edge.</summary>
    Against,

    /// <summary>The fibres stand across the edge, by 70° and more.</summary>
    EndGrain,
}

/// <summary>A stretch of a finished edge with one class.</summary>
/// <param name="From">Distance along the contour where it begins, mm.</param>
/// <param name="To">Where it ends, mm.</param>
/// <param name="Class">Its class.</param>
/// <param name="Least">Smallest grain angle on it, degrees in (-90, 90].</param>
/// <param name="Most">Largest grain angle on it, degrees.</param>
/// <param name="Close">Whether a straight part of it lies within 1° of a limit: its class hangs on a hair.</param>
public readonly record struct GrainStretch(double From, double To, GrainClass Class, double Least, double Most, bool Close)
{
    /// <summary>Length, mm.</summary>
    public double Length => To - From;
}

/// <summary>
/// The grain angle along a finished edge, seen from above under a clockwise spindle. At the finished surface the tooth always runs with the piece
/// on its left, whatever the feed; so the edge's own direction v (piece on the left) is the tooth's. With g the fibre axis, its sign chosen so
/// that g·v ≥ 0, and n the outward normal, the angle is ψ = atan2(g·n, g·v). (Grain angle from edge to fibre in the plane of the cut: the
/// convention of McKenzie's and Goli's work on cutting across and along the grain.)
/// </summary>
public static class Grain
{
    /// <summary>Edges nearer to the fibres than this are along, degrees (judgment: sources on tear-out begin between 0 and 15).</summary>
    public const double AlongLimit = 5;

    /// <summary>Edges further from the fibres than this are end grain, degrees (judgment: sources have the worst edges near 60).</summary>
    public const double EndLimit = 70;

    /// <summary>A value nearer to a limit than this is told, degrees: end cuts of 15° and 22.5° must not be decided by rounding (judgment).</summary>
    public const double Hair = 1;

    private static readonly double[] Limits = [-EndLimit, -AlongLimit, AlongLimit, EndLimit];

    /// <summary>The grain angle at an edge, degrees in (-90, 90].</summary>
    /// <param name="edge">Unit direction of the edge with the piece on its left.</param>
    /// <param name="fibre">Unit direction of the fibres; its sign does not matter.</param>
    public static double Angle(Point2 edge, Point2 fibre)
    {
        Point2 g = fibre.Dot(edge) < 0 ? -fibre : fibre;
        double degrees = Math.Atan2(g.Dot(edge.Right), g.Dot(edge)) * 180 / Math.PI;
        return degrees <= -90 ? degrees + 180 : degrees;
    }

    /// <summary>The class of a grain angle.</summary>
    /// <param name="degrees">In (-90, 90].</param>
    public static GrainClass ClassOf(double degrees) => Math.Abs(degrees) switch
    {
        <= AlongLimit => GrainClass.Along,
        >= EndLimit => GrainClass.EndGrain,
        _ => degrees > 0 ? GrainClass.With : GrainClass.Against,
    };

    /// <summary>The classes along a contour, in order, neighbours of one class joined.</summary>
    /// <param name="contour">Piece on its left.</param>
    /// <param name="fibre">Direction of the fibres, radians counter-clockwise from X, in the contour's frame.</param>
    public static ImmutableArray<GrainStretch> Along(Contour contour, double fibre)
    {
        var stretches = new List<GrainStretch>();
        double at = 0;
        for (int i = 0; i < contour.SegmentCount; i++)
        {
            Segment segment = contour[i];
            double length = segment.Length;
            double start = (segment.StartDirection.Angle - fibre) * 180 / Math.PI;
            double sweep = segment.Sweep * 180 / Math.PI;
            double from = 0;
            foreach (double to in Breaks(start, sweep).Append(1))
            {
                if (to - from > 1e-12)
                {
                    Add(stretches, Stretch(at + (from * length), at + (to * length), start + (from * sweep), start + (to * sweep)));
                }

                from = to;
            }

            at += length;
        }

        return [.. stretches];
    }

    // Along an arc the edge's direction, and with it the angle, turns evenly: the shares at which it meets a limit.
    private static IEnumerable<double> Breaks(double start, double sweep)
    {
        if (sweep == 0)
        {
            return [];
        }

        var shares = new List<double>();
        double low = Math.Min(start, start + sweep);
        double high = Math.Max(start, start + sweep);
        foreach (double limit in Limits.Append(90))
        {
            for (double value = limit + (180 * Math.Ceiling((low - limit) / 180)); value < high; value += 180)
            {
                shares.Add((value - start) / sweep);
            }
        }

        return shares.Where(s => s is > 0 and < 1).Order();
    }

    private static GrainStretch Stretch(double from, double to, double startDegrees, double endDegrees)
    {
        double middle = Wrap((startDegrees + endDegrees) / 2);
        double half = Math.Abs(endDegrees - startDegrees) / 2;
        GrainClass kind = ClassOf(middle);

        // Only a straight edge that stays near a limit hangs on a hair; a curve that passes through it does not.
        bool close = half == 0 && Limits.Any(l => Math.Abs(middle - l) < Hair);
        return new GrainStretch(from, to, kind, middle - half, middle + half, close);
    }

    private static void Add(List<GrainStretch> stretches, GrainStretch next)
    {
        if (stretches.Count > 0 && stretches[^1] is var last && last.Class == next.Class)
        {
            stretches[^1] = new GrainStretch(
                last.From, next.To, last.Class, Math.Min(last.Least, next.Least), Math.Max(last.Most, next.Most), last.Close || next.Close);
            return;
        }

        stretches.Add(next);
    }

    private static double Wrap(double degrees)
    {
        double wrapped = degrees - (180 * Math.Round(degrees / 180));
        return wrapped <= -90 ? wrapped + 180 : wrapped;
    }
}
