using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>
/// Writes DXF as text, version AC1015, millimetres, seven-bit characters, lines ending in LF: LINE, ARC, CIRCLE, ELLIPSE, SPLINE and LWPOLYLINE
/// (SOLID for arrowheads) in model space at full size. Ellipses and splines stay exact. Text goes out as our own strokes, so no reader needs a font.
/// The bytes depend on nothing but what is written: no dates, no random identifiers.
/// </summary>
public static class DxfWriter
{
    /// <summary>Writes named layers.</summary>
    /// <param name="layers">In the order in which they are to be listed.</param>
    /// <exception cref="ArgumentException">A name that the format does not accept, or that appears twice.</exception>
    public static string Write(ImmutableArray<DxfLayer> layers)
    {
        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (DxfLayer layer in layers)
        {
            if (!DxfLayer.IsName(layer.Name))
            {
                throw new ArgumentException($"'{layer.Name}' is no name for a layer.", nameof(layers));
            }

            if (!names.Add(layer.Name))
            {
                throw new ArgumentException($"Two layers are called '{layer.Name}'.", nameof(layers));
            }
        }

        var file = new DxfFile(1);
        foreach (DxfLayer layer in layers)
        {
            file.AddLayer(layer.Name, layer.Role);
            foreach (Outline outline in layer.Exact)
            {
                file.Entities.Add(layer.Name, outline);
            }

            foreach (Contour contour in layer.Contours)
            {
                file.Entities.Add(layer.Name, contour);
            }
        }

        Box2 box = layers.SelectMany(l => l.Exact.Select(o => new ExactStroke(l.Role, o)).Concat<Mark>(l.Contours.Select(c => new Stroke(l.Role, c))))
            .Aggregate(Box2.Empty, (b, mark) => b.Union(Draughting.BoxOf([mark])));
        return file.Finish(box);
    }

    /// <summary>
    /// Writes a drawing, a layer for each meaning that a line has in it. Tinted areas are left out: a layer of tints would be in the way of whoever works on from here.
    /// </summary>
    /// <param name="drawing">What to write.</param>
    /// <param name="scale">The scale that lettering, arrowheads and dashes are sized for, mm of paper for a mm of the thing drawn; the thing itself is always full size.</param>
    public static string Write(Drawing drawing, double scale = 1)
    {
        ImmutableArray<Mark> marks = Draughting.Marks(drawing, scale);
        var file = new DxfFile(1 / scale);
        foreach (LineRole role in marks.Select(RoleOf).OfType<LineRole>().Distinct().Order())
        {
            file.AddLayer(DrawingStyle.NameOf(role), role);
        }

        foreach (Mark mark in marks)
        {
            switch (mark)
            {
                case Stroke stroke:
                    file.Entities.Add(DrawingStyle.NameOf(stroke.Role), stroke.Path);
                    break;
                case ExactStroke stroke:
                    file.Entities.Add(DrawingStyle.NameOf(stroke.Role), stroke.Path);
                    break;
                case Solid solid:
                    file.Entities.AddSolid(DrawingStyle.NameOf(solid.Role), solid.Ring);
                    break;
                case Lettered lettered:
                    foreach (Contour stroke in lettered.Written.Strokes)
                    {
                        file.Entities.Add(DrawingStyle.NameOf(lettered.Role), stroke);
                    }

                    break;
            }
        }

        return file.Finish(Draughting.BoxOf([.. marks.Where(m => m is not Fill)]));
    }

    private static LineRole? RoleOf(Mark mark) => mark switch
    {
        Stroke s => s.Role,
        ExactStroke s => s.Role,
        Solid s => s.Role,
        Lettered l => l.Role,
        _ => null,
    };
}
