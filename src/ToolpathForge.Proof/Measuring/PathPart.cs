namespace ToolpathForge.Proof;

/// <summary>
/// A straight line, a point, or an arc of at most a quarter turn: what every distance here is taken between. Both the tip's path and the exact edges are made of these;
/// <see cref="Error"/> says how far the true curve may lie from the part.
/// </summary>
internal readonly struct PathPart
{
    private PathPart(PlanePoint start, PlanePoint end, PlanePoint center, double radius, double startAngle, double sweep, double error, int owner, double from, double to)
    {
        Start = start;
        End = end;
        Center = center;
        Radius = radius;
        StartAngle = startAngle;
        Sweep = sweep;
        Error = error;
        Owner = owner;
        From = from;
        To = to;
    }

    internal PlanePoint Start { get; }

    internal PlanePoint End { get; }

    internal PlanePoint Center { get; }

    /// <summary>0 for a line.</summary>
    internal double Radius { get; }

    internal double StartAngle { get; }

    /// <summary>Signed radians.</summary>
    internal double Sweep { get; }

    /// <summary>Every point of the true curve lies within this of the part, and every point of the part within this of the true curve, mm.</summary>
    internal double Error { get; }

    /// <summary>Index of the motion or edge that it is a part of.</summary>
    internal int Owner { get; }

    /// <summary>Share of the owner at its start.</summary>
    internal double From { get; }

    /// <summary>Share of the owner at its end.</summary>
    internal double To { get; }

    internal bool IsArc => Radius > 0;

    internal double Length => IsArc ? Radius * Math.Abs(Sweep) : Start.DistanceTo(End);

    internal static PathPart Line(PlanePoint start, PlanePoint end, double error, int owner, double from, double to) =>
        new(start, end, default, 0, 0, 0, error, owner, from, to);

    internal static PathPart Arc(PlanePoint center, double radius, double startAngle, double sweep, double error, int owner, double from, double to) =>
        new(
            center.Plus(PlanePoint.Direction(startAngle).Times(radius)),
            center.Plus(PlanePoint.Direction(startAngle + sweep).Times(radius)),
            center, radius, startAngle, sweep, error, owner, from, to);

    /// <summary>An arc of any sweep as parts of at most a quarter turn each.</summary>
    internal static void AddArc(List<PathPart> parts, PlanePoint center, double radius, double startAngle, double sweep, double error, int owner, double from, double to)
    {
        if (Math.Abs(sweep) <= ProofAccuracy.StraightSweep)
        {
            PlanePoint start = center.Plus(PlanePoint.Direction(startAngle).Times(radius));
            parts.Add(Line(start, center.Plus(PlanePoint.Direction(startAngle + sweep).Times(radius)), error, owner, from, to));
            return;
        }

        int count = Math.Max(1, (int)Math.Ceiling(Math.Abs(sweep) / ((Math.PI / 2) + ProofAccuracy.StraightSweep)));
        for (int i = 0; i < count; i++)
        {
            double a = (double)i / count, b = (double)(i + 1) / count;
            parts.Add(Arc(center, radius, startAngle + (sweep * a), sweep / count, error, owner, from + ((to - from) * a), from + ((to - from) * b)));
        }
    }

    /// <summary>The point at a share of this part.</summary>
    internal PlanePoint PointAt(double share) => IsArc
        ? Center.Plus(PlanePoint.Direction(StartAngle + (Sweep * share)).Times(Radius))
        : Start.Plus(End.Minus(Start).Times(share));

    /// <summary>Direction of travel at a point of this part, of length one; none for a point.</summary>
    internal PlanePoint DirectionAt(PlanePoint point) => IsArc
        ? point.Minus(Center).Left.Times(Math.Sign(Sweep)).Unit()
        : End.Minus(Start).Unit();

    /// <summary>The stretch between two shares of this part.</summary>
    internal PathPart Between(double a, double b)
    {
        double from = From + ((To - From) * a), to = From + ((To - From) * b);
        return IsArc && Math.Abs(Sweep) * (b - a) > ProofAccuracy.StraightSweep
            ? Arc(Center, Radius, StartAngle + (Sweep * a), Sweep * (b - a), Error, Owner, from, to)
            : Line(PointAt(a), PointAt(b), Error, Owner, from, to);
    }

    /// <summary>Share of this part at a point on it.</summary>
    internal double ShareAt(PlanePoint point)
    {
        if (IsArc)
        {
            return Math.Clamp(Start.Minus(Center).AngleTo(point.Minus(Center)) / Sweep, 0, 1);
        }

        PlanePoint along = End.Minus(Start);
        double square = along.Dot(along);
        return square > 0 ? Math.Clamp(point.Minus(Start).Dot(along) / square, 0, 1) : 0;
    }

    /// <summary>Whether the direction from the centre to a point falls between the arc's two radii; any point for the centre itself.</summary>
    internal bool IsInSector(PlanePoint point)
    {
        PlanePoint v = point.Minus(Center);
        double sign = Math.Sign(Sweep);
        return Start.Minus(Center).Cross(v) * sign >= 0 && v.Cross(End.Minus(Center)) * sign >= 0;
    }

    internal Box Box
    {
        get
        {
            Box box = Box.Around(Start, End);
            if (!IsArc)
            {
                return box;
            }

            for (int quarter = 0; quarter < 4; quarter++)
            {
                PlanePoint extreme = Center.Plus(new PlanePoint(quarter == 0 ? Radius : quarter == 2 ? -Radius : 0, quarter == 1 ? Radius : quarter == 3 ? -Radius : 0));
                if (IsInSector(extreme))
                {
                    box = box.With(extreme);
                }
            }

            return box;
        }
    }
}

/// <summary>A box along the axes.</summary>
internal readonly record struct Box(double MinX, double MinY, double MaxX, double MaxY)
{
    internal static Box Around(PlanePoint a, PlanePoint b) =>
        new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y));

    internal Box With(PlanePoint p) => new(Math.Min(MinX, p.X), Math.Min(MinY, p.Y), Math.Max(MaxX, p.X), Math.Max(MaxY, p.Y));

    internal Box With(Box b) => new(Math.Min(MinX, b.MinX), Math.Min(MinY, b.MinY), Math.Max(MaxX, b.MaxX), Math.Max(MaxY, b.MaxY));

    internal Box Grown(double by) => new(MinX - by, MinY - by, MaxX + by, MaxY + by);

    internal bool Contains(PlanePoint p) => p.X >= MinX && p.X <= MaxX && p.Y >= MinY && p.Y <= MaxY;

    /// <summary>Square of the least distance to a point; 0 inside.</summary>
    internal double SquareDistanceTo(PlanePoint p)
    {
        double dx = Math.Max(Math.Max(MinX - p.X, p.X - MaxX), 0), dy = Math.Max(Math.Max(MinY - p.Y, p.Y - MaxY), 0);
        return (dx * dx) + (dy * dy);
    }

    /// <summary>Square of the least distance to another box; 0 if they overlap.</summary>
    internal double SquareDistanceTo(Box b)
    {
        double dx = Math.Max(Math.Max(MinX - b.MaxX, b.MinX - MaxX), 0), dy = Math.Max(Math.Max(MinY - b.MaxY, b.MinY - MaxY), 0);
        return (dx * dx) + (dy * dy);
    }
}
