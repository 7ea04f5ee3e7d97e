namespace ToolpathForge.Checks.Hand;

/// <summary>What the saw leaves for the router.</summary>
public static class SawnWaste
{
    /// <summary>Most that a hand router takes in one bite, mm: 1/8 in (common practice).</summary>
    public const double MostBite = 3.175;

    /// <summary>What is usually left outside the line, mm: 1/16 in (common practice).</summary>
    public const double UsualBite = 1.5875;
}
