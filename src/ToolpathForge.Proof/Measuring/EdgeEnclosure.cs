namespace ToolpathForge.Proof;

/// <summary>
/// Replaces an exact edge by arcs and lines that lie within a proven distance of it, both ways. Each arc runs through the edge's ends and middle of a stretch; how far the edge
/// strays from it between follows from a bound of |p(t) - centre|² - radius², whose three zeros are known, so nothing is sampled.
/// </summary>
internal static class EdgeEnclosure
{
    /// <summary>Adds the parts of an edge.</summary>
    /// <param name="parts">Takes them.</param>
    /// <param name="edge">The edge.</param>
    /// <param name="owner">What each part's owner is to be.</param>
    /// <param name="allowed">Largest distance, mm.</param>
    internal static void Add(List<PathPart> parts, TargetEdge edge, int owner, double allowed)
    {
        switch (edge)
        {
            case LineEdge line:
                parts.Add(PathPart.Line(line.From, line.To, 0, owner, 0, 1));
                break;
            case ArcEdge arc:
                PathPart.AddArc(parts, arc.Center, arc.Radius, arc.StartAngle, arc.Sweep, 0, owner, 0, 1);
                break;
            case EllipseEdge ellipse:
                int quarters = Math.Max(1, (int)Math.Ceiling(Math.Abs(ellipse.Sweep) / (Math.PI / 4)));
                for (int i = 0; i < quarters; i++)
                {
                    AddEllipse(parts, ellipse, (double)i / quarters, (double)(i + 1) / quarters, owner, allowed, 0);
                }

                break;
            case CubicEdge cubic:
                AddCubic(parts, RationalCubic.From(cubic), 0, 1, owner, allowed, 0);
                break;
            default:
                throw new ArgumentException($"An edge of type {edge.GetType().Name} cannot be measured.", nameof(edge));
        }
    }

    /// <summary>
    /// With e(u) = C + M cos u + m sin u and centre c, g(u) = |e(u) - c|² has g''' = 4(M² - m²) sin 2u - 8 (M·m) cos 2u + 2A sin u - 2B cos u, A = (C-c)·M, B = (C-c)·m.
    /// On three zeros of g - r² spaced h apart, |g - r²| ≤ max|g'''| h³/(9√3).
    /// </summary>
    private static void AddEllipse(List<PathPart> parts, EllipseEdge e, double from, double to, int owner, double allowed, int depth)
    {
        double middle = (from + to) / 2;
        PlanePoint start = e.PointAt(from), on = e.PointAt(middle), end = e.PointAt(to);
        double half = Math.Abs(e.Sweep) * (to - from) / 2;
        double squares = e.Major.Dot(e.Major) + e.Minor.Dot(e.Minor);
        bool isTurnSmall = AreTangentsNear(end.Minus(start), Tangent(e, from), Tangent(e, to));

        // A chord strays by at most max|e''| h²/2, and in any case by no more than the stretch is long.
        double chordError = Math.Sqrt(squares) * half * (isTurnSmall ? Math.Min(half / 2, 2) : 2);
        if (chordError <= allowed || depth == ProofAccuracy.DeepestHalving)
        {
            parts.Add(PathPart.Line(start, end, chordError, owner, from, to));
            return;
        }

        if (isTurnSmall && Circle.TryThrough(start, on, end, out Circle circle))
        {
            PlanePoint away = e.Center.Minus(circle.Center);
            double a = away.Dot(e.Major), b = away.Dot(e.Minor);
            double difference = e.Major.Dot(e.Major) - e.Minor.Dot(e.Minor), mixed = e.Major.Dot(e.Minor);
            (double sin, double cos) = Math.SinCos(e.StartParameter + (e.Sweep * middle));
            (double sin2, double cos2) = (2 * sin * cos, (cos * cos) - (sin * sin));
            double third = Math.Abs((4 * difference * sin2) - (8 * mixed * cos2) + (2 * a * sin) - (2 * b * cos));
            double fourth = (8 * Math.Sqrt((difference * difference) + (4 * mixed * mixed))) + (2 * Math.Sqrt((a * a) + (b * b)));
            double error = circle.RadialError((third + (half * fourth)) * half * half * half / (9 * Math.Sqrt(3)));
            if (error <= allowed)
            {
                parts.Add(circle.Part(start, on, end, error, owner, from, to));
                return;
            }
        }

        AddEllipse(parts, e, from, middle, owner, allowed, depth + 1);
        AddEllipse(parts, e, middle, to, owner, allowed, depth + 1);
    }

