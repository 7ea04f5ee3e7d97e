using System.Text;

namespace ToolpathForge.Plugin.Conformance;

/// <summary>How one check went.</summary>
public sealed class ConformanceCheck
{
    internal ConformanceCheck(string name, string? reason)
    {
        Name = name;
        Reason = reason;
    }

    /// <summary>What is checked: lower case with hyphens. It stays from version to version.</summary>
    public string Name { get; }

    /// <summary>Whether the host does it.</summary>
    public bool Passed => Reason is null;

    /// <summary>What is wrong; null when nothing is.</summary>
    public string? Reason { get; }
}

/// <summary>How all checks went.</summary>
public sealed class ConformanceReport
{
    internal ConformanceReport(string host, IReadOnlyList<ConformanceCheck> checks)
    {
        Host = host;
        Checks = checks;
    }

    /// <summary>The host's name.</summary>
    public string Host { get; }

    /// <summary>The checks, in the order in which they were made.</summary>
    public IReadOnlyList<ConformanceCheck> Checks { get; }

    /// <summary>Whether all passed.</summary>
    public bool Passed => Checks.All(c => c.Passed);

    /// <summary>The report for people, a line a check.</summary>
    public override string ToString()
    {
        var text = new StringBuilder(Host).Append(": ").Append(Passed ? "conforms" : "does not conform").Append('\n');
        foreach (ConformanceCheck check in Checks)
        {
            text.Append(check.Passed ? "  pass  " : "  FAIL  ").Append(check.Name).Append(check.Passed ? "" : ": " + check.Reason).Append('\n');
        }

        return text.ToString();
    }
}
