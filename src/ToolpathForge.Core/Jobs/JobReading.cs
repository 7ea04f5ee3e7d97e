using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Jobs;

/// <summary>What became of a job file.</summary>
/// <param name="Job">
/// The job. Null when the file cannot be used, or when nothing in it can be planned. While a make has a <see cref="Severity.Stop"/> against it,
/// the job holds the other makes only: they can still be planned, so that their findings come in the same go, but no program may be handed over.
/// </param>
/// <param name="Findings">Everything that is wrong or worth knowing, in the order of the file.</param>
public sealed record JobReading(Job? Job, ImmutableArray<Finding> Findings)
{
    /// <summary>Whether the file cannot be used at all: broken syntax, unknown key, wrong type, missing key or file.</summary>
    public bool IsUnusable => Findings.Any(f => f.Kind.Unusable);

    /// <summary>Whether nothing stands against programs so far.</summary>
    public bool IsSound => Job is not null && !Findings.Any(f => f.Kind.Severity == Severity.Stop);
}
