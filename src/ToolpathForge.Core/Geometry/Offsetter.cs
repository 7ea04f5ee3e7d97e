using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ToolpathForge.Findings;

namespace ToolpathForge.Geometry;

/// <summary>Parallels of contours and regions of lines and arcs; arcs stay arcs.</summary>
public static class Offsetter
{
    /// <summary>How far from its corner, in distances, a sharp join may reach: 2 allows inside angles down to 60°, sharper corners are rounded.</summary>
    public const double SharpLimit = 2;

    /// <summary>The region inside a closed contour, grown or shrunk.</summary>
    /// <param name="contour">Closed, in either direction.</param>
    /// <param name="distance">mm; positive grows, negative shrinks.</param>
    /// <param name="join">What happens at corners that open away from the offset side.</param>
    /// <exception cref="ArgumentException">An open contour, or a distance that is not finite.</exception>
    public static OffsetResult Closed(Contour contour, double distance, JoinStyle join = JoinStyle.Round)
    {
        if (!contour.IsClosed)
        {
            throw new ArgumentException("Only a closed contour bounds a region; take OneSide or BothSides.", nameof(contour));
        }

        return Closed(Region.Of(contour), distance, join);
    }

    /// <summary>A region, grown or shrunk.</summary>
    /// <param name="region">Outer loops and holes.</param>
    /// <param name="distance">mm; positive grows (holes get smaller), negative shrinks.</param>
    /// <param name="join">What happens at corners that open away from the offset side.</param>
    /// <exception cref="ArgumentException">A distance that is not finite.</exception>
    public static OffsetResult Closed(Region region, double distance, JoinStyle join = JoinStyle.Round)
    {
        Check(distance);
        var input = new List<Piece>();
        for (int c = 0; c < region.Loops.Length; c++)
        {
            Contour loop = region.Loops[c];
            for (int i = 0; i < loop.SegmentCount; i++)
            {
                input.Add(new Piece(loop[i], new SegmentOrigin(c, i, false)));
            }
        }

        return Run(input, region.Loops.Length, distance, join, EndStyle.Round, false, static _ => true);
    }

    /// <summary>The parallel of an open contour on one side, clear of the whole contour by the distance; it may fall into several parts.</summary>
    /// <param name="contour">Open.</param>
    /// <param name="distance">mm; positive to the left of its direction, negative to the right.</param>
    /// <param name="join">What happens at corners that open away from the offset side.</param>
    /// <exception cref="ArgumentException">A closed contour, or a distance that is not finite.</exception>
    public static OffsetResult OneSide(Contour contour, double distance, JoinStyle join = JoinStyle.Round)
    {
        Check(distance);
        Contour walked = Open(contour);
        bool left = distance > 0;
        var there = There(walked);
        OffsetResult both = Run(ThereAndBack(there), 1, Math.Abs(distance), join, EndStyle.Round, true, p => (p.Origin.Contour == 0) != left);

        // The grown region is walked with its inside on the left: the contour's left side comes out backwards.
        if (!left || both.Unproven is not null)
        {
            return both;
        }

        ImmutableArray<OffsetLoop> turned = [.. both.Loops.Select(l => new OffsetLoop(l.Contour.Reversed(), [.. l.Origins.Reverse()]))];
        return both with { Loops = turned };
    }

    /// <summary>The closed outline of everything within a distance of an open contour.</summary>
    /// <param name="contour">Open.</param>
    /// <param name="distance">More than 0, mm.</param>
    /// <param name="end">How the two sides are closed at the ends.</param>
    /// <param name="join">What happens at corners.</param>
    /// <exception cref="ArgumentException">A closed contour, or a distance that is not finite and positive.</exception>
    public static OffsetResult BothSides(Contour contour, double distance, EndStyle end, JoinStyle join = JoinStyle.Round)
    {
        Check(distance);
        if (distance <= 0)
        {
            throw new ArgumentException("Both sides of a contour lie at a positive distance.", nameof(distance));
        }

        return Run(ThereAndBack(There(Open(contour))), 1, distance, join, end, true, null);
    }

    private static void Check(double distance)
    {
        if (!(Math.Abs(distance) <= Accuracy.LargestCoordinate))
        {
            throw new ArgumentException(FormattableString.Invariant($"{distance} is no distance to offset by."), nameof(distance));
        }
    }

