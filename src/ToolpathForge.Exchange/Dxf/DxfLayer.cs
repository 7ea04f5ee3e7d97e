using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>A layer of a DXF file and what lies on it.</summary>
/// <param name="Name">
/// One to 255 characters from blank to ~ without the ones that the format keeps for itself: &lt; &gt; / \ " : ; ? * | = ` and comma; no blank at either end; not "0".
/// (Beyond these, readers disagree: the format's way of escaping a character needs the backslash that names may not hold.)
/// Two layers of a file never have the same name, capitals or not.
/// </param>
/// <param name="Role">What its lines mean; gives colour, line type and weight.</param>
/// <param name="Exact">Written as LINE, ARC, CIRCLE, ELLIPSE and SPLINE, one entity a curve.</param>
/// <param name="Contours">Written as LWPOLYLINE, arcs as bulges.</param>
public sealed record DxfLayer(string Name, LineRole Role, ImmutableArray<Outline> Exact, ImmutableArray<Contour> Contours)
{
    private const string Reserved = "<>/\\\":;?*|=`,";

    /// <summary>Whether the format accepts a name for a layer of ours.</summary>
    /// <param name="name">The name asked about.</param>
    public static bool IsName(string name) =>
        name is { Length: > 0 and <= 255 } && name != "0" && name.Trim().Length == name.Length
        && !name.Any(c => c is < ' ' or > '~' || Reserved.Contains(c, StringComparison.Ordinal));
}
