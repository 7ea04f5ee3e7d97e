using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>
/// Puts POLYLINE and its VERTEX records together. Where the program that drew it has smoothed it, the smoothed points are taken and the frame they were made from is not.
/// Meshes of surfaces are no curves.
/// </summary>
internal sealed class DxfPolylineReader(DxfSource source, DxfTextDecoder decoder, ReadingBook book)
{
    private const int Closed = 1, InSpace = 8, Mesh = 16 | 64;
    private const int FramePoint = 16;

    private readonly DxfRecord _own = new(source, decoder, book);
    private readonly List<Space3> _points = [];
    private readonly List<double> _bulges = [];
    private int _flags;
    private double _height;
    private Space3 _extrusion;
    private DxfHead _head;
    private bool _bad;

    internal void Begin(DxfRecord header)
    {
        _points.Clear();
        _bulges.Clear();
        _flags = header.Whole(70, 0);
        _height = header.Or(30, 0);
        _extrusion = header.Extrusion();
        _head = header.Head();
        _bad = header.Failed;
        _own.Begin(header.Kind, header.Line, header.Order, header.Layer);
    }

    internal void Add(DxfRecord vertex)
    {
        if ((_flags & Mesh) != 0 || (vertex.Whole(70, 0) & FramePoint) != 0)
        {
            return;
        }

        _points.Add(vertex.NeedPoint(10, "place"));
        _bulges.Add(vertex.Or(42, 0));
        _bad |= vertex.Failed;
    }

    internal DxfShape? Finish()
    {
        if (_bad)
        {
            // What is wrong with one of its points has been told; the shape would not be the one drawn.
            book.Repair(RepairFindings.PolylineBroken, _head.Line, Arg.Of("what", $"{_head.Kind} on layer '{_head.Layer}'"));
            return null;
        }

        bool closed = (_flags & Closed) != 0;
        if ((_flags & Mesh) != 0)
        {
            return new DxfOther(_head with { Kind = "POLYLINE mesh" });
        }

        if ((_flags & InSpace) != 0 && _points.Count > 1)
        {
            return new DxfSpaceChain(_head, [.. _points], closed);
        }

        var points = new List<Vertex>(_points.Count);
        for (int i = 0; i < _points.Count; i++)
        {
            points.Add(new Vertex(_points[i].Flat, _bulges[i]));
        }

        return DxfEntityReader.Chain(_own, points, closed, _height, _extrusion, _head);
    }
}
