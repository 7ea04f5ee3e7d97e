using System.Collections.Immutable;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>The keys of what a plate has besides its edge.</summary>
internal static class PlateKeys
{
    private static readonly ImmutableArray<Key> s_strip =
    [
        Key.Length("thickness", "How far it hangs below the plate; no thicker than the board, or the board must overhang the bench.", 3, 150).Else("3/4 in", "18 mm"),
        Key.Length("set-back", "How far it stays from the finished edge, out of the cutter's way.", 3, 300).Else("3/4 in", "20 mm"),
        Key.Whole("screws", "How many screws hold it.", 2, 20).ElseFrom("one every 6 in (150 mm), two at least"),
        Key.Length("hole", "Diameter of the screws' holes through the plate.", 1, 20).ElseFrom("3/16 in (5 mm), or the bit's own if that is thicker"),
        Key.Length("pilot", "Diameter of the holes to drill in it.", 0.5, 15).Else("1/8 in", "3 mm"),
        Key.Row("bit", "bits", "What bores the plate's holes.").ElseFrom("the bit of the make"),
    ];

    /// <summary>The guide block.</summary>
    internal static TableKeys Block { get; } = new("the guide block",
    [
        Key.Length("width", "Its width, at most that of the seat.", 5, 300).ElseFrom("the seat's"),
        .. s_strip,
    ]);

    /// <summary>The stop.</summary>
    internal static TableKeys Stop { get; } = new("the end stop",
    [
        Key.Length("width", "Its width; the plate goes that far past the sawn end.", 5, 300).Else("1 1/2 in", "40 mm"),
        .. s_strip,
    ]);

    /// <summary>Brads.</summary>
    internal static TableKeys Brads { get; } = new("brads",
    [
        Key.Whole("count", "How many places.", 1, 30).Else("3"),
        Key.Length("off", "How far they stay from the finished edge.", 3, 300).Else("1 in", "25 mm"),
        Key.Row("bit", "bits", "What bores holes for them.").ElseFrom("no holes: the places are engraved where marks are, and drawn; 18 gauge brads are shot through the plate"),
        Key.Length("hole", "Diameter of the holes.", 0.5, 12).ElseFrom("the bit's own"),
    ]);

    /// <summary>The hole to hang it up by.</summary>
    internal static TableKeys Hang { get; } = new("the hanging hole",
    [
        Key.Length("width", "Its diameter.", 2, 60).Else("5/8 in", "16 mm"),
        Key.Row("bit", "bits", "What bores it.").ElseFrom("the bit of the make"),
    ]);

    /// <summary>Those that a plate takes.</summary>
    internal static ImmutableArray<Key> All { get; } =
    [
        Key.Table("block", "The guide block, screwed under the seat along the guide-block line: its screw holes are bored, the block is drawn full size and listed.", Block)
            .ElseFrom("none is worked out; the seat carries one all the same"),
        Key.Table("stop", "A stop against an end that is sawn first: the plate goes on past the end, the curve runs straight out over it, and a strip below it meets the sawn end.", Stop)
            .ElseFrom("the working edge goes on over the end cut"),
        Key.Table("brads", "Places for brads over the board, as far from each other as they can be and off the finished edge.", Brads).ElseFrom("none are worked out"),
        Key.Table("hang", "A hole to hang the pattern up by, at its far end.", Hang).ElseFrom("none"),
        Key.Choice("hands", "For which ends: right, lying face up, profile edge towards you, end at your right; left, its mirror image, end at your left; both, turned over for left-hand ends, block and stop screwed to the face that lies down.",
            "right", "left", "both").Else("right"),
    ];
}
