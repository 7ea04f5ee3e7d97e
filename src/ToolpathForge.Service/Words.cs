using ToolpathForge.Tables;

namespace ToolpathForge.Service;

/// <summary>Help with mistyped words, for whoever takes words from a person.</summary>
public static class Words
{
    /// <summary>The word that a mistyped one was probably meant to be; null when none is near.</summary>
    /// <param name="written">What was typed.</param>
    /// <param name="words">The words there are.</param>
    public static string? Nearest(string written, IEnumerable<string> words) => NearWord.Find(written, words);
}
