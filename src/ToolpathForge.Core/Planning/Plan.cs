using System.Collections.Immutable;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Proof;

namespace ToolpathForge.Planning;

/// <summary>One program and everything that was found out about it.</summary>
/// <param name="Name">The program's name: the make's id.</param>
/// <param name="FileName">Its file name with the dialect's ending.</param>
/// <param name="Text">The program as it will run.</param>
/// <param name="Cut">What it does.</param>
/// <param name="Target">What the proof measures it against.</param>
/// <param name="Proof">What reading it back showed.</param>
/// <param name="Seconds">How long it runs, about.</param>
public sealed record PlannedProgram(
    string Name, string FileName, string Text, CutPlan Cut, Target Target, ProofReport Proof, double Seconds);

/// <summary>What came of a job. Programs are there only when no finding is a stop and every program passed its proof.</summary>
/// <param name="Job">The job.</param>
/// <param name="Findings">In the order of the job, stops and warnings and notes alike.</param>
/// <param name="Pieces">The pieces that could be drawn, one a make, in the job's order.</param>
/// <param name="Programs">Proven programs in the job's order.</param>
/// <param name="FailedProofs">Programs that were written and failed their proof: a fault of ours, told and never handed over.</param>
public sealed record Plan(
    Job Job,
    ImmutableArray<Finding> Findings,
    ImmutableArray<Piece> Pieces,
    ImmutableArray<PlannedProgram> Programs,
    ImmutableArray<PlannedProgram> FailedProofs)
{
    /// <summary>Whether a finding forbids any program.</summary>
    public bool IsStopped => Findings.Any(f => f.Kind.Severity == Severity.Stop);
}
