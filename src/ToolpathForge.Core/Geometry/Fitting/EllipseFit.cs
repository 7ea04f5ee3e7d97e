namespace ToolpathForge.Geometry;

/// <summary>
/// Arcs for a piece of an ellipse. It is cut at the ends of its axes, where the curvature turns round, and each quadrant is fitted as part of one upright
/// quarter ellipse, from the long axis to the short one: so equal quadrants get equal arcs, whatever the direction, the axes or the side they lie on.
/// </summary>
internal static class EllipseFit
{
    private const double Quarter = Math.PI / 2;

    /// <summary>Ends of arcs that need not be fewest are found to this share of the curve.</summary>
    private const double QuickAccuracy = 1e-6;

    /// <summary>
    /// Joints off the curve take up to a seventh off a biarc's deviation; with a good margin, a fifth, each biarc reaches farther by the cube root of that.
    /// </summary>
    private static readonly double s_mostSaved = Math.Cbrt(1 / 0.8);

    /// <summary>Fits it.</summary>
    /// <param name="curve">The piece of an ellipse.</param>
    /// <param name="tolerance">mm.</param>
    /// <param name="isFewest">False for arcs that hold the tolerance, however many and however uneven.</param>
    public static ArcChain Fit(EllipseCurve curve, double tolerance, bool isFewest)
    {
        if (curve.Sweep < 0)
        {
            return Fit((EllipseCurve)curve.Reversed(), tolerance, isFewest).Reversed();
        }

        EllipseCurve e = LongAxisFirst(curve);
        double a = e.Major.Length;
        double b = e.Minor.Length;
        if (b < ArcFit.FinestTolerance)
        {
            return Flat(e, b);
        }

        if (a - b < Accuracy.SamePoint)
        {
            return Circle(e, a - b);
        }

        var segments = new List<Segment>();
        double bound = 0;
        var known = new Dictionary<(double From, double To), List<Biarc>>();
        List<double> cuts = Cuts(e, a, b, out double sliver);
        for (int i = 0; i + 1 < cuts.Count; i++)
        {
            Fold fold = Fold.Of(cuts[i], cuts[i + 1]);
            if (!known.TryGetValue((fold.Low, fold.High), out List<Biarc>? chain))
            {
                chain = FitUpright(a, b, fold, tolerance, isFewest);
                known.Add((fold.Low, fold.High), chain);
            }

            bound = Math.Max(bound, Append(segments, e, fold, chain));
        }

        return new ArcChain(segments, bound + sliver);
    }

    private static EllipseCurve LongAxisFirst(EllipseCurve e) => e.Major.LengthSquared >= e.Minor.LengthSquared
        ? e
        : e with { Major = e.Minor, Minor = -e.Major, StartParameter = e.StartParameter - Quarter };

    private static double Append(List<Segment> segments, EllipseCurve e, Fold fold, List<Biarc> chain)
    {
        double bound = 0;
        double turn = Math.Sign(e.Major.Cross(e.Minor));
        int count = 2 * chain.Count;
        for (int i = 0; i < count; i++)
        {
            int at = fold.Forwards ? i : count - 1 - i;
            Biarc biarc = chain[at / 2];
            bool first = at % 2 == 0;
            Point2 meet = fold.Unfold(biarc.Meet, e);
            Point2 node = PointAt(e, fold.Unfold(first ? biarc.From : biarc.To));
            bool fromNode = first == fold.Forwards;
            segments.Add(new Segment(
                segments.Count > 0 ? segments[^1].End : node, fromNode ? meet : node, turn * (first ? biarc.FirstBulge : biarc.SecondBulge)));
            bound = Math.Max(bound, biarc.Deviation);
        }

        return bound;
    }

    /// <summary>
    /// Biarcs over a part of the first quadrant of an upright ellipse. Their joints lie on it, unless joints that make both arcs depart equally save a biarc.
    /// </summary>
    private static List<Biarc> FitUpright(double a, double b, Fold fold, double tolerance, bool isFewest)
    {
        var upright = new EllipseCurve(default, new Point2(a, 0), new Point2(0, b), 0, 1);
        Biarc OnCurve(double from, double to) => SpiralBiarc.OnCurve(upright, from, to);
        if (!isFewest)
        {
            return new BiarcChain(OnCurve, QuickAccuracy, QuickAccuracy).Greedy(fold.Low, fold.High, tolerance);
        }

        var joined = new BiarcChain(OnCurve, 1e-14, 1e-12);
        List<Biarc> greedy = joined.Greedy(fold.Low, fold.High, tolerance);
        if (greedy.Count < 2)
        {
            return greedy;
        }

        // Cube roots of deviations add up along the curve: what the last biarc has to spare says whether one can be saved at all.
        int left = greedy.Count - 1;
        if (greedy.Sum(b => Math.Cbrt(b.Deviation / tolerance)) <= left * s_mostSaved)
        {
            var even = new BiarcChain((from, to) => SpiralBiarc.Even(upright, from, to), 1e-12, 1e-10);
            List<Biarc> fewer = even.Greedy(fold.Low, fold.High, tolerance, b => left-- == 0);
            if (fewer[^1].To >= fold.High)
            {
                return even.Balanced(fold.Low, fold.High, tolerance, fewer);
            }
        }

        return joined.Balanced(fold.Low, fold.High, tolerance, greedy);
    }

