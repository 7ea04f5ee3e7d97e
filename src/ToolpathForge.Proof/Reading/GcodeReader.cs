using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>
/// Reads program text back: the part of the RS274/NGC language of NISTIR 6556 that small routers run. It knows G0-G4, G17-G21, G40, G49, G54-G59, G61, G61.1, G64, G80,
/// G90, G91, G94, M0-M3, M5-M9 and M30, words F I J N P R S T X Y Z, expressions without parameters, comments in parentheses or behind a semicolon,
/// block delete and percent lines. Everything else is refused with its line. It never throws on a text.
/// </summary>
public static class GcodeReader
{
    /// <summary>Reads a whole text.</summary>
    /// <param name="text">The text, lines ended by LF, CR LF or CR.</param>
    /// <param name="acceptsIsoUnits">Whether G70 and G71 mean inch and mm, as in ISO 6983-1.</param>
    public static GcodeProgram Read(string text, bool acceptsIsoUnits = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        var interpreter = new GcodeInterpreter(acceptsIsoUnits);
        var deletable = ImmutableArray.CreateBuilder<int>();
        Refusal? refusal = null;
        int number = 0;
        bool isOpened = false, isClosed = false, isBlank = true;
        var cut = new GcodeLine();
        foreach (ReadOnlySpan<char> line in Lines(text))
        {
            number++;
            if (refusal is not null || isClosed || (interpreter.HasEnded && !isOpened))
            {
                continue;
            }

            ReadOnlySpan<char> trimmed = line.Trim(" \t");
            if (trimmed is "%")
            {
                isClosed = isOpened;
                refusal = isBlank || isOpened ? null : new Refusal(FaultCodes.PercentNotPaired, number, "%");
                isOpened = true;
                isBlank = false;
                continue;
            }

            isBlank &= trimmed.IsEmpty;
            if (interpreter.HasEnded)
            {
                continue;
            }

            if (!GcodeLine.TryRead(line, cut, out FaultCode? code, out string words))
            {
                refusal = code == FaultCodes.LineTooLong
                    ? new Refusal(code, number, words, line.Length, GcodeLine.MaxLength)
                    : new Refusal(code!, number, words);
                continue;
            }

            if (cut.IsDeletable && cut.Words.Count > 0)
            {
                deletable.Add(number);
            }

            refusal = interpreter.Run(cut.Words, number);
        }

        if (refusal is null && isOpened && !isClosed)
        {
            refusal = new Refusal(FaultCodes.PercentNotPaired, number, "%");
        }

        return new GcodeProgram
        {
            Steps = [.. interpreter.Steps],
            Refusal = refusal,
            Lines = number,
            Unstated = [.. interpreter.Unstated],
            DeletableLines = deletable.ToImmutable(),
        };
    }

    private static LineEnumerator Lines(string text) => new(text);

    /// <summary>Lines of a text; an ending at the very end begins no further line.</summary>
    private ref struct LineEnumerator(ReadOnlySpan<char> text)
    {
        private ReadOnlySpan<char> rest = text;

        public ReadOnlySpan<char> Current { get; private set; }

        public readonly LineEnumerator GetEnumerator() => this;

        public bool MoveNext()
        {
            if (rest.IsEmpty)
            {
                return false;
            }

            int end = rest.IndexOfAny('\r', '\n');
            if (end < 0)
            {
                Current = rest;
                rest = default;
                return true;
            }

            Current = rest[..end];
            int next = rest[end] == '\r' && end + 1 < rest.Length && rest[end + 1] == '\n' ? end + 2 : end + 1;
            rest = rest[next..];
            return true;
        }
    }
}
