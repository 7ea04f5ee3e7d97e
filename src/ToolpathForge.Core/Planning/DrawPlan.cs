using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Planning;

/// <summary>What of a job can be drawn. Bits and machine are not asked: whoever cuts by hand has neither.</summary>
/// <param name="Job">The job.</param>
/// <param name="Findings">What is wrong with the shapes, in the order of the job.</param>
/// <param name="Pieces">The pieces that could be drawn, one a make, in the job's order.</param>
public sealed record DrawPlan(Job Job, ImmutableArray<Finding> Findings, ImmutableArray<Piece> Pieces)
{
    /// <summary>Scales the shapes of a job to their boards.</summary>
    /// <param name="job">The job.</param>
    public static DrawPlan Of(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var findings = new List<Finding>();
        ImmutableArray<Piece> pieces = [.. job.Makes.Select(make => Planner.PieceOf(job, make, findings)).OfType<Piece>()];
        return new DrawPlan(job, [.. findings], pieces);
    }
}
