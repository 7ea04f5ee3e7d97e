using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;

namespace ToolpathForge.Checks.Hand;

/// <summary>One length in the sum that makes a limit.</summary>
/// <param name="Name">What it is, as <c>cutter</c> or <c>bearing contact</c>.</param>
/// <param name="Millimetres">mm; negative where it is taken off.</param>
public readonly record struct Term(string Name, double Millimetres);

/// <summary>Which way a limit holds.</summary>
public enum Sense
{
    /// <summary>The depth may not be less.</summary>
    AtLeast,

    /// <summary>The depth may not be more.</summary>
    AtMost,
}

/// <summary>
/// A limit on the depth that a router is set to: a sum of lengths, kept apart so that it can be told in words and drawn. The number is the sum of the very
/// terms that are told, so that the two cannot differ.
/// </summary>
/// <param name="Reason">Why it is one, a clause: <c>the bearing must run on the pattern</c>.</param>
/// <param name="Sense">Which way it holds.</param>
/// <param name="Terms">The sum.</param>
public sealed record Limit(string Reason, Sense Sense, ImmutableArray<Term> Terms)
{
    /// <summary>The limit, mm.</summary>
    public double Value => Terms.Sum(t => t.Millimetres);

    /// <summary>Whether a depth keeps it, to a rounding.</summary>
    /// <param name="depth">mm.</param>
    public bool Holds(double depth) => Sense == Sense.AtLeast ? depth >= Value - DepthWindow.Rounding : depth <= Value + DepthWindow.Rounding;

    /// <summary>The limit as a sum in words: <c>cutter 28.6 mm + bearing contact 3 mm = 31.6 mm</c>; a lone term without the sum.</summary>
    /// <param name="unit">The unit of the person.</param>
    public string InWords(LengthUnit unit)
    {
        string sum = string.Concat(Terms.Select((t, i) =>
            (i == 0 ? (t.Millimetres < 0 ? "-" : "") : t.Millimetres < 0 ? " - " : " + ") + $"{t.Name} {Told(Math.Abs(t.Millimetres), unit)}"));
        return Terms.Length == 1 ? sum : $"{sum} = {Told(Value, unit)}";
    }

    private static string Told(double millimetres, LengthUnit unit) => QuantityText.Write(Quantity.Length(millimetres), unit);
}

/// <summary>The depths that keep every limit.</summary>
/// <param name="Limits">At least one each way.</param>
public sealed record DepthWindow(ImmutableArray<Limit> Limits)
{
    /// <summary>What sums of a few lengths may be off by, mm.</summary>
    internal const double Rounding = 1e-9;

    /// <summary>The limit that decides the least depth: the first of the largest.</summary>
    public Limit Lower => Limits.Where(l => l.Sense == Sense.AtLeast).MaxBy(l => l.Value)!;

    /// <summary>The limit that decides the greatest depth: the first of the smallest.</summary>
    public Limit Upper => Limits.Where(l => l.Sense == Sense.AtMost).MinBy(l => l.Value)!;

    /// <summary>Least depth, mm.</summary>
    public double Least => Lower.Value;

    /// <summary>Greatest depth, mm.</summary>
    public double Most => Upper.Value;

    /// <summary>Whether there is any depth that keeps every limit.</summary>
    public bool IsOpen => Least <= Most + Rounding;

    /// <summary>The middle, mm, from which both ends are equally far.</summary>
    public double Middle => (Least + Most) / 2;

    /// <summary>The depth to set, mm: on a mark of a rule where one lies between the limits.</summary>
    /// <param name="through">
    /// Whether the pass cuts right through: then the least depth that does, with the overcut that is in the limits, so that no more of the cutter spins below the board than must.
    /// Otherwise the middle.
    /// </param>
    /// <param name="unit">Whose rule.</param>
    public double Best(bool through, LengthUnit unit)
    {
        double step = RuleText.Step(unit);
        double mark = through ? Math.Ceiling((Least / step) - 1e-6) * step : RuleText.Nearest(Middle, unit);
        return mark >= Least - Rounding && mark <= Most + Rounding ? mark : Middle;
    }

    /// <summary>Whether a depth keeps every limit.</summary>
    /// <param name="depth">mm.</param>
    public bool Holds(double depth) => Limits.All(l => l.Holds(depth));
}
