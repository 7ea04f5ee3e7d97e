using System.Collections.Immutable;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Service.Host;

/// <summary>Makes drawings of the outlines that come with a request. What is no curve is refused by name and number: a client that sends it has a fault, not its user.</summary>
internal static class HostOutlines
{
    /// <summary>The drawings by name, in mm.</summary>
    /// <exception cref="RpcException">An outline cannot be used.</exception>
    internal static IReadOnlyDictionary<string, ReadDrawing> Read(WireOutline[] outlines)
    {
        var drawings = new Dictionary<string, ReadDrawing>(StringComparer.Ordinal);
        long count = outlines.Sum(o => (long)(o?.Entities.Length ?? 0));
        if (count > HostLimits.Entities)
        {
            throw new RpcException(RpcError.InvalidParameters.Because(FormattableString.Invariant($"outlines hold {HostLimits.Entities} entities at most")));
        }

        foreach (WireOutline? outline in outlines)
        {
            if (outline is null || outline.Name.Length == 0 || !drawings.TryAdd(outline.Name, Of(outline)))
            {
                throw new RpcException(RpcError.InvalidParameters.Because("every outline needs a name of its own"));
            }
        }

        return drawings;
    }

    private static ReadDrawing Of(WireOutline outline)
    {
        ImmutableArray<DrawnEntity> entities =
        [
            .. outline.Entities.Select((e, i) =>
            {
                try
                {
                    return new DrawnEntity(Path(e ?? throw new UnusableException("it is null")), e.Kind, e.Layer ?? "", 0, i + 1);
                }
                catch (Exception unusable) when (unusable is UnusableException or ArgumentException)
                {
                    // Only the first sentence: what follows names a parameter of the code.
                    string says = unusable.Message.Split('(')[0].Trim();
                    throw new RpcException(RpcError.InvalidParameters.Because(FormattableString.Invariant($"entity {i + 1} of outline '{outline.Name}': {says}")));
                }
            }),
        ];
        return new ReadDrawing("outline", DrawingUnit.Millimetre, entities, [], [], [], []);
    }

    private static Outline Path(WireEntity e) => e.Kind switch
    {
        "line" => new Outline([Line(Point(e.From), Point(e.To))], false),
        "arc" => new Outline([new ArcCurve(Point(e.Centre), Positive(e.Radius), Angle(e.Start), Sweep(e.Sweep))], false),
        "circle" => new Outline([new ArcCurve(Point(e.Centre), Positive(e.Radius), 0, 2 * Math.PI)], true),
        "ellipse" => Ellipse(e),
        "polyline" => Polyline(e),
        "spline" => new Outline([SplineCurve.BSpline(e.Degree ?? 0, Points(e.Points), e.Knots ?? [], e.Weights ?? [])], false),
        _ => throw new UnusableException("there is no such kind of entity"),
    };

    private static LineCurve Line(Point2 from, Point2 to) => from != to ? new LineCurve(from, to) : throw new UnusableException("a line of no length");

    private static Outline Ellipse(WireEntity e)
    {
        Point2 major = Point(e.Major);
        double ratio = Positive(e.Ratio);
        bool whole = e.Start is null && e.Sweep is null;
        return major.Length > 0 && major.Length * ratio <= Accuracy.LargestCoordinate
            ? new Outline([new EllipseCurve(Point(e.Centre), major, major.Left * ratio, whole ? 0 : Angle(e.Start), whole ? 2 * Math.PI : Sweep(e.Sweep))], whole)
            : throw new UnusableException("an ellipse without an axis");
    }

    private static Outline Polyline(WireEntity e)
    {
        Point2[] points = Points(e.Points);
        double[] bulges = e.Bulges ?? new double[points.Length];
        bool closed = e.Closed ?? false;
        if (points.Length < 2 || bulges.Length != points.Length || Array.Exists(bulges, b => !(Math.Abs(b) <= 1e6)))
        {
            throw new UnusableException("a polyline needs two points or more, and as many bulges if any");
        }

        var curves = ImmutableArray.CreateBuilder<Curve>();
        for (int i = 0; i < (closed ? points.Length : points.Length - 1); i++)
        {
            Point2 to = points[(i + 1) % points.Length];
            if (points[i] != to)
            {
                var segment = new Segment(points[i], to, bulges[i]);
                curves.Add(segment.IsLine ? new LineCurve(points[i], to) : new ArcCurve(segment.Center, segment.Radius, (points[i] - segment.Center).Angle, segment.Sweep));
            }
        }

        return curves.Count > 0 ? new Outline(curves.ToImmutable(), closed) : throw new UnusableException("a polyline of no length");
    }

    private static Point2[] Points(double[][]? points) => [.. (points ?? []).Select(Point)];

    private static Point2 Point(double[]? point) => point is [var x, var y] && Math.Abs(x) <= Accuracy.LargestCoordinate && Math.Abs(y) <= Accuracy.LargestCoordinate
        ? new Point2(x, y)
        : throw new UnusableException("a point is X and Y, within a kilometer");

    private static double Positive(double? value) => value is > 0 and <= Accuracy.LargestCoordinate
        ? value.Value
        : throw new UnusableException("a size is missing, not more than 0, or beyond a kilometer");

    private static double Angle(double? degrees) => degrees is >= -3600 and <= 3600 ? degrees.Value * Math.PI / 180 : throw new UnusableException("an angle is missing or beyond ten turns");

    private static double Sweep(double? degrees) => degrees is (>= -360 and < 0) or (> 0 and <= 360)
        ? degrees.Value * Math.PI / 180
        : throw new UnusableException("a sweep is missing, 0, or beyond a turn");

    private sealed class UnusableException(string says) : Exception(says);
}
