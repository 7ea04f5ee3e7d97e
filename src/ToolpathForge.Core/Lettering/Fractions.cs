using System.Text;

namespace ToolpathForge.Lettering;

/// <summary>One thing to set: a character, or a fraction that is stacked.</summary>
/// <param name="Character">The character; meaningless for a fraction.</param>
/// <param name="Numerator">Digits above the bar, empty for a character.</param>
/// <param name="Denominator">Digits below the bar.</param>
internal readonly record struct Sort(Rune Character, string Numerator = "", string Denominator = "")
{
    internal bool IsFraction => Numerator.Length > 0;
}

/// <summary>
/// Finds the fractions in a text: one to three digits, a slash, one to three digits, standing free of letters, further digits, slashes and decimal points
/// before them, so that dates, decimals and names with a slash stay as they are. The single characters ½, ¾, ⅜ … are fractions too.
/// </summary>
internal static class Fractions
{
    private const int MostDigits = 3;
    private const char ThinSpace = '\u2009';

    internal static List<Sort> Split(string text)
    {
        var sorts = new List<Sort>(text.Length);
        for (int i = 0; i < text.Length;)
        {
            if (StackedAt(text, i) is { } found)
            {
                Add(sorts, new Sort(default, found.Numerator, found.Denominator));
                i += found.Length;
                continue;
            }

            // A lone half of a surrogate pair becomes the replacement character, which the alphabet draws as a box.
            _ = Rune.DecodeFromUtf16(text.AsSpan(i), out Rune rune, out int used);
            if (OfOneCharacter(rune) is { } parts)
            {
                Add(sorts, new Sort(default, parts.Numerator, parts.Denominator));
            }
            else
            {
                sorts.Add(new Sort(rune));
            }

            i += used;
        }

        return sorts;
    }

    // "3 1/2": after a whole number the stack itself parts the two, so a full space would tear the measure apart.
    private static void Add(List<Sort> sorts, Sort fraction)
    {
        if (sorts.Count >= 2 && sorts[^1].Character.Value == ' ' && Rune.IsDigit(sorts[^2].Character))
        {
            sorts[^1] = new Sort(new Rune(ThinSpace));
        }

        sorts.Add(fraction);
    }

    private static (string Numerator, string Denominator, int Length)? StackedAt(string text, int at)
    {
        if (at > 0 && (char.IsLetterOrDigit(text[at - 1]) || text[at - 1] is '/' or '.' or ',' or '\u2044'))
        {
            return null;
        }

        int above = Digits(text, at);
        int slash = at + above;
        if (above is 0 or > MostDigits || slash >= text.Length || text[slash] is not ('/' or '\u2044'))
        {
            return null;
        }

        int below = Digits(text, slash + 1);
        int end = slash + 1 + below;
        bool goesOn = end < text.Length
            && (text[end] is '/' or '\u2044' || (text[end] is '.' or ',' && end + 1 < text.Length && char.IsAsciiDigit(text[end + 1])));
        return below is 0 or > MostDigits || goesOn
            ? null
            : (text.Substring(at, above), text.Substring(slash + 1, below), end - at);
    }

    private static int Digits(string text, int at)
    {
        int n = 0;
        while (at + n < text.Length && char.IsAsciiDigit(text[at + n]))
        {
            n++;
        }

        return n;
    }

    private static (string Numerator, string Denominator)? OfOneCharacter(Rune rune) => rune.Value switch
    {
        '½' => ("1", "2"),
        '⅓' => ("1", "3"),
        '⅔' => ("2", "3"),
        '¼' => ("1", "4"),
        '¾' => ("3", "4"),
        '⅕' => ("1", "5"),
        '⅖' => ("2", "5"),
        '⅗' => ("3", "5"),
        '⅘' => ("4", "5"),
        '⅙' => ("1", "6"),
        '⅚' => ("5", "6"),
        '⅛' => ("1", "8"),
        '⅜' => ("3", "8"),
        '⅝' => ("5", "8"),
        '⅞' => ("7", "8"),
        _ => null,
    };
}
