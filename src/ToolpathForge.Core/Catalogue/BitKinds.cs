using System.Collections.Immutable;

namespace ToolpathForge.Catalogue;

/// <summary>The words for kinds of bits, as catalogues, lists and the wire write them.</summary>
public static class BitKinds
{
    private static readonly ImmutableArray<(BitKind Kind, string Word)> s_words =
    [
        (BitKind.Straight, "straight"), (BitKind.UpCut, "up-cut"), (BitKind.DownCut, "down-cut"), (BitKind.Compression, "compression"),
        (BitKind.TopBearing, "top-bearing"), (BitKind.TipBearing, "tip-bearing"), (BitKind.RoundOver, "round-over"), (BitKind.Chamfer, "chamfer"),
        (BitKind.V, "v"), (BitKind.Ball, "ball"),
    ];

    /// <summary>Every word, in the order of the kinds.</summary>
    public static ImmutableArray<string> Words { get; } = [.. s_words.Select(w => w.Word)];

    /// <summary>The word of a kind.</summary>
    /// <param name="kind">The kind.</param>
    public static string WordOf(BitKind kind) => s_words[(int)kind].Word;

    /// <summary>The kind of a word that is one of <see cref="Words"/>; anything else is a fault of the caller.</summary>
    /// <param name="word">The word, exactly as written.</param>
    public static BitKind KindOf(string word) => (BitKind)Words.IndexOf(word);
}
