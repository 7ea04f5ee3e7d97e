namespace ToolpathForge.Tables;

/// <summary>Words of the trade that mean the same as a word of a key, and are taken for it.</summary>
internal static class OtherWords
{
    private static readonly (string Written, string Meant)[] Pairs =
    [
        ("hollow", "scoop"), ("concave", "scoop"), ("round", "belly"), ("convex", "belly"),
        ("center", "centre"), // Texts are in American spelling, keys and ids as they were first written.
    ];

    /// <summary>The word of a key that another word stands for; null where it stands for none of them.</summary>
    /// <param name="written">What the person wrote; upper and lower case are alike.</param>
    /// <param name="words">The words that the key takes.</param>
    internal static string? Find(string written, IReadOnlyCollection<string> words)
    {
        foreach ((string other, string meant) in Pairs)
        {
            if (string.Equals(written, other, StringComparison.OrdinalIgnoreCase) && words.Contains(meant, StringComparer.Ordinal))
            {
                return meant;
            }
        }

        return null;
    }
}
