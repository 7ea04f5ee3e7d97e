using ToolpathForge.Checks.Hand;
using ToolpathForge.Measures;

namespace ToolpathForge.Checks.Settings;

/// <summary>The limits of a depth as inequalities in words.</summary>
public static class HandWords
{
    /// <summary>Each limit as the sum that makes it and the reason for it, those from below first, the deciding one first each way.</summary>
    /// <param name="window">The limits.</param>
    /// <param name="unit">The unit of the person.</param>
    public static IEnumerable<(string Sum, string Reason)> Limits(DepthWindow window, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(window);
        return window.Limits.OrderBy(l => l.Sense).ThenBy(l => l.Sense == Sense.AtLeast ? -l.Value : l.Value)
            .Select(l => ($"depth {(l.Sense == Sense.AtLeast ? "≥" : "≤")} {l.InWords(unit)}", l.Reason));
    }
}
