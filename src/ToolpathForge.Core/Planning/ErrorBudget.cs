namespace ToolpathForge.Planning;

/// <summary>
/// How the job's tolerance is shared out. The finished piece may lie that far from the exact one, no further, whatever causes it; the proof
/// measures the total.
/// </summary>
/// <param name="Total">The job's tolerance, more than 0, mm.</param>
public sealed record ErrorBudget(double Total)
{
    /// <summary>For fitting arcs to curves, mm.</summary>
    public double Fit => Total * 0.5;

    /// <summary>For chords, in dialects without arcs, mm.</summary>
    public double Chords => Total * 0.4;

    /// <summary>For arcs that make up for the errors of the axes, mm: so little that it needs no share of its own.</summary>
    public double Axes => Total * 0.01;

    /// <summary>For rounding to the dialect's decimals, mm.</summary>
    public double Rounding => Total * 0.1;
}
