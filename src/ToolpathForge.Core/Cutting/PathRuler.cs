using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>A contour measured along its length: distance s from its first vertex. On a closed contour s may run past the end and starts over.</summary>
internal sealed class PathRuler
{
    private readonly double[] _from;

    internal PathRuler(Contour contour)
    {
        Contour = contour;
        _from = new double[contour.SegmentCount + 1];
        for (int i = 0; i < contour.SegmentCount; i++)
        {
            _from[i + 1] = _from[i] + contour[i].Length;
        }
    }

    internal Contour Contour { get; }

    internal double Length => _from[^1];

    internal double StartOf(int segment) => _from[segment];

    internal Point2 PointAt(double s)
    {
        (int segment, double share) = At(s);
        return Contour[segment].PointAt(share);
    }

    internal Point2 DirectionAt(double s)
    {
        (int segment, double share) = At(s);
        return Contour[segment].DirectionAt(share);
    }

    /// <summary>Signed curvature at a distance, 1/mm, positive when turning left.</summary>
    internal double CurvatureAt(double s) => Contour[At(s).Segment].Curvature;

    /// <summary>Distance along the contour of its point nearest to p.</summary>
    internal double Nearest(Point2 p)
    {
        int best = 0;
        double least = double.PositiveInfinity;
        for (int i = 0; i < Contour.SegmentCount; i++)
        {
            double d = Contour[i].Distance(p);
            if (d < least)
            {
                (least, best) = (d, i);
            }
        }

        Segment s = Contour[best];
        return _from[best] + (ShareOf(s, s.Nearest(p)) * s.Length);
    }

    /// <summary>The parts of segments from one distance to a later one; on a closed contour any number of times round.</summary>
    internal IEnumerable<Segment> Between(double from, double to)
    {
        // Slivers shorter than this are the rounding of a split, not a part of the path.
        const double Sliver = 1e-9;
        double s = from;
        while (to - s > Sliver)
        {
            double lap = Contour.IsClosed ? Math.Floor(s / Length) * Length : 0;
            int index = SegmentAt(s - lap);
            double end = lap + _from[index + 1];
            if (end - s <= Sliver)
            {
                // Standing on a vertex: step to the next segment.
                s = end;
                index = index + 1 < Contour.SegmentCount ? index + 1 : 0;
                if (index == 0 && !Contour.IsClosed)
                {
                    yield break;
                }

                lap = index == 0 ? lap + Length : lap;
                end = lap + _from[index + 1];
            }

            double length = _from[index + 1] - _from[index];
            double stop = Math.Min(end, to);
            if (length > 0)
            {
                yield return Contour[index].Part((s - lap - _from[index]) / length, (stop - lap - _from[index]) / length);
            }

            s = Math.Max(stop, s + Sliver);
        }
    }

    private static double ShareOf(Segment s, Point2 on)
    {
        if (s.IsLine)
        {
            double square = (s.End - s.Start).LengthSquared;
            return square > 0 ? Math.Clamp((on - s.Start).Dot(s.End - s.Start) / square, 0, 1) : 0;
        }

        Point2 c = s.Center;
        Point2 a = s.Start - c;
        Point2 b = on - c;
        double angle = Math.Abs(Math.Atan2(a.Cross(b), a.Dot(b)));
        return Math.Clamp(angle / Math.Abs(s.Sweep), 0, 1);
    }

    private (int Segment, double Share) At(double s)
    {
        double within = Contour.IsClosed ? s - (Math.Floor(s / Length) * Length) : Math.Clamp(s, 0, Length);
        int index = SegmentAt(within);
        double length = _from[index + 1] - _from[index];
        return (index, length > 0 ? Math.Clamp((within - _from[index]) / length, 0, 1) : 0);
    }

    private int SegmentAt(double within)
    {
        int found = Array.BinarySearch(_from, within);
        int index = found >= 0 ? found : ~found - 1;
        return Math.Clamp(index, 0, Contour.SegmentCount - 1);
    }
}
