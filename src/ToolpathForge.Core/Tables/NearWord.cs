using System.Globalization;

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
        if (SameParts(lower, words) is { } turned)
        {
            return turned;
        }

        if (BySize(lower) is { } size)
        {
            // 2x16 is no slip of a finger from 2x10: the nearest width of the same thickness is meant, or nothing.
            return words.Select(w => (Word: w, Size: BySize(w))).Where(w => w.Size?.Thick == size.Thick)
                .OrderBy(w => Math.Abs(w.Size!.Value.Wide - size.Wide)).ThenBy(w => w.Word, StringComparer.Ordinal).Select(w => w.Word).FirstOrDefault();
        }

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

    // 1/4-downcut for downcut-1/4: the same parts in another order.
    private static string? SameParts(string written, IEnumerable<string> words)
    {
        string[] parts = Parts(written);
        return parts.Length < 2 ? null : words.Order(StringComparer.Ordinal).FirstOrDefault(w => Parts(w.ToLowerInvariant()).SequenceEqual(parts, StringComparer.Ordinal));
    }

    private static string[] Parts(string word)
    {
        string[] parts = word.Split('-', ' ', '_');
        Array.Sort(parts, StringComparer.Ordinal);
        return parts;
    }

    // The nominal sizes of lumber: 2x8.
    private static (int Thick, int Wide)? BySize(string word)
    {
        string[] sides = word.Split('x');
        return sides.Length == 2 && int.TryParse(sides[0], NumberStyles.None, CultureInfo.InvariantCulture, out int thick)
            && int.TryParse(sides[1], NumberStyles.None, CultureInfo.InvariantCulture, out int wide)
            ? (thick, wide)
            : null;
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
