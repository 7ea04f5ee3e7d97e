using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Checks.Settings;

/// <summary>What a check says about one setting.</summary>
public enum Verdict
{
    /// <summary>It keeps its limits.</summary>
    Fits,

    /// <summary>The person sets it within the limits.</summary>
    SetIt,

    /// <summary>It can be tried, with care.</summary>
    Doubtful,

    /// <summary>A limit is broken.</summary>
    Broken,
}

/// <summary>One line of a check: a setting, what it is, what it may be.</summary>
/// <param name="Setting">Its name.</param>
/// <param name="Is">What it is; null where the person has not said and sets it at the machine.</param>
/// <param name="AtLeast">The least it may be; null for no limit.</param>
/// <param name="AtMost">The most it may be; null for no limit.</param>
/// <param name="Because">Where the limit comes from, in a few words.</param>
/// <param name="Finding">What is wrong; null for nothing.</param>
public sealed record SettingRow(string Setting, Quantity? Is, Quantity? AtLeast, Quantity? AtMost, string Because, Finding? Finding)
{
    /// <summary>What comes of it.</summary>
    public Verdict Verdict => Finding?.Kind.Severity switch
    {
        Severity.Stop => Verdict.Broken,
        Severity.Warn => Verdict.Doubtful,
        _ => Is is null ? Verdict.SetIt : Verdict.Fits,
    };
}

/// <summary>The answer to a question about settings.</summary>
/// <param name="About">What was looked at, a sentence.</param>
/// <param name="Rows">Settings and their limits.</param>
/// <param name="Windows">Depths of a hand router, pass by pass; empty for a machine.</param>
/// <param name="Feed">Which way to feed by hand, a sentence or two; null for a machine.</param>
/// <param name="Findings">Everything that is wrong, those of the rows among them.</param>
public sealed record SettingsAnswer(
    string About, ImmutableArray<SettingRow> Rows, ImmutableArray<NamedWindow> Windows, string? Feed, ImmutableArray<Finding> Findings);

/// <summary>Depths of one pass of a hand router.</summary>
/// <param name="Pass">What it is called.</param>
/// <param name="Window">Its depths.</param>
public sealed record NamedWindow(string Pass, Hand.DepthWindow Window)
{
    /// <summary>What the section looks like in which these depths are measured; null where it is not drawn.</summary>
    public Hand.HandSection? Section { get; init; }

    /// <summary>Whether the pass cuts right through the board.</summary>
    public bool CutsThrough { get; init; } = true;
}
