using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace ToolpathForge.Geometry;

/// <summary>
/// A directed line or arc (at most half a turn) prepared for the arrangement. Everything is told in the frame of its chord: u along the chord from its middle,
/// v to the right of it. A line is an arc of curvature 0, and every formula here stays exact on the way there: nothing divides by the curvature, and
/// a centre a kilometre away is never computed.
/// </summary>
/// <remarks>
/// With H half the sweep, h half the chord and κ = sin H / h, the circle is the zero of F = κ/2·(u² + v² - h²) + v·cos H (the circle's equation divided by its
/// diameter), which is positive to the right of the edge, grows like the distance, and at distance δ to the right is exactly δ + κδ²/2.
/// A point of the edge is told by its place τ = 2u/(1 + cos H + κv) = (2/κ)·tan(ψ/2), ψ the turn from the middle of the edge: monotone, in mm,
/// and as well conditioned at the ends of half a circle as on a line, where it is u itself.
/// </remarks>
internal struct Edge
{
    /// <summary>Start.</summary>
    internal double X0, Y0;

    /// <summary>End.</summary>
    internal double X1, Y1;

    /// <summary>Unit direction of the chord.</summary>
    internal double Ux, Uy;

    /// <summary>Half the chord, mm.</summary>
    internal double Half;

    /// <summary>Curvature, 1/mm, positive turning left; 0 for a line.</summary>
    internal double Kappa;

    /// <summary>Cosine of half the sweep, 0 to 1.</summary>
    internal double CosHalf;

    /// <summary>tan(sweep/4), see <see cref="Vertex.Bulge"/>.</summary>
    internal double Bulge;

    /// <summary>Sine of half the sweep, with the sign of the turn.</summary>
    internal readonly double SinHalf => Kappa * Half;

    /// <summary>The place of the end; the start's is its negative.</summary>
    internal readonly double EndPlace => 2 * Half / (1 + CosHalf);

    /// <summary>Unit direction of travel at the start: the chord's turned back by half the sweep.</summary>
    internal readonly Point2 StartDirection => new((Ux * CosHalf) + (Uy * SinHalf), (Uy * CosHalf) - (Ux * SinHalf));

    /// <summary>Unit direction of travel at the end.</summary>
    internal readonly Point2 EndDirection => new((Ux * CosHalf) - (Uy * SinHalf), (Uy * CosHalf) + (Ux * SinHalf));

    /// <summary>The same edge walked the other way.</summary>
    internal readonly Edge Reversed => new()
    {
        X0 = X1,
        Y0 = Y1,
        X1 = X0,
        Y1 = Y0,
        Ux = -Ux,
        Uy = -Uy,
        Half = Half,
        Kappa = -Kappa,
        CosHalf = CosHalf,
        Bulge = -Bulge,
    };

    /// <summary>An edge from its ends and bulge. What counts as straight (<see cref="Accuracy.StraightSagitta"/>) becomes straight.</summary>
    internal static Edge Of(double x0, double y0, double x1, double y1, double bulge)
    {
        Make(x0, y0, x1, y1, bulge, out Edge e);
        return e;
    }

    /// <summary>The same, written where it stays.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static void Make(double x0, double y0, double x1, double y1, double bulge, out Edge e)
    {
        e.X0 = x0;
        e.Y0 = y0;
        e.X1 = x1;
        e.Y1 = y1;
        double dx = x1 - x0;
        double dy = y1 - y0;
        double chord = Math.Sqrt((dx * dx) + (dy * dy));
        double inverse = 1 / chord;
        e.Ux = dx * inverse;
        e.Uy = dy * inverse;
        e.Half = chord / 2;
        if (Math.Abs(bulge) * e.Half < Accuracy.StraightSagitta)
        {
            e.Bulge = 0;
            e.CosHalf = 1;
            e.Kappa = 0;
        }
        else
        {
            // tan(H/2) = bulge.
            double square = bulge * bulge;
            double share = 1 / (1 + square);
            e.Bulge = bulge;
            e.CosHalf = Math.Max(0, (1 - square) * share);
            e.Kappa = 4 * bulge * share * inverse;
        }
    }

    /// <summary>
    /// The parallel at a distance to the right: the ends move along their normals, sweep and chord direction stay. <paramref name="half"/> is half its chord, see
    /// <see cref="HalfOfParallel"/>.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal readonly void Parallel(double right, double half, out Edge parallel)
    {
        double sin = SinHalf;
        double cx = Ux * CosHalf;
        double cy = Uy * CosHalf;
        double sx = Ux * sin;
        double sy = Uy * sin;

        // Right normals of the directions at both ends.
        parallel.X0 = X0 + (right * (cy - sx));
        parallel.Y0 = Y0 - (right * (cx + sy));
        parallel.X1 = X1 + (right * (cy + sx));
        parallel.Y1 = Y1 - (right * (cx - sy));
        parallel.Ux = Ux;
        parallel.Uy = Uy;
        parallel.Half = half;
        parallel.CosHalf = CosHalf;
        parallel.Bulge = Bulge;
        parallel.Kappa = sin / half;
    }

    /// <summary>Half the chord of the parallel at a distance to the right; not positive when the radius is used up.</summary>
    internal readonly double HalfOfParallel(double right) => Half + (right * SinHalf);

    /// <summary>The point at a place.</summary>
    internal readonly Point2 At(double place)
    {
        (double u, double v) = Frame(place);
        return new(((X0 + X1) / 2) + (u * Ux) + (v * Uy), ((Y0 + Y1) / 2) + (u * Uy) - (v * Ux));
    }

