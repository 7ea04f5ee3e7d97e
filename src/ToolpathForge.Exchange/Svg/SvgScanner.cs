using System.Globalization;

namespace ToolpathForge.Exchange.Svg;

/// <summary>Walks through the text of an attribute: numbers, commas and words, by the grammar of path data (SVG 1.1, 8.3.9), which the other lists share.</summary>
internal ref struct SvgScanner(ReadOnlySpan<char> text)
{
    /// <summary>Digits of a number that are looked at closely; a double has 17.</summary>
    private const int LongestNumber = 1000;

    private readonly ReadOnlySpan<char> _text = text;

    /// <summary>The place of the next character, from 0.</summary>
    internal int At { get; private set; }

    internal readonly bool IsAtEnd => At >= _text.Length;

    /// <summary>The next character; a zero character at the end.</summary>
    internal readonly char Next => IsAtEnd ? '\0' : _text[At];

    internal void Skip() => At++;

    internal void Blanks()
    {
        while (!IsAtEnd && Next is ' ' or '\t' or '\n' or '\r' or '\f')
        {
            At++;
        }
    }

    /// <summary>Passes blanks with at most one comma among them; true when there was a comma.</summary>
    internal bool Comma()
    {
        Blanks();
        if (Next != ',')
        {
            return false;
        }

        At++;
        Blanks();
        return true;
    }

    /// <summary>Reads a number; false, and nothing read, when none stands here or it is too large for a double.</summary>
    internal bool Number(out double value)
    {
        value = 0;
        int at = At;
        if (at < _text.Length && _text[at] is '+' or '-')
        {
            at++;
        }

        int whole = Digits(ref at), decimals = 0;
        if (at < _text.Length && _text[at] == '.')
        {
            at++;
            decimals = Digits(ref at);
        }

        if (whole + decimals == 0 || at - At > LongestNumber)
        {
            return false;
        }

        // "1em" is one and a unit, not one and a broken exponent.
        if (at < _text.Length && _text[at] is 'e' or 'E')
        {
            int power = at + 1;
            power += power < _text.Length && _text[power] is '+' or '-' ? 1 : 0;
            if (Digits(ref power) > 0 && power - at <= LongestNumber)
            {
                at = power;
            }
        }

        bool read = double.TryParse(
            _text[At..at], NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out value)
            && double.IsFinite(value);
        At = read ? at : At;
        return read;
    }

    /// <summary>Reads a flag, one character that needs no blank after it; false when neither 0 nor 1 stands here.</summary>
    internal bool Flag(out bool value)
    {
        value = Next == '1';
        if (Next is not ('0' or '1'))
        {
            return false;
        }

        At++;
        return true;
    }

    /// <summary>Letters, or a percent sign; empty when there are none.</summary>
    internal ReadOnlySpan<char> Word()
    {
        int from = At;
        while (!IsAtEnd && (char.IsAsciiLetter(Next) || Next == '%'))
        {
            At++;
        }

        return _text[from..At];
    }

    private readonly int Digits(ref int at)
    {
        int from = at;
        while (at < _text.Length && char.IsAsciiDigit(_text[at]))
        {
            at++;
        }

        return at - from;
    }
}
