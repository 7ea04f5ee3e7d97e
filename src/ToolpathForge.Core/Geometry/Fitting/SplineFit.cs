namespace ToolpathForge.Geometry;

/// <summary>
/// Arcs for a spline. Pieces that are straight, or rational pieces that are circular, come out as the lines and arcs they are; what lies between them, between corners and
/// between places where the curve stands still is covered by biarcs.
/// </summary>
internal static class SplineFit
{
    /// <summary>
    /// Pieces whose directions differ by more than this where they meet form a corner, radians: control points written with six decimals, 1 mm apart, differ by 1e-6.
    /// </summary>
    private const double CornerTurn = 1e-5;

    /// <summary>The curve stands still where its speed falls below this share of the piece's size: a cusp, or one too sharp for any radius to show (1e-12 of the size).</summary>
    private const double NoSpeed = 1e-6;

    /// <summary>A piece is straight or circular when it departs from that by no more than this share of its size, and the rounding of its coordinates.</summary>
    private const double ExactShare = 1e-12;

    private const double CoordinateRounding = 2e-15;

    /// <summary>
    /// A hook or an all but sharp cusp that lies within this share of the tolerance is stepped over in a straight line, with a corner, instead of
    /// being rounded by arcs far smaller than anything that can be told apart.
    /// </summary>
    private const double HopShare = 0.25;

    /// <summary>Neighbouring lines or arcs are joined if that moves them by no more than this, mm: a hundredth of what makes two points one.</summary>
    private const double SameCircle = 1e-10;

    public static ArcChain Fit(SplineCurve curve, double tolerance)
    {
        var segments = new List<Segment>();
        double bound = 0;
        var run = new List<BezierPiece>();
        foreach (BezierPiece piece in curve.Pieces.SelectMany(Moving).Where(p => p.Size > Accuracy.SamePoint))
        {
            bool corner = run.Count > 0 && Math.Abs(Biarc.AngleBetween(run[^1].DirectionAt(1), piece.DirectionAt(0))) > CornerTurn;
            IReadOnlyList<Segment>? exact = Exact(piece, out double departure);
            if (corner || exact is not null)
            {
                bound = Math.Max(bound, Cover(run, tolerance, segments));
                run.Clear();
            }

            if (exact is null)
            {
                run.Add(piece);
                continue;
            }

            bound = Math.Max(bound, departure + SameCircle);
            foreach (Segment s in exact)
            {
                Append(segments, s);
            }
        }

        bound = Math.Max(bound, Cover(run, tolerance, segments));
        return new ArcChain(segments.Count > 0 ? segments : [new Segment(curve.Start, curve.End)], bound);
    }

    /// <summary>The piece cut where it stands still: there its direction may turn round.</summary>
    private static IEnumerable<BezierPiece> Moving(BezierPiece piece)
    {
        (Bernstein x, Bernstein y) = piece.SeenFrom(piece.Pole(0), new Point2(1, 0));
        Bernstein vx = x.Derivative(), vy = y.Derivative();
        if (piece.IsRational)
        {
            vx = (vx * piece.W) - (x * piece.W.Derivative());
            vy = (vy * piece.W) - (y * piece.W.Derivative());
        }

        Bernstein slope = ((vx * vx) + (vy * vy)).Derivative();
        double size = piece.Size;
        double from = 0;
        foreach (double u in slope.Roots(1e-14 * slope.Magnitude))
        {
            if (u - from > NoSpeed && 1 - u > NoSpeed && piece.FirstDerivative(u).Length < NoSpeed * size)
            {
                yield return piece.Part(from, u);
                from = u;
            }
        }

        yield return piece.Part(from, 1);
    }

