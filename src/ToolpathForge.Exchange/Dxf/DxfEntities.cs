using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>The entities of model space.</summary>
internal sealed class DxfEntities(DxfTags tags, DxfHandles handles, string owner)
{
    /// <summary>Bits of a SPLINE's group code 70: it has weights; it lies in a plane.</summary>
    private const int RationalSpline = 4;
    private const int FlatSpline = 8;

    internal void Add(string layer, Outline outline)
    {
        foreach (Curve curve in outline.Curves)
        {
            switch (curve)
            {
                case LineCurve line:
                    AddLine(layer, line.From, line.To);
                    break;
                case ArcCurve arc:
                    AddArc(layer, arc);
                    break;
                case EllipseCurve ellipse:
                    AddEllipse(layer, EllipseForm.Of(ellipse));
                    break;
                case SplineCurve spline:
                    foreach (SplineForm form in SplineForm.Of(spline))
                    {
                        AddSpline(layer, form);
                    }

                    break;
                default:
                    throw new NotSupportedException($"There is no entity for a {curve.GetType().Name}.");
            }
        }
    }

    internal void Add(string layer, Contour contour)
    {
        if (contour.SegmentCount == 1 && contour[0].IsLine)
        {
            AddLine(layer, contour.Start, contour.End);
        }
        else
        {
            AddPolyline(layer, contour);
        }
    }

    /// <summary>Three or four straight edges become a filled SOLID; a round form keeps its outline only.</summary>
    internal void AddSolid(string layer, Contour ring)
    {
        ReadOnlySpan<Vertex> v = ring.Vertices;
        bool straight = true;
        for (int i = 0; i < ring.SegmentCount; i++)
        {
            straight &= ring[i].IsLine;
        }

        if (!straight || v.Length is not (3 or 4))
        {
            AddPolyline(layer, ring);
            return;
        }

        // The format wants the corners in the order of a bow tie: the third and fourth change places; a triangle repeats its third.
        Point2 third = v[2].Point;
        Point2 fourth = v[^1].Point;
        Begin("SOLID", layer, "AcDbTrace");
        tags.AddPoint(10, v[0].X, v[0].Y).AddPoint(11, v[1].X, v[1].Y).AddPoint(12, fourth.X, fourth.Y).AddPoint(13, third.X, third.Y);
    }

    /// <summary>A line between two points of space.</summary>
    internal void AddLine(string layer, (Point2 Flat, double Z) from, (Point2 Flat, double Z) to)
    {
        Begin("LINE", layer, "AcDbLine");
        tags.AddPoint(10, from.Flat.X, from.Flat.Y, from.Z).AddPoint(11, to.Flat.X, to.Flat.Y, to.Z);
    }

    private void AddLine(string layer, Point2 from, Point2 to) => AddLine(layer, (from, 0), (to, 0));

    /// <summary>An arc at a height.</summary>
    internal void AddArc(string layer, ArcCurve arc, double z = 0)
    {
        bool whole = Math.Abs(arc.Sweep) >= (2 * Math.PI) - Accuracy.SameDirection;
        Begin(whole ? "CIRCLE" : "ARC", layer, "AcDbCircle");
        tags.AddPoint(10, arc.Center.X, arc.Center.Y, z).Add(40, arc.Radius);
        if (!whole)
        {
            double from = arc.Sweep > 0 ? arc.StartAngle : arc.StartAngle + arc.Sweep;
            tags.Add(100, "AcDbArc").Add(50, Degrees(from)).Add(51, Degrees(from + Math.Abs(arc.Sweep)));
        }
    }

    private void AddEllipse(string layer, EllipseForm form)
    {
        Begin("ELLIPSE", layer, "AcDbEllipse");
        tags.AddPoint(10, form.Center.X, form.Center.Y).AddPoint(11, form.Major.X, form.Major.Y)
            .AddPoint(210, 0, 0, 1).Add(40, form.Ratio).Add(41, form.Start).Add(42, form.End);
    }

    private void AddSpline(string layer, SplineForm form)
    {
        Begin("SPLINE", layer, "AcDbSpline");
        tags.AddPoint(210, 0, 0, 1).Add(70, form.Weights.Length > 0 ? FlatSpline | RationalSpline : FlatSpline)
            .Add(71, form.Degree).Add(72, form.Knots.Length).Add(73, form.Poles.Length).Add(74, 0);
        foreach (double knot in form.Knots)
        {
            tags.Add(40, knot);
        }

        // The reference lists the weights before the control points.
        foreach (double weight in form.Weights)
        {
            tags.Add(41, weight);
        }

        foreach (Point2 pole in form.Poles)
        {
            tags.AddPoint(10, pole.X, pole.Y);
        }
    }

    private void AddPolyline(string layer, Contour contour)
    {
        Begin("LWPOLYLINE", layer, "AcDbPolyline");
        ReadOnlySpan<Vertex> vertices = contour.Vertices;
        tags.Add(90, vertices.Length).Add(70, contour.IsClosed ? 1 : 0).Add(43, 0.0);
        for (int i = 0; i < vertices.Length; i++)
        {
            tags.Add(10, vertices[i].X).Add(20, vertices[i].Y);
            if (i < contour.SegmentCount && !contour[i].IsLine)
            {
                tags.Add(42, vertices[i].Bulge);
            }
        }
    }

    private void Begin(string kind, string layer, string subclass) =>
        tags.Add(0, kind).Add(5, handles.Take()).Add(330, owner).Add(100, "AcDbEntity").Add(8, layer).Add(100, subclass);

    private static double Degrees(double radians)
    {
        double degrees = radians * 180 / Math.PI;
        degrees -= Math.Floor(degrees / 360) * 360;
        return degrees >= 360 ? 0 : degrees;
    }
}