    private static Contour Open(Contour contour) =>
        contour.IsClosed ? throw new ArgumentException("The contour is closed; take Closed.", nameof(contour)) : contour;

    private static List<Piece> There(Contour contour)
    {
        var pieces = new List<Piece>();
        for (int i = 0; i < contour.SegmentCount; i++)
        {
            pieces.Add(new Piece(contour[i], new SegmentOrigin(0, i, false)));
        }

        return pieces;
    }

    private static List<Piece> ThereAndBack(List<Piece> there)
    {
        var pieces = new List<Piece>(there);
        for (int i = there.Count - 1; i >= 0; i--)
        {
            pieces.Add(new Piece(there[i].Segment.Reversed, there[i].Origin with { Contour = 1 }));
        }

        return pieces;
    }

    private static OffsetResult Run(List<Piece> input, int contours, double distance, JoinStyle join, EndStyle end, bool isPath, Func<Piece, bool>? openFilter)
    {
        input = input.FindAll(static p => p.Segment.Chord > Accuracy.SamePoint);
        if (input.Count == 0)
        {
            return new OffsetResult([], [], null);
        }

        if (distance == 0 && !isPath)
        {
            throw new ArgumentException("An offset by nothing is no offset.", nameof(distance));
        }

        double d = Math.Abs(distance);
        var raw = new List<Piece>();
        foreach ((int from, int to) in Chains(input, isPath))
        {
            for (int i = from; i < to; i++)
            {
                Piece a = input[i];
                Piece b = input[i + 1 < to ? i + 1 : from];
                AddParallel(raw, a, distance);
                AddJoin(raw, a, b, distance, join, isPath && end == EndStyle.Flat && a.Origin.Segment == b.Origin.Segment);
            }
        }

        List<List<Piece>>? loops = Arrangement.Build(raw, piece =>
        {
            Point2 m = piece.Segment.PointAt(0.5);
            foreach (Piece s in input)
            {
                if (s.Segment.Distance(m) < d - 1e-8 && !(end == EndStyle.Flat && isPath && BeyondEnd(input, s, m)))
                {
                    return false;
                }
            }

            return true;
        });
        if (loops is null)
        {
            return Unproven(input, distance, "the pieces do not close");
        }

        return Result(loops, contours, isPath, openFilter, input.Max(static p => p.Origin.Segment));
    }

    private static bool BeyondEnd(List<Piece> input, Piece s, Point2 m)
    {
        int last = input.Max(static p => p.Origin.Segment);
        Segment walked = s.Origin.Contour == 0 ? s.Segment : s.Segment.Reversed;
        Point2 nearest = walked.Nearest(m);
        return (s.Origin.Segment == 0 && nearest.DistanceTo(walked.Start) < 1e-9) || (s.Origin.Segment == last && nearest.DistanceTo(walked.End) < 1e-9);
    }

    private static IEnumerable<(int From, int To)> Chains(List<Piece> input, bool isPath)
    {
        int from = 0;
        for (int i = 1; i <= input.Count; i++)
        {
            if (i == input.Count || (!isPath && input[i].Origin.Contour != input[from].Origin.Contour))
            {
                yield return (from, i);
                from = i;
            }
        }
    }

    private static void AddParallel(List<Piece> raw, Piece a, double distance)
    {
        Segment s = a.Segment;
        if (!s.IsLine && s.Radius + (Math.Sign(s.Bulge) * distance) <= 1e-9)
        {
            return;
        }

        raw.Add(a with { Segment = new Segment(s.Start + (s.StartDirection.Right * distance), s.End + (s.EndDirection.Right * distance), s.IsLine ? 0 : s.Bulge) });
    }

    private static void AddJoin(List<Piece> raw, Piece a, Piece b, double distance, JoinStyle join, bool flat)
    {
        Point2 t0 = a.Segment.EndDirection;
        Point2 t1 = b.Segment.StartDirection;
        double turn = Math.Atan2(t0.Cross(t1), t0.Dot(t1));
        if (Math.Abs(turn) > Math.PI - 1e-12)
        {
            turn = Math.PI * Math.Sign(distance);
        }

        if (turn * distance <= 1e-9)
        {
            return;
        }

        Point2 from = a.Segment.End + (t0.Right * distance);
        Point2 to = a.Segment.End + (t1.Right * distance);
        var origin = new Piece(default, a.Origin with { IsJoin = true });
        if (flat)
        {
            raw.Add(origin with { Segment = new Segment(from, to) });
        }
        else if (join == JoinStyle.Sharp && Math.Cos(turn / 2) * SharpLimit >= 1 - 1e-12)
        {
            Point2 apex = from + (t0 * Math.Abs(distance * Math.Tan(turn / 2)));
            raw.Add(origin with { Segment = new Segment(from, apex) });
            raw.Add(origin with { Segment = new Segment(apex, to) });
        }
        else
        {
            raw.Add(origin with { Segment = new Segment(from, to, Math.Tan(turn / 4)) });
        }
    }

