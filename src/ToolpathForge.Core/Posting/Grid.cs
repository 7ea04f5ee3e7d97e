using System.Globalization;
using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;
using ToolpathForge.Measures;

namespace ToolpathForge.Posting;

/// <summary>
/// A coordinate as a whole number of the dialect's smallest increments. Comparing and writing are exact: nothing is "-0.000", and two points are
/// the same exactly when their text is.
/// </summary>
/// <param name="X">Increments.</param>
/// <param name="Y">Increments.</param>
/// <param name="Z">Increments.</param>
internal readonly record struct GridPoint(long X, long Y, long Z);

/// <summary>The grid of a dialect: its unit and the finest decimals it writes. Straight moves may end on a coarser one.</summary>
internal sealed class Grid
{
    private readonly int _decimals;
    private readonly long _whole;
    private readonly long _coarse;

    internal Grid(Dialect dialect)
    {
        _decimals = Math.Max(dialect.Decimals, dialect.Arcs == ArcForm.Lines ? 0 : dialect.ArcDecimals);
        _whole = Power(_decimals);
        _coarse = Power(_decimals - dialect.Decimals);
        Increment = (dialect.Unit == LengthUnit.Inch ? Length.MillimetresPerInch : 1) / _whole;
    }

    /// <summary>Size of an increment, mm.</summary>
    internal double Increment { get; }

    /// <summary>Furthest that a written point lies from the one meant, mm: half the diagonal of a cell of the coarser grid.</summary>
    internal double LargestRounding => Increment * _coarse * Math.Sqrt(2) / 2;

    /// <summary>The nearest count of increments.</summary>
    internal long Round(double millimetres) => (long)Math.Round(millimetres / Increment, MidpointRounding.AwayFromZero);

    /// <summary>The nearest point on which a straight move may end.</summary>
    internal GridPoint RoundStraight(Point3 p) => new(Coarse(p.X), Coarse(p.Y), Coarse(p.Z));

    /// <summary>The nearest point on which an arc may end.</summary>
    internal GridPoint RoundArc(Point3 p) => new(Round(p.X), Round(p.Y), Coarse(p.Z));

    internal double Millimetres(long count) => count * Increment;

    /// <summary>The count as decimal text without trailing zeros: 12.5, -0.0375, 0.</summary>
    internal string Text(long count)
    {
        long size = Math.Abs(count);
        string whole = (size / _whole).ToString(CultureInfo.InvariantCulture);
        string part = _decimals == 0 ? "" : (size % _whole).ToString(CultureInfo.InvariantCulture).PadLeft(_decimals, '0').TrimEnd('0');
        string text = part.Length > 0 ? $"{whole}.{part}" : whole;
        return count < 0 ? "-" + text : text;
    }

    private static long Power(int exponent)
    {
        long power = 1;
        for (int i = 0; i < exponent; i++)
        {
            power *= 10;
        }

        return power;
    }

    private long Coarse(double millimetres) =>
        (long)Math.Round(millimetres / (Increment * _coarse), MidpointRounding.AwayFromZero) * _coarse;
}
