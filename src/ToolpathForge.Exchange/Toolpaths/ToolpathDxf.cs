using System.Collections.Immutable;
using ToolpathForge.Cutting;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Toolpaths;

/// <summary>
/// Writes the ways of the bit's tip as DXF in mm, a layer a pass, one entity a move: LINE between two points of space, ARC at the height of its end (the format has no
/// helix that every reader knows; what sinks along an arc lies on the layer <c>ramp</c>). Zero is the work zero, Z that of the program.
/// </summary>
public static class ToolpathDxf
{
    /// <summary>Writes the passes.</summary>
    /// <param name="layers">Their layers, no two of the same name.</param>
    public static string Write(ImmutableArray<PassLayer> layers)
    {
        var file = new DxfFile(1);
        Box2 box = Box2.Empty;
        foreach (PassLayer layer in layers)
        {
            file.AddLayer(layer.Name, layer.Role);
            foreach (PathPart part in layer.Parts)
            {
                if (part.Bulge == 0)
                {
                    file.Entities.AddLine(layer.Name, (part.From.Flat, part.From.Z), (part.To.Flat, part.To.Z));
                    box = box.Including(part.From.Flat).Including(part.To.Flat);
                }
                else
                {
                    var segment = new Segment(part.From.Flat, part.To.Flat, part.Bulge);
                    file.Entities.AddArc(layer.Name, new ArcCurve(segment.Center, segment.Radius, (segment.Start - segment.Center).Angle, segment.Sweep), part.To.Z);
                    box = box.Union(segment.Box);
                }
            }
        }

        return file.Finish(box);
    }
}