    private static OffsetResult Result(List<List<Piece>> loops, int contours, bool isPath, Func<Piece, bool>? openFilter, int last)
    {
        var result = new List<OffsetLoop>();
        foreach (List<Piece> loop in loops)
        {
            if (!isPath || openFilter is null)
            {
                int least = 0;
                for (int i = 1; i < loop.Count; i++)
                {
                    least = Order(loop[i].Origin, loop[least].Origin) < 0 ? i : least;
                }

                result.Add(Loop([.. loop[least..], .. loop[..least]], true, isPath));
                continue;
            }

            int cut = loop.FindIndex(p => !openFilter(p) || p.Origin.IsJoin && IsCap(p));
            if (cut < 0)
            {
                result.Add(Loop(loop, true, isPath));
                continue;
            }

            var part = new List<Piece>();
            for (int k = 1; k <= loop.Count; k++)
            {
                Piece p = loop[(cut + k) % loop.Count];
                if (openFilter(p) && !(p.Origin.IsJoin && IsCap(p)))
                {
                    part.Add(p);
                }
                else if (part.Count > 0)
                {
                    result.Add(Loop(part, false, isPath));
                    part = [];
                }
            }
        }

        result.Sort(static (x, y) => Order(x.Origins[0], y.Origins[0]));
        var events = ImmutableArray.CreateBuilder<LoopEvent>();
        for (int c = 0; c < contours; c++)
        {
            ImmutableArray<int> of = [.. Enumerable.Range(0, result.Count).Where(k => result[k].Origins.Any(o => o.Contour == c))];
            if (of.Length != 1)
            {
                Point2 where = of.Length > 0 ? result[of[0]].Contour.Start : default;
                events.Add(new LoopEvent(of.Length == 0 ? LoopFate.Vanished : LoopFate.Split, [c], of, where));
            }
        }

        for (int k = 0; k < result.Count; k++)
        {
            ImmutableArray<int> of = [.. result[k].Origins.Select(static o => o.Contour).Distinct().Order()];
            if (of.Length > 1)
            {
                events.Add(new LoopEvent(LoopFate.Merged, of, [k], result[k].Contour.Start));
            }
        }

        return new OffsetResult([.. result], events.ToImmutable(), null);

        bool IsCap(Piece p) => p.Origin.Segment == 0 && p.Origin.Contour == 1 || p.Origin.Contour == 0 && p.Origin.Segment == last;
    }

    private static OffsetLoop Loop(List<Piece> pieces, bool closed, bool isPath) => new(
        Contour.FromSegments(pieces.ConvertAll(static p => p.Segment).ToArray(), closed),
        [.. pieces.Select(p => isPath ? p.Origin with { Contour = 0 } : p.Origin)]);

    private static int Order(SegmentOrigin a, SegmentOrigin b)
    {
        int order = a.Contour.CompareTo(b.Contour);
        order = order != 0 ? order : a.Segment.CompareTo(b.Segment);
        return order != 0 ? order : a.IsJoin.CompareTo(b.IsJoin);
    }

    private static OffsetResult Unproven(List<Piece> input, double distance, string reason)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"distance {distance:R}");
        foreach (Piece p in input)
        {
            text.Append(CultureInfo.InvariantCulture, $"; {p.Origin.Contour} {p.Segment.Start.X:R} {p.Segment.Start.Y:R} {p.Segment.Bulge:R}");
        }

        Point2 at = input[0].Segment.Start;
        return new OffsetResult([], [], Finding.Of(
            GeometryFindings.OffsetUnproven,
            Place.None.AtPoint(at.X, at.Y),
            Quantity.Length(distance),
            Quantity.Length(distance),
            Arg.Of("reason", reason),
            Arg.Of("reproducer", text.ToString())));
    }
}
