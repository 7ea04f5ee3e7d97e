using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>Looks for the narrow places of one region on one side: the pairs of points that may be one, and the test whether they are.</summary>
internal sealed class NarrowSearch
{
    /// <summary>Directions that differ by less are alike, radians: over 100 mm of facing edges the width then changes by 1e-4 mm, the finest increment that any dialect writes.</summary>
    private const double AlikeDirections = 1e-6;

    /// <summary>What is forgiven about the circle that must hold no boundary, mm.</summary>
    private const double Forgiven = 1e-7;

    private readonly EdgeIndex _index;
    private readonly (Vertex[] Row, bool IsClosed)[] _rows;
    private readonly NormalCones _cones;
    private readonly Side _side;
    private readonly List<int> _near = [];

    internal NarrowSearch(Region region, Side side)
    {
        _rows = [.. region.Loops.Select(l => (l.Vertices.ToArray(), true))];
        _index = new EdgeIndex(_rows, 0);
        _side = side;
        _cones = new NormalCones(_index, side);
    }

    /// <summary>All up to a width, the narrowest first, each once.</summary>
    internal ImmutableArray<NarrowPlace> UpTo(double widest)
    {
        var found = new List<NarrowPlace>();
        var others = new List<int>();
        for (int i = 0; i < _index.Edges.Length; i++)
        {
            _index.Edges[i].Bounds(out System.Runtime.Intrinsics.Vector128<double> min, out System.Runtime.Intrinsics.Vector128<double> max);
            _index.Near(min[0] - widest, min[1] - widest, max[0] + widest, max[1] + widest, i + 1, others);
            Segment a = Of(i);
            foreach (int j in others)
            {
                // Most of what lies near looks another way, stands on the same side or behind: cheap to see, and then no pair.
                if (!_cones.MayFace(i, j) || IsBehind(i, j) || IsBehind(j, i))
                {
                    continue;
                }

                Pairs(i, j, a, Of(j), widest, found);
            }
        }

        found.Sort(static (x, y) =>
        {
            int order = x.Width.CompareTo(y.Width);
            order = order != 0 ? order : VertexOrder.Compare(x.A, y.A);
            return order != 0 ? order : VertexOrder.Compare(x.B, y.B);
        });
        return [.. found.Where((p, k) => !found.Take(k).Reverse().TakeWhile(q => p.Width - q.Width < Forgiven).Any(q => IsSame(p, q)))];
    }

    /// <summary>
    /// Whether an edge lies wholly behind what looks out from another to the side that is asked about, and from the vertex at which that begins. What looks out from a straight edge, or
    /// from an arc of at most half a turn that bulges to that side, lies beyond its chord; what looks out from a vertex lies beyond one of its two chords. A hollow arc looks across itself.
    /// </summary>
    private bool IsBehind(int from, int edge) => IsBehindChord(from, edge) && IsBehindChord(Before(from), edge);

    private bool IsBehindChord(int from, int edge)
    {
        ref Edge a = ref _index.Edges[from];
        double sign = _side == Side.Left ? 1 : -1;
        if (a.Bulge * sign > 0)
        {
            return false;
        }

        // Cross products with the chord: its length times how far a point lies beyond it. An arc reaches half its chord times its bulge farther than its ends.
        ref Edge b = ref _index.Edges[edge];
        (double x, double y) = ((a.X1 - a.X0) * sign, (a.Y1 - a.Y0) * sign);
        double start = (x * (b.Y0 - a.Y0)) - (y * (b.X0 - a.X0));
        double end = (x * (b.Y1 - a.Y0)) - (y * (b.X1 - a.X0));
        double rise = b.Bulge == 0 ? 0 : Math.Abs(b.Bulge) / 2 * double.Hypot(b.X1 - b.X0, b.Y1 - b.Y0) * double.Hypot(x, y);
        return Math.Max(start, end) + rise <= 0;
    }

    private static bool IsSame(NarrowPlace p, NarrowPlace q) =>
        (p.A.DistanceTo(q.A) < Forgiven && p.B.DistanceTo(q.B) < Forgiven) || (p.A.DistanceTo(q.B) < Forgiven && p.B.DistanceTo(q.A) < Forgiven);

    private Segment Of(int edge)
    {
        ref Edge e = ref _index.Edges[edge];
        return new Segment(new Point2(e.X0, e.Y0), new Point2(e.X1, e.Y1), e.Bulge);
    }

    // Starts stand for vertices, so that each is looked at once: start and start, start and within, within and within.
    private void Pairs(int i, int j, Segment a, Segment b, double widest, List<NarrowPlace> found)
    {
        Try(i, a.Start, true, j, b.Start, true, widest, found);
        Span<Point2> square = stackalloc Point2[2];
        foreach (Point2 q in square[..Feet(a.Start, b, square)])
        {
            Try(i, a.Start, true, j, q, false, widest, found);
        }

        foreach (Point2 p in square[..Feet(b.Start, a, square)])
        {
            Try(i, p, false, j, b.Start, true, widest, found);
        }

        if (a.IsLine && b.IsLine)
        {
            Facing(i, j, a, b, widest, found);
            return;
        }

        Span<Point2> feet = stackalloc Point2[4];
        (Segment one, Segment two) = b.IsLine ? (b, a) : (a, b);
        int count = SegmentDistance.Feet(one, two, feet);
        foreach (Point2 foot in feet[..count])
        {
            foreach (Point2 q in square[..Feet(foot, two, square)])
            {
                Try(i, b.IsLine ? q : foot, false, j, b.IsLine ? foot : q, false, widest, found);
            }
        }
    }

