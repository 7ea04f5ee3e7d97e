namespace ToolpathForge.Geometry;

/// <summary>Consecutive pieces of a spline that meet without a corner. Its parameter is the number of whole pieces before the point and the piece's own.</summary>
internal sealed class SplineRun(IReadOnlyList<BezierPiece> pieces)
{
    /// <summary>How finely the places are looked for where the tangents of two arcs may agree; a span with more than one such place is rare, with two nearer than this unheard of.</summary>
    private const int JointLooks = 8;

    public double End => pieces.Count;

    public Point2 PointAt(double t)
    {
        int piece = PieceAt(t);
        return pieces[piece].PointAt(t - piece);
    }

    public Point2 DirectionAt(double t)
    {
        int piece = PieceAt(t);
        return pieces[piece].DirectionAt(t - piece);
    }

    /// <summary>The biarc over any span, through inflections and turning points of the curvature as well, with its deviation bounded by <see cref="ArcProof"/>.</summary>
    public Biarc BiarcOver(double from, double to)
    {
        Point2 start = PointAt(from);
        Point2 end = PointAt(to);
        Point2 leaving = DirectionAt(from);
        Point2 arriving = DirectionAt(to);
        double turn = Biarc.AngleBetween(leaving, arriving);
        var best = new Biarc(from, to, end, 0, 0, double.PositiveInfinity);
        if (start.DistanceTo(end) <= Accuracy.SamePoint)
        {
            return best;
        }

        double Excess(double t)
        {
            Point2 p = PointAt(t);
            return (2 * (Biarc.AngleBetween(leaving, p - start) + Biarc.AngleBetween(end - p, arriving))) - turn;
        }

        double before = from;
        double atBefore = (2 * Biarc.AngleBetween(end - start, arriving)) - turn;
        double atEnd = (2 * Biarc.AngleBetween(leaving, end - start)) - turn;
        if (Math.Abs(atBefore) < Biarc.DirectionNoise(start, end) && Math.Abs(atEnd) < Biarc.DirectionNoise(start, end))
        {
            return With((from + to) / 2);
        }

        for (int i = 1; i <= JointLooks; i++)
        {
            double t = i < JointLooks ? from + ((to - from) * i / JointLooks) : to;
            double at = i < JointLooks ? Excess(t) : atEnd;
            if (Math.Sign(at) * Math.Sign(atBefore) < 0)
            {
                Biarc found = With(RootFinder.Find(Excess, before, atBefore, t, at, 1e-15 * (to - from)));
                best = found.Deviation < best.Deviation ? found : best;
            }

            (before, atBefore) = (t, at);
        }

        return best;

        Biarc With(double joint)
        {
            Point2 meet = PointAt(joint);
            double first = Biarc.AngleBetween(leaving, meet - start);
            double second = Biarc.AngleBetween(end - meet, arriving);
            double deviation = Math.Max(
                ArcProof.Deviation(Between(from, joint), start, leaving, 2 * Math.Sin(first) / start.DistanceTo(meet), 2 * first),
                ArcProof.Deviation(Between(joint, to), end, arriving, 2 * Math.Sin(second) / meet.DistanceTo(end), 2 * second));

            // A segment holds at most half a turn.
            bool writable = Math.Abs(first) <= Math.PI / 2 && Math.Abs(second) <= Math.PI / 2;
            return new Biarc(from, to, meet, Math.Tan(first / 2), Math.Tan(second / 2), writable ? deviation : double.PositiveInfinity);
        }
    }

    /// <summary>True when a part lies within a distance of its beginning, by its poles.</summary>
    public bool IsWithin(double from, double to, double distance)
    {
        Point2 start = PointAt(from);
        foreach (BezierPiece piece in Between(from, to))
        {
            for (int i = 0; i <= piece.X.Degree; i++)
            {
                if (piece.Pole(i).DistanceTo(start) > distance)
                {
                    return false;
                }
            }
        }

        return true;
    }

    private int PieceAt(double t) => Math.Clamp((int)t, 0, pieces.Count - 1);

    private IEnumerable<BezierPiece> Between(double from, double to)
    {
        for (int i = PieceAt(from); i < to && i < pieces.Count; i++)
        {
            double low = Math.Max(from - i, 0);
            double high = Math.Min(to - i, 1);
            if (high > low)
            {
                yield return pieces[i].Part(low, high);
            }
        }
    }
}
