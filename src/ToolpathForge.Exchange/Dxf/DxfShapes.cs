using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>What a file says of one entity, before blocks are put in place.</summary>
/// <param name="Head">What all entities have.</param>
internal abstract record DxfShape(DxfHead Head);

/// <summary>What all entities have.</summary>
/// <param name="Kind">What the file calls it.</param>
/// <param name="Layer">Its layer.</param>
/// <param name="Line">The line that it begins on.</param>
/// <param name="Order">Which of the file's entities it is, from 1.</param>
/// <param name="IsHidden">Marked as not to be seen.</param>
/// <param name="IsOnSheet">Belongs to a sheet for printing.</param>
internal readonly record struct DxfHead(string Kind, string Layer, int Line, int Order, bool IsHidden, bool IsOnSheet);

/// <summary>No line or curve: counted, with its layer, and nothing else.</summary>
internal sealed record DxfOther(DxfHead Head) : DxfShape(Head);

/// <summary>A straight line in space.</summary>
internal sealed record DxfLine(DxfHead Head, Space3 From, Space3 To) : DxfShape(Head);

/// <summary>A polyline in space.</summary>
internal sealed record DxfSpaceChain(DxfHead Head, Space3[] Points, bool IsClosed) : DxfShape(Head);

/// <summary>A polyline of lines and arcs in a plane square to its extrusion; bulges may be more than 1.</summary>
internal sealed record DxfPlaneChain(DxfHead Head, Vertex[] Points, bool IsClosed, double Height, Space3 Extrusion) : DxfShape(Head);

/// <summary>An arc or circle in a plane square to its extrusion; angles in radians.</summary>
internal sealed record DxfArc(DxfHead Head, Space3 Center, double Radius, double Start, double Sweep, Space3 Extrusion) : DxfShape(Head);

/// <summary>A piece of an ellipse: centre and half axes in space; parameters in radians.</summary>
internal sealed record DxfEllipse(DxfHead Head, Space3 Center, Space3 Major, Space3 Minor, double Start, double Sweep) : DxfShape(Head);

/// <summary>A spline in space.</summary>
internal sealed record DxfSpline(DxfHead Head, int Degree, Space3[] Poles, double[] Knots, double[] Weights) : DxfShape(Head);

/// <summary>A block put in, once or in rows and columns.</summary>
internal sealed record DxfInsert(DxfHead Head, string Block, Space3 At, Space3 Scale, double Turn, int Columns, int Rows, double ColumnStep, double RowStep, Space3 Extrusion)
    : DxfShape(Head);

/// <summary>A block: shapes that can be put in.</summary>
/// <param name="Base">The point of it that comes to lie where it is put in.</param>
/// <param name="Shapes">What it holds.</param>
/// <param name="IsElsewhere">Whether its content is in another file, which is never opened.</param>
internal sealed record DxfBlock(Space3 Base, List<DxfShape> Shapes, bool IsElsewhere);