    /// <summary>Unit direction of travel at a place: the chord's, turned by ψ.</summary>
    internal readonly Point2 DirectionAt(double place)
    {
        double t = Kappa * place / 2;
        double share = 1 / (1 + (t * t));
        double cos = (1 - (t * t)) * share;
        double sin = 2 * t * share;
        return new((Ux * cos) - (Uy * sin), (Uy * cos) + (Ux * sin));
    }

    /// <summary>The place of a point on the edge.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal readonly double PlaceOf(double x, double y)
    {
        double dx = x - ((X0 + X1) / 2);
        double dy = y - ((Y0 + Y1) / 2);
        double u = (dx * Ux) + (dy * Uy);
        double v = (dx * Uy) - (dy * Ux);
        return 2 * u / (1 + CosHalf + (Kappa * v));
    }

    /// <summary>Bulge of the part between two places.</summary>
    internal readonly double BulgeBetween(double from, double to)
    {
        if (Kappa == 0)
        {
            return 0;
        }

        // tan of a quarter sweep from the tangents of half turns: the difference formula, then the half angle.
        double a = Kappa * from / 2;
        double b = Kappa * to / 2;
        double sin = b - a;
        double cos = 1 + (a * b);
        return sin / (cos + Math.Sqrt((cos * cos) + (sin * sin)));
    }

    /// <summary>The place halfway along between two others: of two edges that coincide between two points it is the same point, whatever their own middles.</summary>
    internal readonly double Halfway(double from, double to)
    {
        // tan of half the sum of the turns from their half tangents, then the half of that; nothing divides by the curvature.
        double divisor = 1 - (Kappa * Kappa * from * to / 4);
        double tan = Kappa * (from + to) / (2 * divisor);
        return (from + to) / (divisor * (1 + Math.Sqrt(1 + (tan * tan))));
    }

    /// <summary>Length between two places: (2/κ)(atan(κb/2) - atan(κa/2)), by its chord where it is nearly straight.</summary>
    internal readonly double LengthBetween(double from, double to)
    {
        double t = Kappa * to / 2;
        double s = Kappa * from / 2;
        return Math.Abs(t - s) < 1e-4
            ? (to - from) / (1 + (t * s))
            : 2 * (Math.Atan(t) - Math.Atan(s)) / Kappa;
    }

    /// <summary>Square of the distance from a point to the edge. <paramref name="end"/>: -1 when the start is nearest, 1 the end, 0 a point between.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal readonly double DistanceSquared(double x, double y, out int end)
    {
        double dx = x - ((X0 + X1) / 2);
        double dy = y - ((Y0 + Y1) / 2);
        double u = (dx * Ux) + (dy * Uy);
        double v = (dx * Uy) - (dy * Ux);
        double across = Math.Abs(u);

        // Within the fan of normals: |sin ψ|·cos H ≤ cos ψ·sin H about the centre, divided by the curvature.
        if ((across - Half) * CosHalf <= Kappa * v * Half)
        {
            end = 0;
            double f = (Kappa / 2 * ((u * u) + (v * v) - (Half * Half))) + (v * CosHalf);
            double distance = 2 * f / (1 + Math.Sqrt(Math.Max(0, 1 + (2 * Kappa * f))));
            return distance * distance;
        }

        end = u < 0 ? -1 : 1;
        double beyond = across - Half;
        return (beyond * beyond) + (v * v);
    }

    /// <summary>
    /// True when a point lies nearer to the edge than a limit: <see cref="DistanceSquared"/> without root and division, for F = δ + κδ²/2 grows with δ as long as δ is
    /// short of the centre, beyond which no point of the fan lies.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal readonly bool IsNearer(double x, double y, double limit)
    {
        double dx = x - ((X0 + X1) / 2);
        double dy = y - ((Y0 + Y1) / 2);
        double u = (dx * Ux) + (dy * Uy);
        double v = (dx * Uy) - (dy * Ux);
        double beyond = Math.Abs(u) - Half;
        if (beyond * CosHalf <= Kappa * v * Half)
        {
            double f = (Kappa / 2 * ((u * u) + (v * v) - (Half * Half))) + (v * CosHalf);
            double bend = Kappa * limit;
            return (f < limit * (1 + (bend / 2)) || bend <= -1) && (f > -limit * (1 - (bend / 2)) || bend >= 1);
        }

        return (beyond * beyond) + (v * v) < limit * limit;
    }

    /// <summary>The point halfway along: the chord's middle, moved by the sagitta.</summary>
    internal readonly Point2 Middle => new(((X0 + X1) / 2) + (Half * Bulge * Uy), ((Y0 + Y1) / 2) - (Half * Bulge * Ux));

    /// <summary>The smallest axis-parallel box round the rectangle of chord and sagitta, which holds the edge.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal readonly void Bounds(out Vector128<double> min, out Vector128<double> max)
    {
        double sagitta = Half * Bulge;
        Vector128<double> from = Vector128.Create(X0, Y0);
        Vector128<double> to = Vector128.Create(X1, Y1);
        Vector128<double> rise = Vector128.Create(Uy * sagitta, -Ux * sagitta);
        min = Vector128.MinNative(from, to) + Vector128.MinNative(rise, default);
        max = Vector128.MaxNative(from, to) + Vector128.MaxNative(rise, default);
    }

    // v = κ(τe² - τ²)/(2(1 + t²)(1 + b²)) with t = κτ/2: no difference of nearly equal cosines.
    private readonly (double U, double V) Frame(double place)
    {
        double t = Kappa * place / 2;
        double share = 1 / (1 + (t * t));
        double end = EndPlace;
        double v = Kappa * (end - place) * (end + place) * share / (2 * (1 + (Bulge * Bulge)));
        return (place * share, v);
    }
}
