using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>
/// Offsets by NetTopologySuite (an independent polygon library), as a pair that must hold ours between them. With δ the chord error of the polygon that stands for the
/// input, a corner that turns by less than 0.05 radians dropped (it does so), and chords of at most one and a half times the q-th part of a quarter turn (it rounds the number of chords of an arc; they fall short of a radius r by
/// r(1 - cos(3π/8q))): everything within d - δ of the polygon lies within d of
/// the shape, and everything within d of the shape lies within (d + δ)/cos(3π/8q) of the polygon even when its arcs fall short. The bounds follow from that; nothing is tuned.
/// </summary>
internal sealed class PolygonOracle
{
    internal const double ChordError = 1e-4;
    private const int QuadrantSegments = 32;
    private static readonly double Short = Math.Cos(Math.Max(0.05, 3 * Math.PI / (8 * QuadrantSegments)));

    private readonly NetTopologySuite.Geometries.Geometry _less;
    private readonly NetTopologySuite.Geometries.Geometry _more;

    /// <summary>How often it contradicted itself.</summary>
    internal static int Contradictions { get; private set; }

    internal PolygonOracle(Region shape, double distance)
        : this(Polygon(shape), distance)
    {
    }

    private PolygonOracle(NetTopologySuite.Geometries.Geometry polygon, double distance)
    {
        double d = Math.Abs(distance);

        // Twice the chord error: one for the input, one for our own arcs, which are looked at as chords too.
        double near = Math.Max(0, d - (2 * ChordError));
        double far = (d + (2 * ChordError)) / Short;
        _less = Buffer(polygon, distance > 0 ? near : -far);
        _more = Buffer(polygon, distance > 0 ? far : -near);
    }

    /// <summary>The same about everything within a distance of an open path.</summary>
    internal static PolygonOracle OfPath(Contour path, double distance) => new(new LineString(Chords(path).ToArray()), distance);

    /// <summary>What is wrong with a result; null when nothing is.</summary>
    internal string? Judge(Region result)
    {
        // A shrunk polygon that vanishes leaves a scrap now and then, a larger one for a larger distance: such a pair says nothing.
        if (_less.Area > _more.Area)
        {
            Contradictions++;
            return null;
        }

        double area = result.Area;
        double rounding = 1e-9 * (1 + _more.Area);
        if (area < _less.Area - rounding || area > _more.Area + rounding)
        {
            return FormattableString.Invariant($"area {area} is not between {_less.Area} and {_more.Area}");
        }

        var less = new IndexedPointInAreaLocator(_less);
        var more = new IndexedPointInAreaLocator(_more);
        foreach (Contour loop in result.Loops)
        {
            for (int i = 0; i < loop.SegmentCount; i++)
            {
                for (int k = 0; k < 4; k++)
                {
                    Point2 p = loop[i].PointAt(k / 4.0);
                    var c = new Coordinate(p.X, p.Y);
                    if (!_less.IsEmpty && less.Locate(c) == Location.Interior)
                    {
                        return FormattableString.Invariant($"{p} of the boundary lies too deep");
                    }

                    if (_more.IsEmpty || more.Locate(c) == Location.Exterior)
                    {
                        return FormattableString.Invariant($"{p} of the boundary lies too far out");
                    }
                }
            }
        }

        return null;
    }

    /// <summary>A region as polygons whose chords leave its arcs by no more than the chord error.</summary>
    internal static NetTopologySuite.Geometries.Geometry Polygon(Region region)
    {
        var factory = new GeometryFactory();
        var outer = new List<LinearRing>();
        var inner = new List<LinearRing>();
        foreach (Contour loop in region.Loops)
        {
            (loop.IsCounterClockwise ? outer : inner).Add(new LinearRing(Chords(loop).ToArray()));
        }

        NetTopologySuite.Geometries.Geometry all = factory.CreateMultiPolygon(outer.Select(r => factory.CreatePolygon(r)).ToArray()).Buffer(0);
        if (inner.Count == 0)
        {
            return all;
        }

        // Nested rings: even-odd is what a region of oriented loops means.
        NetTopologySuite.Geometries.Geometry result = factory.CreatePolygon();
        foreach (LinearRing ring in outer.Concat(inner).OrderByDescending(r => Math.Abs(factory.CreatePolygon(r).Area)))
        {
            result = result.SymmetricDifference(factory.CreatePolygon(ring));
        }

        return result;
    }

    internal static List<Coordinate> Chords(Contour contour, double error = ChordError)
    {
        var points = new List<Coordinate>();
        for (int i = 0; i < contour.SegmentCount; i++)
        {
            Segment s = contour[i];
            int chords = s.IsLine ? 1 : Math.Max(1, (int)Math.Ceiling(Math.Abs(s.Sweep) / (2 * Math.Acos(Math.Max(0, 1 - (error / s.Radius))))));
            for (int k = 0; k < chords; k++)
            {
                Point2 p = s.PointAt((double)k / chords);
                points.Add(new Coordinate(p.X, p.Y));
            }
        }

        points.Add(contour.IsClosed ? points[0].Copy() : new Coordinate(contour.End.X, contour.End.Y));
        return points;
    }

    private static NetTopologySuite.Geometries.Geometry Buffer(NetTopologySuite.Geometries.Geometry polygon, double distance) => BufferOp.Buffer(
        polygon,
        distance,
        new BufferParameters { JoinStyle = NetTopologySuite.Operation.Buffer.JoinStyle.Round, QuadrantSegments = QuadrantSegments, SimplifyFactor = 0 });
}
