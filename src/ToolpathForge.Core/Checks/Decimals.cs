using ToolpathForge.Findings;

namespace ToolpathForge.Checks;

/// <summary>Whether the dialect's decimals can hold the job's tolerance.</summary>
internal static class Decimals
{
    /// <summary>Rounding alone would take more than its share.</summary>
    internal static readonly FindingKind TooFew = new(
        "tolerance-too-fine",
        Severity.Stop,
        "Written with the decimals of {dialect}, a point may lie {found} off; rounding may take {allowed} of this tolerance.",
        "Choose a wider tolerance, or a dialect with more decimals.");

    internal static IEnumerable<Finding> Find(Jobs.Job job, double rounding, double allowed)
    {
        if (rounding > allowed)
        {
            yield return Finding.Of(
                TooFew, job.At["tolerance"], Quantity.Length(rounding), Quantity.Length(allowed), Arg.Of("dialect", job.Dialect.Name));
        }
    }
}
