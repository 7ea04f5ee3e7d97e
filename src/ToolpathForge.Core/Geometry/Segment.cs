namespace ToolpathForge.Geometry;

/// <summary>
/// One piece of a <see cref="Contour"/>: a straight line or a circular arc of at most half a turn, with a direction.
/// </summary>
/// <param name="Start">Where it begins, mm.</param>
/// <param name="End">Where it ends, mm.</param>
/// <param name="Bulge">tan(sweep/4), see <see cref="Vertex.Bulge"/>.</param>
public readonly record struct Segment(Point2 Start, Point2 End, double Bulge)
{
    /// <summary>A straight segment.</summary>
    /// <param name="start">Where it begins.</param>
    /// <param name="end">Where it ends.</param>
    public Segment(Point2 start, Point2 end)
        : this(start, end, 0)
    {
    }

    /// <summary>An arc about a centre, at most half a turn.</summary>
    /// <param name="start">Where it begins; its distance from the centre is the radius.</param>
    /// <param name="end">Where it ends.</param>
    /// <param name="center">The centre.</param>
    /// <param name="counterClockwise">Which way round.</param>
    public static Segment Arc(Point2 start, Point2 end, Point2 center, bool counterClockwise)
    {
        Point2 a = start - center;
        Point2 b = end - center;
        double sweep = Math.Atan2(a.Cross(b), a.Dot(b));
        if (counterClockwise && sweep < 0)
        {
            sweep += 2 * Math.PI;
        }
        else if (!counterClockwise && sweep > 0)
        {
            sweep -= 2 * Math.PI;
        }

        return new Segment(start, end, Math.Tan(sweep / 4));
    }

    /// <summary>Length of the chord, mm.</summary>
    public double Chord => Start.DistanceTo(End);

    /// <summary>Height of the arc above its chord, mm, never negative.</summary>
    public double Sagitta => Math.Abs(Bulge) * Chord / 2;

    /// <summary>True when the segment counts as straight (see <see cref="Accuracy.StraightSagitta"/>).</summary>
    public bool IsLine => Sagitta < Accuracy.StraightSagitta;

    /// <summary>Signed sweep in radians, positive counter-clockwise, in [-π, π]; 0 for a line.</summary>
    public double Sweep => IsLine ? 0 : 4 * Math.Atan(Bulge);

    /// <summary>Radius in mm; infinite for a line. r = c(1 + b²)/(4|b|).</summary>
    public double Radius => IsLine ? double.PositiveInfinity : Chord * (1 + (Bulge * Bulge)) / (4 * Math.Abs(Bulge));

    /// <summary>Signed curvature in 1/mm, positive when turning left.</summary>
    public double Curvature => IsLine ? 0 : Math.Sign(Bulge) / Radius;

    /// <summary>Centre of the arc. Meaningless for a line: check <see cref="IsLine"/> first.</summary>
    public Point2 Center
    {
        get
        {
            // The centre lies on the chord's bisector, (1 - b²)/(4b) chords to its left.
            Point2 chord = End - Start;
            double h = (1 - (Bulge * Bulge)) / (4 * Bulge);
            return new Point2(
                ((Start.X + End.X) / 2) - (chord.Y * h),
                ((Start.Y + End.Y) / 2) + (chord.X * h));
        }
    }

    /// <summary>Length along the segment, mm.</summary>
    public double Length => IsLine ? Chord : Radius * Math.Abs(Sweep);

    /// <summary>The segment walked the other way.</summary>
    public Segment Reversed => new(End, Start, -Bulge);

    /// <summary>Unit direction at the start.</summary>
    public Point2 StartDirection => ChordTurnedBy(-1);

    /// <summary>Unit direction at the end.</summary>
    public Point2 EndDirection => ChordTurnedBy(1);

    /// <summary>Twice the area between the segment and the origin, signed (Green's theorem), mm².</summary>
    public double DoubledArea
    {
        get
        {
            double area = Start.Cross(End);
            if (IsLine)
            {
                return area;
            }

            double sweep = Sweep;
            double r = Radius;
            return area + (r * r * (sweep - Math.Sin(sweep)));
        }
    }

    /// <summary>The smallest axis-parallel box round the segment.</summary>
    public Box2 Box
    {
        get
        {
            Box2 box = Box2.Around(Start, End);
            if (IsLine)
            {
                return box;
            }

            Point2 c = Center;
            double r = Radius;
            foreach (Point2 side in (ReadOnlySpan<Point2>)[new(r, 0), new(0, r), new(-r, 0), new(0, -r)])
            {
                if (SpansDirection(side))
                {
                    box = box.Including(c + side);
                }
            }

            return box;
        }
    }

    /// <summary>Both ends and the bulge with every digit. The written form of a record would follow <see cref="Reversed"/> without end.</summary>
    public override string ToString() => FormattableString.Invariant($"{Start} -> {End} bulge {Bulge}");

    /// <summary>The point at a share of the length.</summary>
    /// <param name="share">0 the start, 1 the end; beyond, the line or circle goes on.</param>
    public Point2 PointAt(double share)
    {
        if (IsLine)
        {
            return Start.Towards(End, share);
        }

        // From the start along the chord of the part: a shallow arc's centre lies so far out that turning about it would lose digits.
        double half = 2 * Math.Atan(Bulge);
        (double sin, double cos) = Math.SinCos(half * (share - 1));
        double ratio = Math.Sin(half * share) * (1 + (Bulge * Bulge)) / (2 * Bulge);
        Point2 chord = End - Start;
        return new Point2(Start.X + (ratio * ((chord.X * cos) - (chord.Y * sin))), Start.Y + (ratio * ((chord.X * sin) + (chord.Y * cos))));
    }

    /// <summary>The unit direction of travel at a share of the length.</summary>
    /// <param name="share">0 the start, 1 the end.</param>
    public Point2 DirectionAt(double share)
    {
        Point2 chord = (End - Start).Unit();
        return IsLine ? chord : chord.Rotated(Sweep * (share - 0.5));
    }

    /// <summary>The part between two shares, in the same direction.</summary>
    /// <param name="from">Share where it begins, 0 to 1.</param>
    /// <param name="to">Share where it ends, not below <paramref name="from"/>.</param>
    public Segment Part(double from, double to)
    {
        Point2 a = from <= 0 ? Start : PointAt(from);
        Point2 b = to >= 1 ? End : PointAt(to);
        return new Segment(a, b, IsLine ? 0 : Math.Tan(Math.Atan(Bulge) * (to - from)));
    }

    /// <summary>The nearest point of the segment to a point.</summary>
    /// <param name="p">The point asked about.</param>
    public Point2 Nearest(Point2 p)
    {
        if (IsLine)
        {
            Point2 chord = End - Start;
            double square = chord.LengthSquared;
            double share = square > 0 ? Math.Clamp((p - Start).Dot(chord) / square, 0, 1) : 0;
            return Start.Towards(End, share);
        }

        Point2 c = Center;
        Point2 out_ = p - c;
        if (out_.LengthSquared > 0 && SpansDirection(out_))
        {
            return c + (out_.Unit() * Radius);
        }

        return p.DistanceTo(Start) <= p.DistanceTo(End) ? Start : End;
    }

    /// <summary>Distance from a point to the segment, mm.</summary>
    /// <param name="p">The point asked about.</param>
    public double Distance(Point2 p)
    {
        if (IsLine)
        {
            return Nearest(p).DistanceTo(p);
        }

        Point2 out_ = p - Center;
        if (!SpansDirection(out_))
        {
            return Math.Min(p.DistanceTo(Start), p.DistanceTo(End));
        }

        // Near the centre the plain difference is exact; elsewhere the power of the point about the circle keeps its digits, however far the centre.
        double fromCenter = out_.Length;
        double radius = Radius;
        if (fromCenter < radius / 2)
        {
            return radius - fromCenter;
        }

        Point2 q = p - Start;
        double k = Curvature;
        double power = q.Dot(StartDirection.Left) - (k * q.LengthSquared / 2);
        return Math.Abs(2 * power / (1 + Math.Sqrt(Math.Max(0, 1 - (2 * k * power)))));
    }

    /// <summary>True when a ray from the arc's centre in the direction given meets the arc. Only for arcs.</summary>
    /// <param name="direction">Any vector but zero.</param>
    public bool SpansDirection(Point2 direction)
    {
        // At most half a turn: the direction is in the sweep when it lies on the arc's side of the line through both ends of the fan.
        Point2 c = Center;
        Point2 a = Start - c;
        Point2 b = End - c;
        return Bulge > 0
            ? a.Cross(direction) >= 0 && direction.Cross(b) >= 0
            : a.Cross(direction) <= 0 && direction.Cross(b) <= 0;
    }

    /// <summary>The chord's direction turned by half the sweep, one way or the other.</summary>
    private Point2 ChordTurnedBy(int sign)
    {
        Point2 chord = (End - Start).Unit();
        if (IsLine)
        {
            return chord;
        }

        // Half the sweep is 2·atan(bulge): its cosine and sine are rational in the bulge.
        double square = Bulge * Bulge;
        double cos = (1 - square) / (1 + square);
        double sin = sign * 2 * Bulge / (1 + square);
        return new Point2((chord.X * cos) - (chord.Y * sin), (chord.X * sin) + (chord.Y * cos));
    }
}
