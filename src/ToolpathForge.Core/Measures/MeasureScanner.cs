using System.Globalization;
using ToolpathForge.Findings;

namespace ToolpathForge.Measures;

/// <summary>A number kept as a fraction until its unit is known, so that 3 1/2 in is exactly the double nearest to 88.9 mm.</summary>
/// <param name="Numerator">At most some 10^18 in size.</param>
/// <param name="Denominator">More than 0.</param>
internal readonly record struct WrittenNumber(decimal Numerator, decimal Denominator)
{
    /// <summary>The number times a factor, rounded once.</summary>
    internal double Times(decimal factor) => (double)(Numerator * factor / Denominator);

    internal WrittenNumber Negated => new(-Numerator, Denominator);
}

/// <summary>
/// Walks once through a text that holds a measure. It knows the marks that people and word processors put down: typographic dashes, primes,
/// quotation marks and ready-made fractions.
/// </summary>
internal ref struct MeasureScanner(string text)
{
    // Twelve digits before the point and twelve behind it keep every product inside the range of decimal.
    private const int MostDigits = 12;

    private readonly string _text = text;

    internal int At { get; private set; }

    internal readonly bool AtEnd => At >= _text.Length;

    private readonly char Here => Ahead(0);

    internal void SkipSpaces()
    {
        while (!AtEnd && char.IsWhiteSpace(Here))
        {
            At++;
        }
    }

    /// <summary>Takes a dash of any kind.</summary>
    internal bool TakeDash() => Take(IsDash(Here));

    /// <summary>Takes one given character.</summary>
    internal bool Take(char wanted) => Take(!AtEnd && Here == wanted);

    /// <summary>Goes back to an index taken from <see cref="At"/> before.</summary>
    internal void Back(int at) => At = at;

    /// <summary>A sign, if there is one: true for minus.</summary>
    internal bool TakeMinus()
    {
        SkipSpaces();
        if (Take('+'))
        {
            return false;
        }

        return TakeDash();
    }

    /// <summary>Takes a mark (° ' ") or a run of letters, slashes and a closing point; lower case, typographic marks made plain.</summary>
    internal string TakeUnit()
    {
        SkipSpaces();
        if (IsFootMark(Here))
        {
            At++;
            return Take(IsFootMark(Here)) ? "\"" : "'";
        }

        if (Take(IsInchMark(Here)))
        {
            return "\"";
        }

        if (Take('°'))
        {
            return "°";
        }

        int start = At;
        while (char.IsLetter(Here) || (Here == '/' && At > start))
        {
            At++;
        }

        string word = _text[start..At].ToLowerInvariant();
        if (word is "in" or "ft")
        {
            Take('.');
        }

        return word;
    }

    /// <summary>Takes an unsigned number: 12, 12.5, .5, 7/8, 3 1/2, 3-1/2, 3½.</summary>
    internal FindingKind? TakeNumber(out WrittenNumber number)
    {
        SkipSpaces();
        number = default;
        if (TakeReadyFraction(out number))
        {
            return null;
        }

        int start = At;
        if (!TakeDigits(out decimal whole, out FindingKind? problem) && Here != '.')
        {
            return problem ?? MeasureFindings.NumberExpected;
        }

        if (Here == '.')
        {
            At++;
            int from = At;
            if (!TakeDigits(out decimal behind, out problem))
            {
                At = start;
                return problem ?? MeasureFindings.NumberExpected;
            }

            decimal scale = Power(At - from);
            number = new WrittenNumber((whole * scale) + behind, scale);
            return null;
        }

        if (Take(IsSlash(Here)))
        {
            if (!TakeDigits(out decimal under, out problem) || under == 0)
            {
                At = start;
                return problem ?? MeasureFindings.FractionBroken;
            }

            number = new WrittenNumber(whole, under);
            return null;
        }

        number = new WrittenNumber(whole, 1);
        return TakeFractionBehind(whole, ref number);
    }

    // What follows a whole number belongs to it only when it is a complete fraction: in 3-1/2 and 3 1/2 and 3½, not in 2' - 3.
    private FindingKind? TakeFractionBehind(decimal whole, ref WrittenNumber number)
    {
        int before = At;
        if (!TakeDash())
        {
            SkipSpaces();
        }

        int start = At;
        if (TakeReadyFraction(out WrittenNumber ready))
        {
            number = new WrittenNumber((whole * ready.Denominator) + ready.Numerator, ready.Denominator);
            return null;
        }

        if (start == before || !TakeDigits(out decimal over, out _) || !Take(IsSlash(Here)))
        {
            At = before;
            return null;
        }

        if (!TakeDigits(out decimal under, out _) || over >= under)
        {
            At = start;
            return MeasureFindings.FractionBroken;
        }

        number = new WrittenNumber((whole * under) + over, under);
        return null;
    }

    /// <summary>Whether two whole numbers with a slash between them come next.</summary>
    internal readonly bool IsSlashedPair()
    {
        int at = At;
        int over = Digits(ref at);
        if (over == 0 || at >= _text.Length || !IsSlash(_text[at]))
        {
            return false;
        }

        at++;
        return Digits(ref at) > 0;
    }

    private readonly int Digits(ref int at)
    {
        int start = at;
        while (at < _text.Length && char.IsAsciiDigit(_text[at]))
        {
            at++;
        }

        return at - start;
    }

    private bool TakeDigits(out decimal value, out FindingKind? problem)
    {
        int start = At;
        while (char.IsAsciiDigit(Here))
        {
            At++;
        }

        problem = At - start > MostDigits ? MeasureFindings.ValueAbsurd : null;
        value = 0;
        if (problem is not null)
        {
            At = start;
            return false;
        }

        return At > start && decimal.TryParse(_text.AsSpan(start, At - start), NumberStyles.None, CultureInfo.InvariantCulture, out value);
    }

    private bool TakeReadyFraction(out WrittenNumber fraction)
    {
        // The ready-made fractions of Unicode's Latin-1 and Number Forms blocks that a rule knows.
        fraction = Here switch
        {
            '¼' => new(1, 4),
            '½' => new(1, 2),
            '¾' => new(3, 4),
            '⅓' => new(1, 3),
            '⅔' => new(2, 3),
            '⅕' => new(1, 5),
            '⅖' => new(2, 5),
            '⅗' => new(3, 5),
            '⅘' => new(4, 5),
            '⅙' => new(1, 6),
            '⅚' => new(5, 6),
            '⅛' => new(1, 8),
            '⅜' => new(3, 8),
            '⅝' => new(5, 8),
            '⅞' => new(7, 8),
            _ => default,
        };
        return Take(fraction.Denominator > 0);
    }

    private bool Take(bool found)
    {
        At += found ? 1 : 0;
        return found;
    }

    private readonly char Ahead(int steps) => At + steps < _text.Length ? _text[At + steps] : '\0';

    private static decimal Power(int digits)
    {
        decimal power = 1;
        for (int i = 0; i < digits; i++)
        {
            power *= 10;
        }

        return power;
    }

    private static bool IsDash(char c) => c is '-' or '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\u2212';

    private static bool IsSlash(char c) => c is '/' or '\u2044' or '\u2215';

    private static bool IsFootMark(char c) => c is '\'' or '\u2032' or '\u2019' or '\u2018';

    private static bool IsInchMark(char c) => c is '"' or '\u2033' or '\u201D' or '\u201C';
}
