using ToolpathForge.Cutting;

namespace ToolpathForge.Checks.Hand;

/// <summary>On which side of you the end of the board lies, the profile edge towards you.</summary>
public enum EndSide
{
    /// <summary>At your right: a right-hand piece lies so with its face up.</summary>
    Right,

    /// <summary>At your left.</summary>
    Left,
}

/// <summary>
/// Which way to feed by hand, and what the grain makes of it. By hand the feed always goes against the cutter's rotation, with the work on the left of the
/// travel: from left to right along the edge near you (common practice; a climbing router pulls itself away). There the tooth runs to your right. On an edge
/// that draws away from you towards the tip, it runs down the grain where the tip is at your right, and up the grain where it is at your left; see
/// <see cref="Grain"/>.
/// </summary>
public static class HandFeed
{
    /// <summary>The grain class of an edge near you, fed by hand.</summary>
    /// <param name="side">Where the tip is.</param>
    /// <param name="lean">How far the edge draws away from the board's length on its way to the tip, degrees from 0 (along the board) to 90 (across it);
    /// negative on an undercut, which comes back towards you.</param>
    public static GrainClass ClassOf(EndSide side, double lean) => Grain.ClassOf(side == EndSide.Right ? lean : -lean);

    /// <summary>What to do, in a sentence or two.</summary>
    /// <param name="kind">The class of most of the edge; null where nobody has said how the board lies.</param>
    public static string Say(GrainClass? kind) => kind switch
    {
        GrainClass.With =>
            "Lay the profile edge towards you and feed from left to right, out towards the tip: that is against the cutter's rotation and with the grain.",
        GrainClass.Against =>
            "Feeding from left to right, as you must by hand, runs against the grain here: lay the board end over end so that its tip is at your right, with a"
            + " pattern for that face; or take it in very light passes. Never climb by hand.",
        GrainClass.EndGrain =>
            "Feed from left to right. On end grain the far corner breaks out: back it up with a scrap, or cut the end before the long edges.",
        GrainClass.Along => "Feed from left to right, against the cutter's rotation; the edge runs along the grain.",
        _ =>
            "Feed from left to right along the edge near you, against the cutter's rotation. Lay the board so that its tip is at your right: there that is"
            + " with the grain.",
    };
}