    private static PlanePoint Tangent(EllipseEdge e, double share)
    {
        (double sin, double cos) = Math.SinCos(e.StartParameter + (e.Sweep * share));
        return e.Minor.Times(cos).Minus(e.Major.Times(sin)).Times(Math.Sign(e.Sweep));
    }

    /// <summary>An ellipse turns one way only, so its tangents between lie between these.</summary>
    private static bool AreTangentsNear(PlanePoint chord, PlanePoint first, PlanePoint last) => IsNear(chord, first) && IsNear(chord, last);

    private static bool IsNear(PlanePoint chord, PlanePoint arrow) => chord.Dot(arrow) > ProofAccuracy.CosineOfWidestTangent * chord.Length * arrow.Length;

    private static void AddCubic(List<PathPart> parts, RationalCubic cubic, double from, double to, int owner, double allowed, int depth)
    {
        (RationalCubic first, RationalCubic second) = cubic.Halves();
        PlanePoint start = cubic.Start, on = first.End, end = cubic.End;
        PlanePoint chord = end.Minus(start);
        bool isTurnSmall = cubic.AreDirectionsWithin(chord, ProofAccuracy.CosineOfWidestTangent);
        double chordError = isTurnSmall ? cubic.FarthestControlFrom(start, chord.Unit()) + ProofAccuracy.SamePoint : cubic.Span;
        if (chordError <= allowed || depth == ProofAccuracy.DeepestHalving)
        {
            parts.Add(PathPart.Line(start, end, chordError, owner, from, to));
            return;
        }

        if (isTurnSmall && Circle.TryThrough(start, on, end, out Circle circle))
        {
            double error = circle.RadialError(cubic.LargestPowerOf(circle.Center, circle.Radius)) + ProofAccuracy.SamePoint;
            if (error <= allowed)
            {
                parts.Add(circle.Part(start, on, end, error, owner, from, to));
                return;
            }
        }

        double middle = (from + to) / 2;
        AddCubic(parts, first, from, middle, owner, allowed, depth + 1);
        AddCubic(parts, second, middle, to, owner, allowed, depth + 1);
    }
}

/// <summary>A circle through three points of an edge.</summary>
internal readonly record struct Circle(PlanePoint Center, double Radius)
{
    internal static bool TryThrough(PlanePoint a, PlanePoint b, PlanePoint c, out Circle circle)
    {
        PlanePoint u = a.Minus(b), v = c.Minus(b);
        double twice = 2 * u.Cross(v);
        double uu = u.Dot(u), vv = v.Dot(v);
        var away = new PlanePoint(((v.Y * uu) - (u.Y * vv)) / twice, ((u.X * vv) - (v.X * uu)) / twice);
        circle = new Circle(b.Plus(away), away.Length);
        return circle.Radius <= ProofAccuracy.LargestRadius;
    }

    /// <summary>Largest |distance - radius| when |distance² - radius²| is at most <paramref name="power"/>.</summary>
    internal double RadialError(double power)
    {
        double coarse = power / Radius;
        return coarse < Radius ? power / ((2 * Radius) - coarse) : double.PositiveInfinity;
    }

    /// <summary>The arc through the three points.</summary>
    internal PathPart Part(PlanePoint start, PlanePoint on, PlanePoint end, double error, int owner, double from, double to)
    {
        PlanePoint first = start.Minus(Center), middle = on.Minus(Center), last = end.Minus(Center);
        return PathPart.Arc(Center, Radius, Math.Atan2(first.Y, first.X), first.AngleTo(middle) + middle.AngleTo(last), error, owner, from, to);
    }
}
