namespace ToolpathForge.Proof;

/// <summary>A letter with its number.</summary>
/// <param name="Letter">In lower case.</param>
/// <param name="Value">Whatever the number or expression came to.</param>
internal readonly record struct Word(char Letter, double Value);

/// <summary>One line of text cut into words: NISTIR 6556 section 3.3. What the words mean is <see cref="GcodeInterpreter"/>'s affair.</summary>
internal sealed class GcodeLine
{
    /// <summary>Longest line in characters, without its line ending: NISTIR 6556 section 3.3.</summary>
    internal const int MaxLength = 256;

    /// <summary>Stands for a comment among the characters that are left when comments and spaces are gone: words may not run through it.</summary>
    internal const char CommentMark = '(';

    private const string Letters = "dfghijklmpqrstxyz";

    internal List<Word> Words { get; } = [];

    /// <summary>Whether it begins with a block delete character.</summary>
    internal bool IsDeletable { get; private set; }

    /// <summary>Cuts a line into words.</summary>
    /// <param name="text">The line without its line ending.</param>
    /// <param name="line">Takes the words; what was in it is dropped.</param>
    /// <param name="code">What is wrong, if it is refused.</param>
    /// <param name="words">The offending part.</param>
    internal static bool TryRead(ReadOnlySpan<char> text, GcodeLine line, out FaultCode? code, out string words)
    {
        line.Words.Clear();
        line.IsDeletable = false;
        words = "";
        if (text.Length > MaxLength)
        {
            code = FaultCodes.LineTooLong;
            return false;
        }

        Span<char> buffer = stackalloc char[MaxLength];
        if (!TryStrip(text, buffer, out int length, out code, out words))
        {
            return false;
        }

        var scanner = new ValueReader(buffer[..length]);
        if (scanner.Take('/'))
        {
            line.IsDeletable = true;
        }

        if (!TryLineNumber(ref scanner, out code))
        {
            words = scanner.Around();
            return false;
        }

        while (!scanner.AtEnd)
        {
            if (scanner.Take(CommentMark))
            {
                continue;
            }

            int from = scanner.Position;
            char letter = scanner.Next();
            code = Check(letter, line.Words);
            double value = 0;
            if (code is null && !scanner.TryValue(out value))
            {
                code = scanner.Code;
            }
            else if (code is null && !(Math.Abs(value) <= ProofAccuracy.LargestNumber))
            {
                code = FaultCodes.NumberTooLarge;
            }

            if (code is not null)
            {
                words = scanner.From(from);
                return false;
            }

            line.Words.Add(new Word(letter, value));
        }

        return true;
    }

    private static FaultCode? Check(char letter, List<Word> before)
    {
        if (letter is 'n')
        {
            return FaultCodes.LineNumberMalformed;
        }

        if (letter is '#')
        {
            return FaultCodes.ParameterRefused;
        }

        if (!char.IsAsciiLetter(letter))
        {
            return FaultCodes.CharacterNotAllowed;
        }

        if (!Letters.Contains(letter, StringComparison.Ordinal))
        {
            return FaultCodes.WordUnknown;
        }

        return letter is not ('g' or 'm') && before.Exists(w => w.Letter == letter) ? FaultCodes.WordRepeated : null;
    }

    private static bool TryLineNumber(ref ValueReader scanner, out FaultCode? code)
    {
        code = null;
        if (!scanner.Take('n'))
        {
            return true;
        }

        int digits = 0;
        while (scanner.TakeDigit())
        {
            digits++;
        }

        if (digits is >= 1 and <= 5 && !scanner.Take('.'))
        {
            return true;
        }

        code = FaultCodes.LineNumberMalformed;
        return false;
    }

    /// <summary>Drops spaces and tabs, lowers letters, and puts one mark where a comment stood.</summary>
    private static bool TryStrip(ReadOnlySpan<char> text, Span<char> buffer, out int length, out FaultCode? code, out string words)
    {
        length = 0;
        code = null;
        words = "";
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (c is ' ' or '\t')
            {
                continue;
            }

            if (c == ';')
            {
                return AreCommentCharacters(text[i..], out code, out words);
            }

            if (c != '(')
            {
                buffer[length++] = char.IsAsciiLetterUpper(c) ? (char)(c | 0x20) : c;
                continue;
            }

            int close = text[i..].IndexOf(')');
            ReadOnlySpan<char> comment = close < 0 ? text[i..] : text.Slice(i, close);
            words = comment.ToString();
            code = comment[1..].Contains('(') ? FaultCodes.CommentNested : close < 0 ? FaultCodes.CommentNotClosed : null;
            if (code is not null || !AreCommentCharacters(comment, out code, out words))
            {
                return false;
            }

            buffer[length++] = CommentMark;
            i += close;
        }

        return true;
    }

    private static bool AreCommentCharacters(ReadOnlySpan<char> comment, out FaultCode? code, out string words)
    {
        foreach (char c in comment)
        {
            if (char.IsControl(c) && c != '\t')
            {
                code = FaultCodes.CharacterNotAllowed;
                words = "U+" + ((int)c).ToString("X4", System.Globalization.CultureInfo.InvariantCulture);
                return false;
            }
        }

        code = null;
        words = "";
        return true;
    }
}
