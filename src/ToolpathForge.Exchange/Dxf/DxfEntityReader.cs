using System.Globalization;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>Makes a shape of the pairs of an entity. Null when it is left out, which has been told then.</summary>
internal static class DxfEntityReader
{
    internal const double Turn = 2 * Math.PI;

    internal static DxfShape? Read(DxfRecord record)
    {
        DxfShape? shape = record.Kind switch
        {
            "LINE" => new DxfLine(record.Head(), record.NeedPoint(10, "start"), record.NeedPoint(11, "end")),
            "CIRCLE" => Arc(record, false),
            "ARC" => Arc(record, true),
            "ELLIPSE" => Ellipse(record),
            "LWPOLYLINE" => Polyline(record),
            "SPLINE" => DxfSplineReader.Read(record),
            "INSERT" => Insert(record),
            _ => new DxfOther(record.Head()),
        };
        return record.Failed ? null : shape;
    }

    private static DxfArc? Arc(DxfRecord record, bool part)
    {
        double radius = record.Need(40, "radius");
        if (!record.Failed && radius <= 0)
        {
            Unusable(record, "radius", radius);
        }

        double start = part ? record.Need(50, "start angle") % 360 : 0;
        double end = part ? record.Need(51, "end angle") : 360;
        double sweep = (end - start) % 360;
        sweep = sweep <= 0 ? sweep + 360 : sweep;
        return new DxfArc(record.Head(), record.NeedPoint(10, "centre"), radius, start * (Turn / 360), sweep * (Turn / 360), record.Extrusion());
    }

    private static DxfEllipse? Ellipse(DxfRecord record)
    {
        Space3 center = record.NeedPoint(10, "centre");
        Space3 major = record.NeedPoint(11, "axis");
        double ratio = record.Need(40, "ratio of axes");
        Space3 extrusion = record.Extrusion();
        if (record.Failed)
        {
            return null;
        }

        if (!(Math.Abs(ratio) is >= 1e-6 and <= 1e6))
        {
            Unusable(record, "ratio of axes", ratio);
            return null;
        }

        // Within one turn: of an angle of many turns no digits would be left for the place on the curve.
        double start = record.Or(41, 0) % Turn;
        double sweep = (record.Or(42, Turn) - start) % Turn;
        sweep = sweep <= Accuracy.SameDirection ? sweep + Turn : sweep;
        Space3 minor = extrusion.Unit().Cross(major) * ratio;
        return new DxfEllipse(record.Head(), center, major, minor, start, Math.Min(sweep, Turn));
    }

    private static DxfPlaneChain? Polyline(DxfRecord record)
    {
        var points = new List<Vertex>();
        int announced = record.Whole(90, -1);
        foreach (DxfTag tag in record.Tags)
        {
            switch (tag.Code)
            {
                case 10:
                    points.Add(new Vertex(record.Number(tag), double.NaN, 0));
                    break;
                case 20 when points.Count > 0:
                    points[^1] = points[^1] with { Y = record.Number(tag) };
                    break;
                case 42 when points.Count > 0:
                    points[^1] = points[^1] with { Bulge = record.Number(tag) };
                    break;
            }
        }

        if (!record.Failed && points.Exists(p => double.IsNaN(p.Y)))
        {
            record.Fail(RepairFindings.ValueMissing, Arg.Of("key", "y of a point"));
        }

        if (!record.Failed && announced >= 0 && announced != points.Count)
        {
            record.Book.Repair(Finding.Of(
                RepairFindings.CountWrong,
                record.Book.At(record.Line),
                Quantity.Number(points.Count),
                Quantity.Number(announced),
                Arg.Of("what", record.What),
                Arg.Of("key", "points")));
        }

        return Chain(record, points, (record.Whole(70, 0) & 1) != 0, record.Or(38, 0), record.Extrusion(), record.Head());
    }

    /// <summary>A polyline in a plane, if it has two points.</summary>
    internal static DxfPlaneChain? Chain(DxfRecord record, List<Vertex> points, bool closed, double height, Space3 extrusion, DxfHead head)
    {
        if (!record.Failed && points.Count < 2)
        {
            record.Fail(RepairFindings.ValueMissing, Arg.Of("key", "two points"));
        }

        return record.Failed ? null : new DxfPlaneChain(head, [.. points], closed, height, extrusion);
    }

    private static DxfInsert? Insert(DxfRecord record)
    {
        string? name = record.Text(2);
        if (string.IsNullOrEmpty(name))
        {
            record.Fail(RepairFindings.ValueMissing, Arg.Of("key", "name of a block"));
            return null;
        }

        var scale = new Space3(record.Or(41, 1), record.Or(42, 1), record.Or(43, 1));
        if (!record.Failed && (scale.X == 0 || scale.Y == 0))
        {
            Unusable(record, "scale", 0);
        }

        // Old files carry a zero where nothing is meant; the third scale does nothing to what is flat.
        scale = scale with { Z = scale.Z == 0 ? 1 : scale.Z };

        // Rows or columns that all lie on one place are one.
        (double columnStep, double rowStep) = (record.Or(44, 0), record.Or(45, 0));
        return new DxfInsert(
            record.Head(),
            name,
            record.NeedPoint(10, "place"),
            scale,
            record.Or(50, 0) % 360 * (Turn / 360),
            columnStep == 0 ? 1 : Math.Max(1, record.Whole(70, 1)),
            rowStep == 0 ? 1 : Math.Max(1, record.Whole(71, 1)),
            columnStep,
            rowStep,
            record.Extrusion());
    }

    private static void Unusable(DxfRecord record, string key, double value) => record.Fail(
        RepairFindings.ValueUnusable, Arg.Of("key", key), Arg.Of("text", value.ToString(CultureInfo.InvariantCulture)));
}
