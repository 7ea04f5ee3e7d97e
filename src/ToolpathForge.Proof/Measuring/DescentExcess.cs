namespace ToolpathForge.Proof;

/// <summary>
/// How far a way down has run ahead of what was allowed, summed over motions. Heights are written in whole increments, so of a slope over many short motions one goes straight down by an
/// increment where its neighbours stay level: no single motion tells whether the slope is too steep, the sum does. It never falls below 0, so that a level way earns no plunge.
/// </summary>
internal sealed class DescentExcess
{
    private double excess;

    /// <summary>Takes the next motion.</summary>
    /// <param name="drop">How far it goes down, mm; negative upwards.</param>
    /// <param name="allowed">How far it may go down, mm.</param>
    /// <param name="grace">What rounding of heights may add, mm.</param>
    /// <returns>Whether the way down has run too far ahead; counting then starts anew.</returns>
    internal bool Add(double drop, double allowed, double grace)
    {
        excess = Math.Max(0, excess + drop - allowed);
        if (excess <= grace)
        {
            return false;
        }

        excess = 0;
        return true;
    }

    /// <summary>Forgets what has been: the bit is somewhere else.</summary>
    internal void Reset() => excess = 0;
}