    /// <summary>The piece as a line or as one or two arcs, if it is that; else null.</summary>
    private static IReadOnlyList<Segment>? Exact(BezierPiece piece, out double departure)
    {
        Point2 start = piece.PointAt(0);
        Point2 end = piece.PointAt(1);
        departure = 0;
        double chord = start.DistanceTo(end);
        if (chord <= Accuracy.SamePoint)
        {
            return null;
        }

        double allowed = (ExactShare * piece.Size) + (CoordinateRounding * (start.Length + end.Length));
        departure = ArcProof.Deviation([piece], start, (end - start).Unit(), 0, 0);
        if (departure <= allowed)
        {
            return [new Segment(start, end)];
        }

        if (!piece.IsRational)
        {
            return null;
        }

        Point2 leaving = piece.DirectionAt(0);
        double half = Biarc.AngleBetween(leaving, end - start);
        departure = ArcProof.Deviation([piece], start, leaving, 2 * Math.Sin(half) / chord, 2 * half);
        if (departure > allowed)
        {
            return null;
        }

        if (Math.Abs(half) <= Math.PI / 2)
        {
            return [new Segment(start, end, Math.Tan(half / 2))];
        }

        // More than half a turn is two arcs; the point between them lies on the bisector.
        Point2 middle = start + (leaving.Rotated(half / 2) * (chord / (2 * Math.Cos(half / 2))));
        return [new Segment(start, middle, Math.Tan(half / 4)), new Segment(middle, end, Math.Tan(half / 4))];
    }

    private static double Cover(List<BezierPiece> pieces, double tolerance, List<Segment> segments)
    {
        if (pieces.Count == 0)
        {
            return 0;
        }

        double bound = 0;
        var run = new SplineRun([.. pieces]);
        var chain = new BiarcChain(run.BiarcOver, 1e-11, 1e-9);
        double hop = tolerance * HopShare;
        double at = 0;
        while (at < run.End)
        {
            List<Biarc> greedy = chain.Greedy(at, run.End, tolerance, b => b.To < run.End && run.IsWithin(b.From, b.To, hop));
            double to = greedy.Count > 0 ? greedy[^1].To : at;
            foreach (Biarc biarc in chain.Balanced(at, to, tolerance, greedy))
            {
                Point2 start = run.PointAt(biarc.From), meet = biarc.Meet, end = run.PointAt(biarc.To);
                segments.Add(new Segment(start, meet, biarc.FirstBulge));
                segments.Add(new Segment(meet, end, biarc.SecondBulge));
                bound = Math.Max(bound, biarc.Deviation);
            }

            at = to;
            if (at < run.End)
            {
                at = HopEnd(run, to, hop);
                segments.Add(new Segment(run.PointAt(to), run.PointAt(at)));
                bound = Math.Max(bound, hop);
            }
        }

        return bound;
    }

    /// <summary>The end of the longest part that stays near its beginning.</summary>
    private static double HopEnd(SplineRun run, double from, double distance)
    {
        if (run.IsWithin(from, run.End, distance))
        {
            return run.End;
        }

        double low = from, high = run.End;
        while (high - low > 1e-12 * run.End && double.BitIncrement(low) < high)
        {
            double middle = (low + high) / 2;
            (low, high) = run.IsWithin(from, middle, distance) ? (middle, high) : (low, middle);
        }

        return low > from ? low : high;
    }

    /// <summary>Adds a line or an arc; one that goes on along the line or circle of the last becomes part of it.</summary>
    private static void Append(List<Segment> segments, Segment next)
    {
        if (segments.Count > 0 && Joined(segments[^1], next) is { } longer)
        {
            segments[^1] = longer;
        }
        else
        {
            segments.Add(next);
        }
    }

    private static Segment? Joined(Segment a, Segment b)
    {
        double turn = Math.Abs(Biarc.AngleBetween(a.EndDirection, b.StartDirection));
        if (turn > Accuracy.SameDirection || a.IsLine != b.IsLine)
        {
            return null;
        }

        double sweep = a.Sweep + b.Sweep;
        if (a.Bulge * b.Bulge < 0 || Math.Abs(sweep) > Math.PI + 1e-12)
        {
            return null;
        }

        var joined = new Segment(a.Start, b.End, a.IsLine ? 0 : Math.Clamp(Math.Tan(sweep / 4), -1, 1));
        bool same = Math.Max(joined.Distance(a.End), Math.Max(joined.Distance(a.PointAt(0.5)), joined.Distance(b.PointAt(0.5)))) <= SameCircle;
        return same ? joined : null;
    }
}
