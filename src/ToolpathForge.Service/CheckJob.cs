using System.Collections.Immutable;
using ToolpathForge.Planning;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Service.Files;
using ToolpathForge.Service.Telling;
using ToolpathForge.Service.Wire;

namespace ToolpathForge.Service;

/// <summary>Says what would go wrong with a job. It writes nothing.</summary>
public static class CheckJob
{
    /// <summary>Reads the job, plans it and proves its programs.</summary>
    /// <param name="job">The job's file.</param>
    /// <param name="stage">Told the name of each stage as it begins; may be null.</param>
    /// <param name="cancel">Ends the work.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static Report Run(string job, Action<string>? stage, CancellationToken cancel)
    {
        Walked walked = Walked.From(job, null, stage, cancel);
        var reply = new CheckReply
        {
            ExitCode = walked.ExitCode,
            Job = walked.WireJob,
            Findings = walked.Teller.Wire(walked.Findings),
            Programs = walked.WirePrograms,
            Settings = walked.Plan is { } planned
                ? [.. planned.Job.Makes.SelectMany(m => JobSettingsTables.Answers(planned, m).Select(a => SettingsWire.Of(m.Id, a)))]
                : [],
        };
        return new Report(
            walked.ExitCode,
            walked.Teller.Remarks(walked.Findings),
            walked.Plan is { } plan ? Sections(plan, walked) : [],
            () => WireJson.Text(reply));
    }

    private static ImmutableArray<Section> Sections(Plan plan, Walked walked) =>
    [
        .. PlanSections.Of(plan, walked.WirePrograms.Length > 0, null),
        .. JobSettingsTables.Of(plan),
        Section.Of("What carries load: local code and a licensed designer decide what may be cut; the run sheet quotes the limits for each board."),
        .. walked.ExitCode == ExitCodes.Fine ? (ImmutableArray<Section>)[Section.Of("Nothing stands in the way; cut writes these programs.")] : [],
    ];
}
