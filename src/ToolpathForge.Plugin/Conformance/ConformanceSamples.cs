using System.Globalization;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Plugin.Conformance;

/// <summary>What the checks draw. Its numbers are arbitrary, but no two alike, so that what is mixed up shows.</summary>
internal static class ConformanceSamples
{
    /// <summary>One of each kind, in the plainest form.</summary>
    internal static WireEntity[] Each { get; } =
    [
        new() { Kind = "line", Layer = "outline", From = [1.5, 2], To = [-40.25, 7] },
        new() { Kind = "arc", Layer = "outline", Centre = [10, 20], Radius = 12.5, Start = 300, Sweep = 95 },
        new() { Kind = "circle", Layer = "holes", Centre = [-3, 4], Radius = 5.75 },
        new() { Kind = "ellipse", Layer = "curves", Centre = [100, -50], Major = [30, 10], Ratio = 0.4 },
        new() { Kind = "polyline", Layer = "outline", Points = [[0, 0], [80, 0], [80, 45], [5, 60]], Bulges = [0, -0.3, 0.5, 0], Closed = true },
        new() { Kind = "spline", Layer = "curves", Degree = 3, Points = [[0, 0], [10, 40], [35, -20], [60, 10], [75, 15]], Knots = [0, 0, 0, 0, 0.4, 1, 1, 1, 1] },
    ];

    /// <summary>Forms that are easily forgotten: a part of an ellipse, an open polyline, a rational spline; no layer named twice the same way.</summary>
    internal static WireEntity[] Parts { get; } =
    [
        new() { Kind = "ellipse", Layer = "curves", Centre = [7, 8], Major = [0, 25], Ratio = 0.8, Start = 30, Sweep = 200 },
        new() { Kind = "polyline", Layer = "scribe", Points = [[3, 3], [9, 4], [12, 30]] },
        new() { Kind = "spline", Layer = "curves", Degree = 2, Points = [[20, 0], [20, 20], [0, 20]], Knots = [0, 0, 0, 1, 1, 1], Weights = [1, 0.75, 1] },
    ];

    /// <summary>Something of the person's own on a layer that previews use.</summary>
    internal static WireEntity OnPreviewLayer { get; } = new() { Kind = "line", Layer = "toolpath-p1-1-finish", From = [0, 1], To = [0, 99] };

    /// <summary>A short toolpath.</summary>
    internal static WireEntity[] Ways { get; } =
    [
        new() { Kind = "line", Layer = "toolpath-p1-1-travel", From = [0, 0], To = [30.125, 12] },
        new() { Kind = "arc", Layer = "toolpath-p1-1-finish", Centre = [30, 22], Radius = 10, Start = -90, Sweep = 180 },
        new() { Kind = "arc", Layer = "toolpath-p1-2-finish", Centre = [30, 52], Radius = 20, Start = 270, Sweep = -120 },
        new() { Kind = "line", Layer = "toolpath-p1-2-finish", From = [12, 3], To = [14, 3] },
    ];

    /// <summary>A page of preview, no two entities alike.</summary>
    internal static WireEntity[] Many { get; } =
    [
        .. Enumerable.Range(0, 5000).Select(i => new WireEntity
        {
            Kind = "line",
            Layer = "toolpath-p1-" + (1 + (i / 500)).ToString(CultureInfo.InvariantCulture) + "-rough",
            From = [i, 0],
            To = [i, 1 + (i % 7)],
        }),
    ];
}
