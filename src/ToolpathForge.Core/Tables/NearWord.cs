namespace ToolpathForge.Tables;

/// <summary>Finds the word that a mistyped one was probably meant to be.</summary>
public static class NearWord
{
    private const int LongestCompared = 64;

    /// <summary>The nearest of some words; null when none is near.</summary>
    /// <param name="written">What the person wrote.</param>
    /// <param name="words">The words there are.</param>
    /// <remarks>
    /// Near means at most one slip in three letters, and three at most, by <see cref="Distance"/>; upper and lower case count as alike. Of words
    /// equally near the first in ordinal order is taken.
    /// </remarks>
    public static string? Find(string written, IEnumerable<string> words)
    {
        if (written.Length is 0 or > LongestCompared)
        {
            return null;
        }

        string lower = written.ToLowerInvariant();
        int most = Math.Min(3, Math.Max(1, (lower.Length + 1) / 3));
        string? best = null;
        int bestDistance = most + 1;
        foreach (string word in words.Where(w => w.Length <= LongestCompared).Order(StringComparer.Ordinal))
        {
            int distance = Distance(lower, word.ToLowerInvariant());
            if (distance < bestDistance)
            {
                (best, bestDistance) = (word, distance);
            }
        }

        return best;
    }

    /// <summary>
    /// The Damerau-Levenshtein distance in its optimal string alignment form: how many letters must be put in, left out, replaced or swapped
    /// with their neighbour.
    /// </summary>
    /// <param name="one">A word.</param>
    /// <param name="other">Another.</param>
    public static int Distance(string one, string other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        int[,] d = new int[one.Length + 1, other.Length + 1];
        for (int i = 0; i <= one.Length; i++)
        {
            d[i, 0] = i;
        }

        for (int j = 0; j <= other.Length; j++)
        {
            d[0, j] = j;
        }

        for (int i = 1; i <= one.Length; i++)
        {
            for (int j = 1; j <= other.Length; j++)
            {
                int replaced = d[i - 1, j - 1] + (one[i - 1] == other[j - 1] ? 0 : 1);
                d[i, j] = Math.Min(replaced, Math.Min(d[i - 1, j], d[i, j - 1]) + 1);
                if (i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[one.Length, other.Length];
    }
}
