namespace ToolpathForge.Proof;

/// <summary>Least distance between two parts with the points where it is taken.</summary>
/// <param name="Value">mm; the errors of the two parts are not in it.</param>
/// <param name="OnFirst">On the first part.</param>
/// <param name="OnSecond">On the second part.</param>
internal readonly record struct Nearest(double Value, PlanePoint OnFirst, PlanePoint OnSecond);

/// <summary>
/// Closed-form distances between points, lines and arcs. A least distance between two curves is taken at an end of one of them, where they cross, or along a common normal;
/// every candidate below is a distance between two points that do lie on the parts, so a superfluous one does no harm.
/// </summary>
internal static class Distances
{
    /// <summary>From a point to the nearest point of a part.</summary>
    internal static double Between(PlanePoint p, in PathPart part, out PlanePoint on)
    {
        if (part.IsArc)
        {
            if (part.IsInSector(p))
            {
                PlanePoint v = p.Minus(part.Center);
                double length = v.Length;
                on = length > 0 ? part.Center.Plus(v.Times(part.Radius / length)) : part.Start;
                return Math.Abs(length - part.Radius);
            }

            double toStart = p.DistanceTo(part.Start), toEnd = p.DistanceTo(part.End);
            on = toStart <= toEnd ? part.Start : part.End;
            return Math.Min(toStart, toEnd);
        }

        PlanePoint along = part.End.Minus(part.Start);
        double square = along.Dot(along);
        double t = square > 0 ? Math.Clamp(p.Minus(part.Start).Dot(along) / square, 0, 1) : 0;
        on = t >= 1 ? part.End : part.Start.Plus(along.Times(t));
        return p.DistanceTo(on);
    }

    /// <summary>Least distance between two parts.</summary>
    internal static Nearest Between(in PathPart a, in PathPart b)
    {
        var best = new Nearest(double.PositiveInfinity, default, default);
        FromPoint(a.Start, a.Start, b, ref best, isSwapped: false);
        FromPoint(a.End, a.End, b, ref best, isSwapped: false);
        FromPoint(b.Start, b.Start, a, ref best, isSwapped: true);
        FromPoint(b.End, b.End, a, ref best, isSwapped: true);
        if (!a.IsArc && !b.IsArc)
        {
            LineLine(a, b, ref best);
        }
        else if (a.IsArc && b.IsArc)
        {
            ArcArc(a, b, ref best);
        }
        else
        {
            LineArc(a.IsArc ? b : a, a.IsArc ? a : b, ref best, isSwapped: a.IsArc);
        }

        return best;
    }

    private static void FromPoint(PlanePoint p, PlanePoint own, in PathPart other, ref Nearest best, bool isSwapped)
    {
        double value = Between(p, other, out PlanePoint on);
        if (value < best.Value)
        {
            best = isSwapped ? new Nearest(value, on, own) : new Nearest(value, own, on);
        }
    }

    private static void LineLine(in PathPart a, in PathPart b, ref Nearest best)
    {
        PlanePoint da = a.End.Minus(a.Start), db = b.End.Minus(b.Start), gap = b.Start.Minus(a.Start);
        double denominator = da.Cross(db);
        if (denominator == 0)
        {
            return;
        }

        double s = gap.Cross(db) / denominator, t = gap.Cross(da) / denominator;
        if (s is >= 0 and <= 1 && t is >= 0 and <= 1)
        {
            PlanePoint crossing = a.Start.Plus(da.Times(s));
            best = new Nearest(0, crossing, crossing);
        }
    }

    private static void LineArc(in PathPart line, in PathPart arc, ref Nearest best, bool isSwapped)
    {
        PlanePoint along = line.End.Minus(line.Start);
        double square = along.Dot(along);
        if (square == 0)
        {
            return;
        }

        double foot = arc.Center.Minus(line.Start).Dot(along) / square;
        PlanePoint nearest = line.Start.Plus(along.Times(foot));
        double height = nearest.DistanceTo(arc.Center);
        if (height > arc.Radius)
        {
            // The common normal runs through the centre, square to the line.
            if (foot is >= 0 and <= 1 && arc.IsInSector(nearest))
            {
                PlanePoint on = arc.Center.Plus(nearest.Minus(arc.Center).Times(arc.Radius / height));
                Take(new Nearest(height - arc.Radius, nearest, on), ref best, isSwapped);
            }

            return;
        }

        double half = Math.Sqrt((arc.Radius - height) * (arc.Radius + height) / square);
        for (int side = -1; side <= 1; side += 2)
        {
            double t = foot + (side * half);
            PlanePoint crossing = line.Start.Plus(along.Times(t));
            if (t is >= 0 and <= 1 && arc.IsInSector(crossing))
            {
                Take(new Nearest(0, crossing, crossing), ref best, isSwapped);
            }
        }
    }

    private static void ArcArc(in PathPart a, in PathPart b, ref Nearest best)
    {
        PlanePoint axis = b.Center.Minus(a.Center);
        double span = axis.Length;
        if (span == 0)
        {
            // About one centre: where their sectors overlap, an end of one lies in the other's, and that has been looked at.
            return;
        }

        PlanePoint u = axis.Times(1 / span);
        for (int i = 0; i < 4; i++)
        {
            PlanePoint onA = a.Center.Plus(u.Times((i & 1) == 0 ? a.Radius : -a.Radius));
            PlanePoint onB = b.Center.Plus(u.Times((i & 2) == 0 ? b.Radius : -b.Radius));
            if (a.IsInSector(onA) && b.IsInSector(onB))
            {
                Take(new Nearest(onA.DistanceTo(onB), onA, onB), ref best, isSwapped: false);
            }
        }

        if (span > a.Radius + b.Radius || span < Math.Abs(a.Radius - b.Radius))
        {
            return;
        }

        double along = ((span * span) + ((a.Radius - b.Radius) * (a.Radius + b.Radius))) / (2 * span);
        double across = Math.Sqrt(Math.Max(0, (a.Radius - along) * (a.Radius + along)));
        for (int side = -1; side <= 1; side += 2)
        {
            PlanePoint crossing = a.Center.Plus(u.Times(along)).Plus(u.Left.Times(side * across));
            if (a.IsInSector(crossing) && b.IsInSector(crossing))
            {
                best = new Nearest(0, crossing, crossing);
            }
        }
    }

    private static void Take(Nearest candidate, ref Nearest best, bool isSwapped)
    {
        if (candidate.Value < best.Value)
        {
            best = isSwapped ? new Nearest(candidate.Value, candidate.OnSecond, candidate.OnFirst) : candidate;
        }
    }
}
