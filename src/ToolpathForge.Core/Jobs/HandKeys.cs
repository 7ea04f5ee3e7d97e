using System.Collections.Immutable;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>The keys of what is done by hand.</summary>
internal static class HandKeys
{
    private static readonly ImmutableArray<Key> s_router =
    [
        Key.Row("bit", "bits", "The hand router's bit, with a bearing or for a bushing."),
        Key.Length("bite", "What the saw leaves outside the finished line.", 0, 100).ElseFrom("1/16 in (1.6 mm), as is usual"),
        Key.Length("collet-height", "How far the collet stays above the router's base when it is pushed down.", -50, 100).ElseFrom("0: flush with it"),
    ];

    /// <summary>A hand router along a pattern.</summary>
    internal static TableKeys Pattern { get; } = new("the hand router along a pattern",
    [
        .. s_router,
        Key.Length("board", "Thickness of the board that the pattern guides the router along.", 3, 200).ElseFrom("the thickest of the measured boards, or the dressed thickness"),
        Key.Length("bushing", "Outside diameter of a guide bushing, used instead of a bearing.", 5, 100).ElseFrom("none"),
        Key.Length("bushing-length", "How far the bushing stands out below the base.", 0.5, 50).ElseFrom("not looked at"),
        Key.Flag("may-hang", "Whether a bearing at the tip may hang out below its pattern.").Else("false"),
    ]);

    /// <summary>A hand router along an edge that the machine has begun.</summary>
    internal static TableKeys BoardEnd { get; } = new("the hand router after the machine",
    [
        .. s_router,
        Key.Length("machined", "How deep the machine cuts from the upper face; the rest is sawn and finished by hand, the bearing on the machined edge.", 1, 200),
    ]);
}
