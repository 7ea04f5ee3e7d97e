using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>Shapes in a frame of space as curves in the plane, if they lie flat.</summary>
internal sealed class DxfFlattening(ReadingBook book)
{
    /// <summary>Heights of one thing that differ by no more than this are one, mm: far below what a router resolves, far above the rounding of turned drawings.</summary>
    private const double FlatWithin = 1e-3;

    /// <summary>The curves; null when the shape is left out, which has been told then.</summary>
    /// <param name="shape">Any shape but a block put in.</param>
    /// <param name="frame">The frame that its coordinates are given in, in mm.</param>
    internal Outline? Curves(DxfShape shape, SpaceFrame frame)
    {
        (ImmutableArray<Curve> curves, bool closed, double low, double high) = shape switch
        {
            DxfLine line => Line(line, frame),
            DxfSpaceChain chain => Chain(chain, frame),
            DxfPlaneChain chain => Chain(chain, frame),
            DxfArc arc => Arc(arc, frame),
            DxfEllipse ellipse => Ellipse(ellipse, frame),
            DxfSpline spline => Spline(spline, frame),
            _ => throw new ArgumentException("A shape of an unknown kind.", nameof(shape)),
        };
        if (!(high - low <= FlatWithin))
        {
            Tell(shape, RepairFindings.OutOfPlane);
            return null;
        }

        // Nothing curved and nothing long is left of it.
        if (curves.IsEmpty || curves.All(DrawnCurves.IsNothing))
        {
            Tell(shape, RepairFindings.NoSize);
            return null;
        }

        if (!curves.All(DrawnCurves.IsWithinReach))
        {
            book.Repair(Finding.Of(
                RepairFindings.TooFar,
                book.At(shape.Head.Line),
                Quantity.Length(Accuracy.LargestCoordinate),
                Quantity.Length(Accuracy.LargestCoordinate),
                What(shape)));
            return null;
        }

        if (Math.Max(Math.Abs(low), Math.Abs(high)) > FlatWithin)
        {
            book.SeeOtherHeight();
        }

        return DrawnCurves.Path(curves, closed);
    }

    private static Arg What(DxfShape shape) => Arg.Of("what", $"{shape.Head.Kind} on layer '{shape.Head.Layer}'");

    private void Tell(DxfShape shape, FindingKind kind) => book.Repair(kind, shape.Head.Line, What(shape));

    private static (ImmutableArray<Curve> Curves, bool Closed, double Low, double High) Line(DxfLine line, SpaceFrame frame)
    {
        (Space3 from, Space3 to) = (frame.Point(line.From), frame.Point(line.To));
        return ([new LineCurve(from.Flat, to.Flat)], false, Math.Min(from.Z, to.Z), Math.Max(from.Z, to.Z));
    }

    private static (ImmutableArray<Curve> Curves, bool Closed, double Low, double High) Chain(DxfSpaceChain chain, SpaceFrame frame)
    {
        Space3[] points = Array.ConvertAll(chain.Points, frame.Point);
        var flat = new Vertex[points.Length];
        for (int i = 0; i < flat.Length; i++)
        {
            flat[i] = new Vertex(points[i].Flat);
        }

        return (Segments(flat, chain.IsClosed, Affine.Identity), chain.IsClosed, points.Min(p => p.Z), points.Max(p => p.Z));
    }

    private static (ImmutableArray<Curve> Curves, bool Closed, double Low, double High) Chain(DxfPlaneChain chain, SpaceFrame frame)
    {
        SpaceFrame own = frame.Of(SpaceFrame.OfExtrusion(chain.Extrusion));
        double zero = own.Zero.Z + (own.Z.Z * chain.Height);
        (double low, double high) = (zero, zero);
        if (own.X.Z != 0 || own.Y.Z != 0)
        {
            low = chain.Points.Min(p => (own.X.Z * p.X) + (own.Y.Z * p.Y)) + zero;
            high = chain.Points.Max(p => (own.X.Z * p.X) + (own.Y.Z * p.Y)) + zero;
        }

        return (Segments(chain.Points, chain.IsClosed, Plane(own, chain.Height)), chain.IsClosed, low, high);
    }

    private static (ImmutableArray<Curve> Curves, bool Closed, double Low, double High) Arc(DxfArc arc, SpaceFrame frame)
    {
        SpaceFrame own = frame.Of(SpaceFrame.OfExtrusion(arc.Extrusion));
        double rise = arc.Radius * (Math.Abs(own.X.Z) + Math.Abs(own.Y.Z));
        double height = own.Point(arc.Center).Z;
        Curve curve = Plane(own, arc.Center.Z).Map(new ArcCurve(arc.Center.Flat, arc.Radius, arc.Start, arc.Sweep));
        return ([curve], arc.Sweep >= DxfEntityReader.Turn, height - rise, height + rise);
    }

    private static (ImmutableArray<Curve> Curves, bool Closed, double Low, double High) Ellipse(DxfEllipse e, SpaceFrame frame)
    {
        (Space3 center, Space3 major, Space3 minor) = (frame.Point(e.Center), frame.Vector(e.Major), frame.Vector(e.Minor));
        double rise = Math.Abs(major.Z) + Math.Abs(minor.Z);
        Curve curve = Affine.Ellipse(center.Flat, major.Flat, minor.Flat, e.Start, e.Sweep);
        return ([curve], e.Sweep >= DxfEntityReader.Turn, center.Z - rise, center.Z + rise);
    }

    private static (ImmutableArray<Curve> Curves, bool Closed, double Low, double High) Spline(DxfSpline spline, SpaceFrame frame)
    {
        Space3[] poles = Array.ConvertAll(spline.Poles, frame.Point);
        Point2[] flat = Array.ConvertAll(poles, p => p.Flat);
        ImmutableArray<Curve> curve = Array.TrueForAll(flat, DrawnCurves.IsWithinReach)
            ? [SplineCurve.BSpline(spline.Degree, flat, spline.Knots, spline.Weights)]
            : [new LineCurve(flat[0], new Point2(double.PositiveInfinity, 0))];
        return (curve, false, poles.Min(p => p.Z), poles.Max(p => p.Z));
    }

    /// <summary>A frame that lies flat as a mapping of its plane at a height of its own.</summary>
    private static Affine Plane(SpaceFrame frame, double height) => new(frame.X.Flat, frame.Y.Flat, frame.Point(new Space3(0, 0, height)).Flat);

    /// <summary>Lines and arcs from vertex to vertex; what has no length is passed over.</summary>
    private static ImmutableArray<Curve> Segments(Vertex[] points, bool closed, Affine map)
    {
        int count = closed ? points.Length : points.Length - 1;
        ImmutableArray<Curve>.Builder curves = ImmutableArray.CreateBuilder<Curve>(count);
        double scale = Math.Sqrt(Math.Abs(map.Determinant));
        for (int i = 0; i < count; i++)
        {
            Vertex from = points[i], to = points[i + 1 < points.Length ? i + 1 : 0];
            if (from.Bulge == 0)
            {
                Point2 a = map.Point(from.Point), b = map.Point(to.Point);
                if (a.DistanceTo(b) > 0)
                {
                    curves.Add(new LineCurve(a, b));
                }
            }
            else if (from.Point.DistanceTo(to.Point) > 0)
            {
                curves.Add(map.Map(DrawnCurves.Bulged(from.Point, to.Point, from.Bulge, scale)));
            }
        }

        return curves.Count == curves.Capacity ? curves.MoveToImmutable() : curves.ToImmutable();
    }
}
