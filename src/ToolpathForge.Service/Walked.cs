using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Planning;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Posting;
using ToolpathForge.Service.Files;
using ToolpathForge.Service.Output;
using ToolpathForge.Service.Telling;
using ToolpathForge.Service.Wire;

namespace ToolpathForge.Service;

/// <summary>A job read and planned: what every use case that is about a job begins with.</summary>
/// <param name="File">The job's file, as the person named it.</param>
/// <param name="Plan">The plan; null when the job could not be read.</param>
/// <param name="Findings">Of reading and planning.</param>
internal sealed record Walked(string File, Plan? Plan, ImmutableArray<Finding> Findings)
{
    internal Teller Teller { get; } = new(Plan?.Job.Unit ?? LengthUnit.Inch);

    internal WireJob? WireJob => Plan is null ? null : JobWire.Of(Plan.Job, File);

    /// <summary>The programs when nothing stops them; those that failed their proof too, so that their figures can be read.</summary>
    internal WireProgram[] WirePrograms => Plan is null || ExitCode is not (ExitCodes.Fine or ExitCodes.NotProven) ? [] : [.. Plan.Programs.Concat(Plan.FailedProofs).Select(p => ProgramWire.Of(p, Plan.Job))];

    /// <summary>A failed proof weighs more than a stop only where nothing else stops the job: the failure itself is a stop as well.</summary>
    internal int ExitCode => Plan is { FailedProofs.IsEmpty: false } && Teller.ExitCode(Findings.Where(f => f.Kind != Planner.NotProven)) == ExitCodes.Fine
        ? ExitCodes.NotProven
        : Teller.ExitCode(Findings);

    internal static Walked From(string file, IPostProcessor? post, Action<string>? stage, CancellationToken cancel) =>
        From(file, () => JobFile.Load(file, cancel), post, stage, cancel);

    /// <summary>A job from wherever it is read.</summary>
    internal static Walked From(string file, Func<Loaded> load, IPostProcessor? post, Action<string>? stage, CancellationToken cancel)
    {
        stage?.Invoke("reading");
        Loaded loaded = load();
        if (loaded.Job is null)
        {
            return new Walked(file, null, loaded.Findings);
        }

        Plan plan = post is null ? Planner.Plan(loaded.Job, stage, cancel) : Planner.Plan(loaded.Job, post, stage, cancel);
        return new Walked(file, plan, [.. loaded.Findings, .. ProgramNames.Find(plan), .. plan.Findings]);
    }
}
