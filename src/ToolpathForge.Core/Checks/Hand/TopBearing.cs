using System.Collections.Immutable;

namespace ToolpathForge.Checks.Hand;

/// <summary>
/// Depths for a bearing on the shank, above the cutter. The pattern lies on the board and the base on the pattern; in a second pass the pattern is off, the
/// base lies on the board, and the bearing runs on the edge that has been cut. With p the depth, L the cutter, g the gap below the bearing, c the contact,
/// t what guides, s the board, m the margin and o the overcut: max(L + g + c, t + s + o) ≤ p ≤ L + t - m, and p within the router's reach. (Worked from the
/// section: bearing between p - L - g - h and p - L - g below the base, cutter between p - L and p.)
/// </summary>
public static class TopBearing
{
    /// <summary>Depths that cut the board in one pass along a pattern on top.</summary>
    /// <param name="setUp">The set-up.</param>
    public static DepthWindow OnePass(HandSetUp setUp) => new(
    [
        Contact(setUp, "the bearing must run on the pattern"),
        new("the cutter must come through the board", Sense.AtLeast, [new("pattern", setUp.Pattern), new("board", setUp.Board), new("overcut", setUp.Margins.Overcut)]),
        new("the cutter must begin inside the pattern's thickness", Sense.AtMost, [new("cutter", setUp.Cutter), new("pattern", setUp.Pattern), new("margin", -setUp.Margins.Margin)]),
        .. Reach(setUp),
    ]);

    /// <summary>Depths of a pass without the pattern, the base on the board and the bearing on an edge that is cut already, by hand or by a machine.</summary>
    /// <param name="setUp">The set-up; its pattern plays no part.</param>
    /// <param name="edge">How deep that edge goes below the board's upper face, mm.</param>
    public static DepthWindow AlongEdge(HandSetUp setUp, double edge) => new(
    [
        Contact(setUp, "the bearing must run on the edge that is cut"),
        new("the cutter must come through the board", Sense.AtLeast, [new("board", setUp.Board), new("overcut", setUp.Margins.Overcut)]),
        new("the cutter must begin above the end of that edge", Sense.AtMost, [new("cutter", setUp.Cutter), new("cut edge", edge), new("margin", -setUp.Margins.Margin)]),
        .. Reach(setUp),
    ]);

    /// <summary>Least depth of an edge for a second pass to follow, mm: enough for the bearing, and enough that the rest is no longer than the cutter.</summary>
    /// <param name="setUp">The set-up.</param>
    public static double LeastEdge(HandSetUp setUp) => Math.Max(
        setUp.Bearing.Gap + setUp.Margins.Contact + setUp.Margins.Margin,
        setUp.Board + setUp.Margins.Overcut + setUp.Margins.Margin - setUp.Cutter);

    /// <summary>Thinnest pattern that takes contact and margin, mm.</summary>
    /// <param name="setUp">The set-up.</param>
    public static double LeastPattern(HandSetUp setUp) => setUp.Bearing.Gap + setUp.Margins.Contact + setUp.Margins.Margin;

    /// <summary>Shortest cutter that cuts the board in one pass, mm.</summary>
    /// <param name="setUp">The set-up.</param>
    public static double LeastCutter(HandSetUp setUp) => setUp.Board + setUp.Margins.Overcut + setUp.Margins.Margin;

    /// <summary>Thickest board that two passes cut through, mm: 2L - 2m - o.</summary>
    /// <param name="setUp">The set-up.</param>
    public static double MostBoardInTwo(HandSetUp setUp) => (2 * setUp.Cutter) - (2 * setUp.Margins.Margin) - setUp.Margins.Overcut;

    /// <summary>
    /// Two passes for a cutter that is too short for one: the first along the pattern, deep enough for the second, which runs on what the first has cut.
    /// Null where there are no such two.
    /// </summary>
    /// <param name="setUp">The set-up.</param>
    /// <param name="depth">The depth that the first is set to, mm; null, or one that does not serve, for the middle of what may be set.</param>
    public static TwoPasses? InTwo(HandSetUp setUp, double? depth = null)
    {
        HandMargins m = setUp.Margins;
        var first = new DepthWindow(
        [
            Contact(setUp, "the bearing must run on the pattern"),
            new("the second pass must find enough edge to run on", Sense.AtLeast, [new("pattern", setUp.Pattern), .. Gap(setUp), new("bearing contact", m.Contact), new("margin", m.Margin)]),
            new("the second pass must reach the rest", Sense.AtLeast, [new("pattern", setUp.Pattern), new("board", setUp.Board), new("overcut", m.Overcut), new("margin", m.Margin), new("cutter", -setUp.Cutter)]),
            new("the cutter must begin inside the pattern's thickness", Sense.AtMost, [new("cutter", setUp.Cutter), new("pattern", setUp.Pattern), new("margin", -m.Margin)]),
            .. Reach(setUp),
        ]);
        if (!first.IsOpen)
        {
            return null;
        }

        double set = depth is { } said && first.Holds(said) ? said : first.Middle;
        double edge = set - setUp.Pattern;
        DepthWindow second = AlongEdge(setUp, edge);
        return second.IsOpen ? new TwoPasses(first, set, edge, second) : null;
    }

    private static Limit Contact(HandSetUp setUp, string reason) =>
        new(reason, Sense.AtLeast, [new("cutter", setUp.Cutter), .. Gap(setUp), new("bearing contact", setUp.Margins.Contact)]);

    // A gap of nothing is not told.
    private static IEnumerable<Term> Gap(HandSetUp setUp) => setUp.Bearing.Gap > 0 ? [new Term("gap", setUp.Bearing.Gap)] : [];

    internal static IEnumerable<Limit> Reach(HandSetUp setUp) =>
        double.IsFinite(setUp.Reach) ? [new("the shank must be fully gripped", Sense.AtMost, [new("router's reach", setUp.Reach)])] : [];
}

/// <summary>A board cut in two passes.</summary>
/// <param name="First">Depths of the first, along the pattern.</param>
/// <param name="FirstDepth">The depth that the second is worked out from, mm.</param>
/// <param name="Edge">How deep the edge goes that the first leaves, from the board's upper face, mm.</param>
/// <param name="Second">Depths of the second, the pattern off.</param>
public sealed record TwoPasses(DepthWindow First, double FirstDepth, double Edge, DepthWindow Second);
