using ToolpathForge.Tables;

namespace ToolpathForge.Service;

/// <summary>Help with mistyped words, for whoever takes words from a person.</summary>
public static class Words
{
    private const int Longest = 40;

    /// <summary>The word that a mistyped one was probably meant to be; null when none is near.</summary>
    /// <param name="written">What was typed.</param>
    /// <param name="words">The words there are.</param>
    public static string? Nearest(string written, IEnumerable<string> words) => NearWord.Find(written, words);

    /// <summary>Text from a file, fit to be repeated: cut short, without control characters.</summary>
    /// <param name="text">The text.</param>
    internal static string Short(string text) => new([.. (text.Length > Longest ? text[..Longest] + "…" : text).Select(c => char.IsControl(c) ? ' ' : c)]);
}
