using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Shapes;

/// <summary>Parts of exact curves.</summary>
internal static class CurvePart
{
    /// <summary>What lies between two parameters; a spline falls into its pieces.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="from">0 to 1.</param>
    /// <param name="to">More than <paramref name="from"/>, at most 1.</param>
    internal static ImmutableArray<Curve> Of(Curve curve, double from, double to) => curve switch
    {
        LineCurve line => [new LineCurve(from <= 0 ? line.From : line.PointAt(from), to >= 1 ? line.To : line.PointAt(to))],
        ArcCurve arc => [arc with { StartAngle = arc.StartAngle + (arc.Sweep * from), Sweep = arc.Sweep * (to - from) }],
        EllipseCurve e => [e with { StartParameter = e.StartParameter + (e.Sweep * from), Sweep = e.Sweep * (to - from) }],
        SplineCurve spline => [.. spline.Parts(from, to)],
        _ => throw new ArgumentException($"No part of a {curve.GetType().Name} can be taken.", nameof(curve)),
    };
}
