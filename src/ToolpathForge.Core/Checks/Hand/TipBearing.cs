namespace ToolpathForge.Checks.Hand;

/// <summary>
/// Depths for a bearing below the cutter. The pattern lies under the board and the base on the board. With p the depth of the cutter's lower end below the
/// board's upper face, h the bearing and the other letters of <see cref="TopBearing"/>: max(s + o, s + c - h - g) ≤ p ≤ min(s + t - m - g - h, L - m);
/// where the bearing may hang out below the pattern, p ≤ min(s + t - c - g, L - m).
/// </summary>
public static class TipBearing
{
    /// <summary>Depths that cut the board in one pass along a pattern below it.</summary>
    /// <param name="setUp">The set-up.</param>
    /// <param name="mayHang">Whether the bearing may hang out below the pattern: the work overhangs the bench there.</param>
    public static DepthWindow OnePass(HandSetUp setUp, bool mayHang)
    {
        HandMargins m = setUp.Margins;
        double height = setUp.Bearing.Height;
        double gap = setUp.Bearing.Gap;
        return new DepthWindow(
        [
            new("the cutter must come through the board", Sense.AtLeast, [new("board", setUp.Board), new("overcut", m.Overcut)]),
            new("the bearing must run on the pattern", Sense.AtLeast, [new("board", setUp.Board), new("bearing contact", m.Contact), new("bearing", -height), new("gap", -gap)]),
            mayHang
                ? new("enough of the bearing must stay on the pattern", Sense.AtMost, [new("board", setUp.Board), new("pattern", setUp.Pattern), new("bearing contact", -m.Contact), new("gap", -gap)])
                : new("the bearing must stay above the bench", Sense.AtMost, [new("board", setUp.Board), new("pattern", setUp.Pattern), new("margin", -m.Margin), new("gap", -gap), new("bearing", -height)]),
            new("the cutter must begin above the board", Sense.AtMost, [new("cutter", setUp.Cutter), new("margin", -m.Margin)]),
            .. TopBearing.Reach(setUp),
        ]);
    }

    /// <summary>Thinnest pattern for it, mm.</summary>
    /// <param name="setUp">The set-up.</param>
    /// <param name="mayHang">Whether the bearing may hang out below the pattern.</param>
    public static double LeastPattern(HandSetUp setUp, bool mayHang)
    {
        HandMargins m = setUp.Margins;
        return m.Overcut + setUp.Bearing.Gap + (mayHang ? m.Contact : setUp.Bearing.Height + m.Margin);
    }
}
