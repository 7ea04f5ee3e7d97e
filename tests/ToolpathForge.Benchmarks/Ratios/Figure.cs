using System.Globalization;

namespace ToolpathForge.Benchmarks.Ratios;

/// <summary>One figure of the list.</summary>
/// <param name="Name">What was measured.</param>
/// <param name="Value">The measured value.</param>
/// <param name="Unit">What it counts, "x" for a ratio.</param>
/// <param name="Baseline">What it is set against.</param>
/// <param name="Goal">The value it has to reach.</param>
/// <param name="AtLeast">True when larger is better.</param>
/// <param name="Detail">The times behind it.</param>
internal sealed record Figure(string Name, double Value, string Unit, string Baseline, double Goal, bool AtLeast, string Detail)
{
    /// <summary>Written so that a value that is no number falls short.</summary>
    internal bool Holds => AtLeast ? Value >= Goal : Value <= Goal;

    /// <summary>One line.</summary>
    internal string Line() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Name,-44} {Value,9:0.00} {Unit,-3} {Baseline,-38} {(AtLeast ? ">=" : "<=")} {Goal,6:0.00}  {(Holds ? "holds" : "falls short"),-12} {Detail}");
}
