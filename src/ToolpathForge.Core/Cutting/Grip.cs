namespace ToolpathForge.Cutting;

/// <summary>How much of a shank the collet must hold, on the machine and in the hand router alike.</summary>
public static class Grip
{
    /// <summary>Never less than this of a shank, mm: 3/4 in (common practice).</summary>
    internal const double LeastLength = 19;

    /// <summary>Shortest length of shank in the collet, mm: max(2 × shank, 19) (common practice).</summary>
    /// <param name="shank">Diameter of the shank, mm.</param>
    public static double Least(double shank) => Math.Max(2 * shank, LeastLength);

    /// <summary>Farthest that a bit may stick out of the collet, mm.</summary>
    /// <param name="overall">Length of the bit, mm.</param>
    /// <param name="shank">Diameter of its shank, mm.</param>
    public static double MostStickOut(double overall, double shank) => overall - Least(shank);
}
