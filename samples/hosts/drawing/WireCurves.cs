using System.Collections.Immutable;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.DrawingHost;

/// <summary>Crosses between the curves that drawings are read into and the entities of the contract.</summary>
internal static class WireCurves
{
    private const double Degrees = 180 / Math.PI;

    /// <summary>How many chords a span of a spline is drawn with in the copy.</summary>
    private const int Chords = 64;

    /// <summary>The entities of something drawn: a chain of lines and arcs as one polyline, everything else curve by curve.</summary>
    internal static IEnumerable<WireEntity> Of(DrawnEntity drawn)
    {
        string? layer = drawn.Layer.Length == 0 ? null : drawn.Layer;
        ImmutableArray<Curve> curves = drawn.Path.Curves;
        if (curves.Length > 1 && curves.All(c => c is LineCurve || (c is ArcCurve a && Math.Abs(a.Sweep) < 2 * Math.PI)))
        {
            Point2[] points = [.. curves.Select(c => c.Start), .. drawn.Path.IsClosed ? Array.Empty<Point2>() : [curves[^1].End]];
            double[] bulges = [.. curves.Select(c => c is ArcCurve a ? Math.Tan(a.Sweep / 4) : 0), .. drawn.Path.IsClosed ? Array.Empty<double>() : [0]];
            yield return new WireEntity { Kind = "polyline", Layer = layer, Points = [.. points.Select(Pair)], Bulges = bulges, Closed = drawn.Path.IsClosed };
            yield break;
        }

        foreach (Curve curve in curves)
        {
            WireEntity entity = Of(curve);
            entity.Layer = layer;
            yield return entity;
        }
    }

    /// <summary>What an entity is written to a file as: a polyline as a contour, a spline as one of chords, the rest exactly.</summary>
    internal static (Outline? Exact, Contour? Contour) Back(WireEntity e) => e.Kind switch
    {
        "line" => (new Outline([new LineCurve(Point(e.From!), Point(e.To!))], false), null),
        "arc" => (new Outline([new ArcCurve(Point(e.Centre!), e.Radius!.Value, e.Start!.Value / Degrees, e.Sweep!.Value / Degrees)], false), null),
        "circle" => (new Outline([new ArcCurve(Point(e.Centre!), e.Radius!.Value, 0, 2 * Math.PI)], true), null),
        "ellipse" => (Ellipse(e), null),
        "polyline" => (null, new Contour([.. e.Points!.Select((p, i) => new Vertex(p[0], p[1], e.Bulges?[i] ?? 0))], e.Closed ?? false)),
        _ => (null, Chain(e)),
    };

    private static WireEntity Of(Curve curve) => curve switch
    {
        LineCurve l => new WireEntity { Kind = "line", From = Pair(l.From), To = Pair(l.To) },
        ArcCurve a when Math.Abs(a.Sweep) >= 2 * Math.PI => new WireEntity { Kind = "circle", Centre = Pair(a.Center), Radius = a.Radius },
        ArcCurve a => new WireEntity { Kind = "arc", Centre = Pair(a.Center), Radius = a.Radius, Start = a.StartAngle * Degrees, Sweep = a.Sweep * Degrees },
        EllipseCurve e => Of(e),
        SplineCurve s => new WireEntity { Kind = "spline", Degree = s.Degree, Points = [.. s.Poles.Select(Pair)], Knots = [.. s.Knots], Weights = s.Weights.IsDefaultOrEmpty ? null : [.. s.Weights] },
        _ => throw new NotSupportedException($"There is no entity for a {curve.GetType().Name}."),
    };

    // The contract's second axis lies to the left of the first: M cos u + m sin u = M cos(-u) + (-m) sin(-u).
    private static WireEntity Of(EllipseCurve e)
    {
        double side = e.Major.Left.Dot(e.Minor) < 0 ? -1 : 1;
        bool whole = Math.Abs(e.Sweep) >= 2 * Math.PI;
        return new WireEntity
        {
            Kind = "ellipse",
            Centre = Pair(e.Center),
            Major = Pair(e.Major),
            Ratio = e.Minor.Length / e.Major.Length,
            Start = whole ? null : side * e.StartParameter * Degrees,
            Sweep = whole ? null : side * e.Sweep * Degrees,
        };
    }

    private static Outline Ellipse(WireEntity e)
    {
        Point2 major = Point(e.Major!);
        bool whole = e.Sweep is null;
        return new Outline([new EllipseCurve(Point(e.Centre!), major, major.Left * e.Ratio!.Value, (e.Start ?? 0) / Degrees, whole ? 2 * Math.PI : e.Sweep!.Value / Degrees)], whole);
    }

    private static Contour Chain(WireEntity e)
    {
        var spline = SplineCurve.BSpline(e.Degree!.Value, [.. e.Points!.Select(Point)], e.Knots!, e.Weights ?? []);
        int chords = Chords * (e.Knots!.Distinct().Count() - 1);
        return Contour.Polyline([.. Enumerable.Range(0, chords + 1).Select(i => spline.PointAt((double)i / chords))]);
    }

    private static double[] Pair(Point2 p) => [p.X, p.Y];

    private static Point2 Point(double[] p) => new(p[0], p[1]);
}