    private static Point2 PointAt(EllipseCurve e, double u)
    {
        (double sin, double cos) = Turning.SinCos(u);
        return e.Center + (e.Major * cos) + (e.Minor * sin);
    }

    /// <summary>
    /// Parameters of both ends and of the axis ends between. Where a cut would leave a sliver too short to be told from a straight line, it is not made:
    /// curve and arc touch at the sliver's far end and part by less than the half square of its length times the curvature.
    /// </summary>
    private static List<double> Cuts(EllipseCurve e, double a, double b, out double sliver)
    {
        double from = e.StartParameter;
        double to = from + e.Sweep;
        sliver = 0;
        var cuts = new List<double> { from };
        for (double k = Math.Ceiling(from / Quarter); k * Quarter < to; k++)
        {
            double u = k * Quarter;
            bool longAxis = k % 2 == 0;
            double speed = longAxis ? b : a;
            double curvature = longAxis ? a / (b * b) : b / (a * a);
            double shorter = Math.Min(u - from, to - u) * speed;
            double off = shorter * shorter * curvature;
            if (off < Accuracy.StraightSagitta)
            {
                sliver = Math.Max(sliver, off);
            }
            else
            {
                cuts.Add(u);
            }
        }

        cuts.Add(to);
        return cuts;
    }

    private static ArcChain Flat(EllipseCurve e, double b)
    {
        var segments = new List<Segment>();
        Point2 at = e.Start;
        double to = e.StartParameter + e.Sweep;
        for (double k = Math.Floor(e.StartParameter / Math.PI) + 1; k * Math.PI < to; k++)
        {
            Point2 turn = PointAt(e, k * Math.PI);
            segments.Add(new Segment(at, turn));
            at = turn;
        }

        segments.Add(new Segment(at, e.End));
        return new ArcChain(segments, b);
    }

    private static ArcChain Circle(EllipseCurve e, double difference)
    {
        int count = Math.Max(1, (int)Math.Ceiling((e.Sweep / Math.PI) - 1e-12));
        double bulge = Math.Sign(e.Major.Cross(e.Minor)) * Math.Tan(e.Sweep / count / 4);
        var segments = new List<Segment>();
        for (int i = 0; i < count; i++)
        {
            Point2 start = i == 0 ? e.Start : segments[^1].End;
            segments.Add(new Segment(start, e.PointAt((i + 1) / (double)count), bulge));
        }

        return new ArcChain(segments, 2 * difference);
    }

    /// <summary>A quadrant's parameters seen as those of the first quadrant, 0 at the long axis.</summary>
    /// <param name="Base">Parameter of the long axis' end that the quadrant touches.</param>
    /// <param name="Forwards">Whether the parameter grows away from it.</param>
    /// <param name="Low">The end nearer to the long axis.</param>
    /// <param name="High">The other end.</param>
    private readonly record struct Fold(double Base, bool Forwards, double Low, double High)
    {
        public static Fold Of(double from, double to)
        {
            double quadrant = Math.Floor((from + to) / 2 / Quarter);
            bool forwards = quadrant % 2 == 0;
            double zero = (forwards ? quadrant : quadrant + 1) * Quarter;
            return forwards
                ? new Fold(zero, true, Clean(from - zero), Clean(to - zero))
                : new Fold(zero, false, Clean(zero - to), Clean(zero - from));
        }

        public double Unfold(double v) => Forwards ? Base + v : Base - v;

        // The long axis' end has the parameter 0 or π, up to whole turns.
        public Point2 Unfold(Point2 p, EllipseCurve e)
        {
            int side = Math.Cos(Base) > 0 ? 1 : -1;
            return e.Center + (e.Major * (side * p.X / e.Major.Length)) + (e.Minor * ((Forwards ? side : -side) * p.Y / e.Minor.Length));
        }

        // Two whole quadrants must compare equal although their parameters were rounded apart.
        private static double Clean(double v) => Math.Abs(v) < 1e-12 ? 0 : Math.Abs(v - Quarter) < 1e-12 ? Quarter : v;
    }
}
