namespace ToolpathForge.Proof;

/// <summary>
/// Closed-form upper bounds of how far the points of one part are from another. They are exact for a part that lies wholly in front of the other one, which is what makes
/// the search in <see cref="CoverSearch"/> end after a few divisions where a bound from the slope alone would need millions.
/// </summary>
internal static class FarthestDistances
{
    /// <summary>Farthest that a point of a part is from a point.</summary>
    internal static double FromPoint(in PathPart part, PlanePoint p)
    {
        double farthest = Math.Max(part.Start.DistanceTo(p), part.End.DistanceTo(p));
        if (part.IsArc)
        {
            PlanePoint away = part.Center.Minus(p);
            double length = away.Length;
            if (length > 0 && part.IsInSector(part.Center.Plus(away)))
            {
                farthest = Math.Max(farthest, length + part.Radius);
            }
        }

        return farthest;
    }

    /// <summary>
    /// Farthest that a point of <paramref name="part"/> is from <paramref name="other"/>, if all of it lies in front of it: between the perpendiculars at a line's ends,
    /// or in an arc's sector, but for <paramref name="slack"/>, which is added to the result.
    /// </summary>
    /// <returns>Infinity if it does not, or if the other part is no more than a point.</returns>
    internal static double InFrontOf(in PathPart part, in PathPart other, double slack)
    {
        if (other.Length <= ProofAccuracy.SamePoint)
        {
            return double.PositiveInfinity;
        }

        double outside = Outside(part, other);
        return outside > slack ? double.PositiveInfinity
            : (2 * Math.Max(outside, 0)) + (other.IsArc ? FromCircle(part, other.Center, other.Radius) : FromLine(part, other));
    }

    /// <summary>
    /// Where, as a share of <paramref name="part"/>, it leaves what is in front of <paramref name="other"/>; the crossing nearest to the middle. NaN if it crosses no limit.
    /// </summary>
    internal static double LeavesFrontAt(in PathPart part, in PathPart other)
    {
        double best = double.NaN;
        for (int end = 0; end < 2; end++)
        {
            (PlanePoint origin, PlanePoint normal) = Limit(other, end);
            for (int side = -1; side <= 1; side += 2)
            {
                double share = CrossingShare(part, origin, normal, side);
                if (share > 0 && share < 1 && !(Math.Abs(share - 0.5) >= Math.Abs(best - 0.5)))
                {
                    best = share;
                }
            }
        }

        return best;
    }

    /// <summary>How far a part sticks out of what is in front of another at most; negative or 0 if not at all.</summary>
    private static double Outside(in PathPart part, in PathPart other)
    {
        double outside = double.NegativeInfinity;
        for (int end = 0; end < 2; end++)
        {
            (PlanePoint origin, PlanePoint normal) = Limit(other, end);
            outside = Math.Max(outside, Math.Max(part.Start.Minus(origin).Dot(normal), part.End.Minus(origin).Dot(normal)));
            if (part.IsArc && part.IsInSector(part.Center.Plus(normal)))
            {
                outside = Math.Max(outside, part.Center.Minus(origin).Dot(normal) + part.Radius);
            }
        }

        return outside;
    }

    /// <summary>A point of the limiting line at one end of a part and its unit normal, pointing away from the part.</summary>
    private static (PlanePoint Origin, PlanePoint Normal) Limit(in PathPart part, int end)
    {
        if (part.IsArc)
        {
            PlanePoint radius = (end == 0 ? part.Start : part.End).Minus(part.Center).Unit();
            return (part.Center, radius.Left.Times(end == 0 ? -Math.Sign(part.Sweep) : Math.Sign(part.Sweep)));
        }

        PlanePoint along = part.End.Minus(part.Start).Unit();
        return end == 0 ? (part.Start, along.Times(-1)) : (part.End, along);
    }

    private static double CrossingShare(in PathPart part, PlanePoint origin, PlanePoint normal, int side)
    {
        if (!part.IsArc)
        {
            double a = part.Start.Minus(origin).Dot(normal), b = part.End.Minus(origin).Dot(normal);
            return a == b ? double.NaN : a / (a - b);
        }

        double height = origin.Minus(part.Center).Dot(normal);
        if (Math.Abs(height) > part.Radius)
        {
            return double.NaN;
        }

        double half = Math.Sqrt((part.Radius - height) * (part.Radius + height));
        PlanePoint arrow = normal.Times(height).Plus(normal.Left.Times(side * half));
        return part.Start.Minus(part.Center).AngleTo(arrow) / part.Sweep;
    }

    private static double FromLine(in PathPart part, in PathPart line)
    {
        PlanePoint normal = line.End.Minus(line.Start).Unit().Left;
        double farthest = Math.Max(Math.Abs(part.Start.Minus(line.Start).Dot(normal)), Math.Abs(part.End.Minus(line.Start).Dot(normal)));
        if (part.IsArc)
        {
            double middle = part.Center.Minus(line.Start).Dot(normal);
            if (part.IsInSector(part.Center.Plus(normal)))
            {
                farthest = Math.Max(farthest, Math.Abs(middle + part.Radius));
            }

            if (part.IsInSector(part.Center.Minus(normal)))
            {
                farthest = Math.Max(farthest, Math.Abs(middle - part.Radius));
            }
        }

        return farthest;
    }

    private static double FromCircle(in PathPart part, PlanePoint center, double radius)
    {
        double a = part.Start.DistanceTo(center), b = part.End.DistanceTo(center);
        double least = Math.Min(a, b), most = Math.Max(a, b);
        if (!part.IsArc)
        {
            least = Distances.Between(center, part, out _);
        }
        else
        {
            PlanePoint axis = center.Minus(part.Center);
            double span = axis.Length;
            if (part.IsInSector(part.Center.Plus(axis)))
            {
                least = Math.Min(least, Math.Abs(span - part.Radius));
            }

            if (part.IsInSector(part.Center.Minus(axis)))
            {
                most = Math.Max(most, span + part.Radius);
            }
        }

        return Math.Max(Math.Abs(least - radius), Math.Abs(most - radius));
    }
}
