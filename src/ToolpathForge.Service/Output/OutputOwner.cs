namespace ToolpathForge.Service.Output;

/// <summary>Whose output a folder holds: what was made, and of which job. Another's is not replaced without being told to.</summary>
/// <param name="Made">What was made: <c>programs</c>, <c>drawings</c> or <c>trial</c>.</param>
/// <param name="Job">Name of the job's file, without its folder.</param>
internal sealed record OutputOwner(string Made, string Job)
{
    /// <summary>Programs, a run sheet and what goes with them.</summary>
    internal const string Programs = "programs";

    /// <summary>Drawings at full size.</summary>
    internal const string Drawings = "drawings";

    /// <summary>The program and the page of a trial piece.</summary>
    internal const string Trial = "trial";

    /// <summary>Whether the person said that another's output may be replaced. Not kept in the folder.</summary>
    internal bool ReplacesAny { get; init; }

    /// <summary>The owner of what is made of a job's file.</summary>
    internal static OutputOwner Of(string made, string job, bool replacesAny = false) => new(made, Path.GetFileName(job)) { ReplacesAny = replacesAny };

    /// <summary>Whether this owner may replace what another left; null where the folder does not say whose it is.</summary>
    internal bool MayReplace(OutputOwner? other) => ReplacesAny || other is null || (Made == other.Made && string.Equals(Job, other.Job, StringComparison.Ordinal));
}
