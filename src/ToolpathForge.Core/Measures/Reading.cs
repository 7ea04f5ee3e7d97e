using ToolpathForge.Findings;

namespace ToolpathForge.Measures;

/// <summary>What became of a text that a person wrote: its value, or what is wrong and where in the text. Reading never throws.</summary>
/// <typeparam name="T">What was asked for.</typeparam>
/// <param name="Value">The value; meaningless while there is a problem.</param>
/// <param name="Problem">What is wrong, one of <see cref="MeasureFindings"/>; null when the text was read.</param>
/// <param name="At">Index in the text where the problem starts, from 0.</param>
/// <param name="Piece">The piece of the text that was not understood; empty at its end.</param>
public readonly record struct Reading<T>(T Value, FindingKind? Problem, int At, string Piece)
    where T : struct
{
    /// <summary>Whether the text was read.</summary>
    public bool IsRead => Problem is null;

    /// <summary>The finding that says what is wrong.</summary>
    /// <param name="place">Where the problem lies; a caller that knows the column adds <see cref="At"/> to it.</param>
    /// <param name="key">What the text is the value of, as the person calls it.</param>
    /// <param name="text">The text as written.</param>
    /// <exception cref="InvalidOperationException">The text was read: nothing is wrong.</exception>
    public Finding ToFinding(Place place, string key, string text) =>
        Finding.Of(
            Problem ?? throw new InvalidOperationException("The text was read; there is nothing to report."),
            place,
            Arg.Of("key", key),
            Arg.Of("text", TextPiece.Short(text)),
            Arg.Of("piece", Piece.Length == 0 ? "the end" : $"'{Piece}'"));

    internal static Reading<T> Of(T value) => new(value, null, 0, "");

    internal static Reading<T> Refused(FindingKind problem, string text, int at) => new(default, problem, at, TextPiece.From(text, at));
}

/// <summary>Pieces of a person's text that are short enough to repeat in a message.</summary>
internal static class TextPiece
{
    private const int Longest = 40;

    /// <summary>The text, cut short when it is long, without line breaks or control characters.</summary>
    internal static string Short(string text)
    {
        string cut = text.Length > Longest ? string.Concat(text.AsSpan(0, Longest), "…") : text;
        return string.Create(cut.Length, cut, static (target, from) =>
        {
            for (int i = 0; i < target.Length; i++)
            {
                target[i] = char.IsControl(from[i]) ? ' ' : from[i];
            }
        });
    }

    /// <summary>From an index up to the next space.</summary>
    internal static string From(string text, int at)
    {
        int end = at;
        while (end < text.Length && !char.IsWhiteSpace(text[end]))
        {
            end++;
        }

        return Short(text[at..end]);
    }
}