    // Points within a segment where it is square to the way from a point: one of a line, two of a circle. How many there are.
    private static int Feet(Point2 from, in Segment s, Span<Point2> feet)
    {
        int count = 0;
        if (s.IsLine)
        {
            Point2 chord = s.End - s.Start;
            double share = (from - s.Start).Dot(chord) / chord.LengthSquared;
            if (share > 0 && share < 1)
            {
                feet[count++] = s.Start.Towards(s.End, share);
            }

            return count;
        }

        Point2 out_ = (from - s.Center).Unit();
        for (int sign = 1; sign >= -1 && out_ != default; sign -= 2)
        {
            if (s.SpansDirection(out_ * sign))
            {
                feet[count++] = s.Center + (out_ * (sign * s.Radius));
            }
        }

        return count;
    }

    private void Facing(int i, int j, Segment a, Segment b, double widest, List<NarrowPlace> found)
    {
        Point2 along = a.StartDirection;
        if (along.Dot(b.StartDirection) > 0 || Math.Abs(along.Cross(b.StartDirection)) > AlikeDirections)
        {
            return;
        }

        double low = Math.Max(0, (b.End - a.Start).Dot(along));
        double high = Math.Min(a.Chord, (b.Start - a.Start).Dot(along));
        if (high > low)
        {
            Point2 p = a.Start + (along * ((low + high) / 2));
            Try(i, p, false, j, b.Nearest(p), false, widest, found);
        }
    }

    private void Try(int i, Point2 p, bool startP, int j, Point2 q, bool startQ, double widest, List<NarrowPlace> found)
    {
        double width = p.DistanceTo(q);
        if (!(width <= widest && width > Forgiven))
        {
            return;
        }

        Point2 u = (q - p) / width;
        Point2 across = u.Left;
        if (!Stiffness(i, p, startP, u, across, out (double Low, double High) one) || !Stiffness(j, q, startQ, -u, across, out (double Low, double High) two))
        {
            return;
        }

        if (Holds(one.Low, two.Low, width) && Holds(one.High, two.High, width) && IsEmpty(p.Towards(q, 0.5), (width / 2) - Forgiven))
        {
            found.Add(new NarrowPlace(width, p + _index.Shift, q + _index.Shift, _index.OwnerOf[i], _index.OwnerOf[j]));
        }
    }

    // Sideways steps s and t at both ends change the width by (a s² + b t² + (t - s)²/w)/2: it must not fall for any.
    private static bool Holds(double a, double b, double width)
    {
        double slack = 1e-9 / width;
        if (double.IsPositiveInfinity(a) || double.IsPositiveInfinity(b))
        {
            return Math.Min(a, b) + (1 / width) >= -slack;
        }

        return a + (1 / width) >= -slack && b + (1 / width) >= -slack && (a * b) + ((a + b) / width) >= -slack / width;
    }

    // How the boundary bends away from the other point, to both sides across; infinite where it leaves at a slant. False where it comes nearer, or the other point is on the wrong side.
    private bool Stiffness(int edge, Point2 at, bool isStart, Point2 u, Point2 across, out (double Low, double High) bends)
    {
        bends = (double.PositiveInfinity, double.PositiveInfinity);
        ref Edge ahead = ref _index.Edges[edge];
        ref Edge behind = ref isStart ? ref _index.Edges[Before(edge)] : ref ahead;
        Point2 forward = isStart ? ahead.StartDirection : ahead.DirectionAt(ahead.PlaceOf(at.X, at.Y));
        Point2 back = isStart ? -behind.EndDirection : -forward;

        // Counter-clockwise from the way ahead to the way back lies what is on the left.
        bool onLeft = Turned(forward, u) < Turned(forward, back);
        if (onLeft != (_side == Side.Left))
        {
            return false;
        }

        return Bend(forward, ahead.Kappa, u, across, ref bends) && Bend(back, -behind.Kappa, u, across, ref bends);

        static double Turned(Point2 from, Point2 to)
        {
            double turn = Math.Atan2(from.Cross(to), from.Dot(to));
            return turn < 0 ? turn + (2 * Math.PI) : turn;
        }
    }

    private static bool Bend(Point2 leaving, double curvature, Point2 u, Point2 across, ref (double Low, double High) bends)
    {
        double nearer = leaving.Dot(u);
        if (nearer > AlikeDirections)
        {
            return false;
        }

        if (nearer >= -AlikeDirections)
        {
            double bend = -curvature * leaving.Left.Dot(u);
            if (leaving.Dot(across) > 0)
            {
                bends.High = bend;
            }
            else
            {
                bends.Low = bend;
            }
        }

        return true;
    }

    private int Before(int edge)
    {
        int owner = _index.OwnerOf[edge];
        return edge > _index.FirstOf[owner] ? edge - 1 : _index.FirstOf[owner + 1] - 1;
    }

    private bool IsEmpty(Point2 center, double radius)
    {
        _index.Near(center.X - radius, center.Y - radius, center.X + radius, center.Y + radius, 0, _near);
        foreach (int e in _near)
        {
            if (_index.Edges[e].DistanceSquared(center.X, center.Y, out _) < radius * radius)
            {
                return false;
            }
        }

        return true;
    }
}
