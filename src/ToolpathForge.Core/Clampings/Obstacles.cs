using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Clampings;

/// <summary>What stands on the bed that the bit must keep away from.</summary>
internal static class Obstacles
{
    /// <summary>The clamps of some makes, grown by the gap that metal is kept at.</summary>
    /// <param name="makes">Name them; a clamp that several name is one.</param>
    /// <param name="bed">Height of the spoilboard in the program's Z, mm.</param>
    internal static ImmutableArray<KeepOut> Clamps(IEnumerable<Make> makes, double bed) =>
    [
        .. makes.SelectMany(m => m.Clamps).Distinct().Select((c, i) => new KeepOut(
            FormattableString.Invariant($"clamp {i + 1}"),
            c.Box.Grown(Clamping.MetalGap),
            bed + c.Height)),
    ];

    /// <summary>A screw driven flush, as a square about its head and the gap.</summary>
    internal static KeepOut Screw(Point2 at, int number, double head, double top) => new(
        FormattableString.Invariant($"screw {number}"), new Box2(at.X, at.Y, at.X, at.Y).Grown((head + Clamping.MetalGap) / Math.Sqrt(2)), top);
}
