using ToolpathForge.Measures;

namespace ToolpathForge.Pieces;

/// <summary>Length of the brads that hold a pattern on a board: through the pattern and far enough into the board, and not through it.</summary>
public static class Brads
{
    /// <summary>How far a brad goes into the board at least, mm: 3/8 in (common practice).</summary>
    public const double Bite = 9.525;

    /// <summary>What stays of the board below its point, mm: 1/8 in (judgement).</summary>
    public const double Left = 3.175;

    // The lengths that 18 gauge brads are sold in, in (common practice).
    private static readonly double[] s_sold = [0.625, 0.75, 1, 1.25, 1.5, 1.75, 2];

    /// <summary>The shortest sold length that holds, in; null where none does without coming through the board.</summary>
    /// <param name="pattern">Thickness of the pattern, mm.</param>
    /// <param name="board">Thickness of the board, mm.</param>
    public static double? Length(double pattern, double board)
    {
        foreach (double inches in s_sold)
        {
            double length = inches * Measures.Length.MillimetresPerInch;
            if (length >= pattern + Bite - 1e-6)
            {
                return length <= pattern + board - Left ? inches : null;
            }
        }

        return null;
    }

    /// <summary>What to fix a pattern with, in words.</summary>
    /// <param name="pattern">Thickness of the pattern, mm.</param>
    /// <param name="board">Thickness of the board, mm.</param>
    public static string Say(double pattern, double board) => Length(pattern, board) is { } inches
        ? $"brads (18 gauge, {LengthText.Write(inches * Measures.Length.MillimetresPerInch, LengthUnit.Inch)}: through the pattern and 3/8 in or more into the board; they hold better than clamps)"
        : "clamps or double-sided tape: no brad goes far enough into this board without coming through it";
}
