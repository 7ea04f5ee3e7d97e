using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Posting;
using ToolpathForge.Service.Output;
using ToolpathForge.Service.Telling;
using ToolpathForge.Service.Wire;

namespace ToolpathForge.Service;

/// <summary>Turns a job into programs, a run sheet, drawings and their proof; all of them, or none.</summary>
public static class CutJob
{
    /// <summary>Plans the job and writes what came of it.</summary>
    /// <param name="job">The job's file.</param>
    /// <param name="folder">The folder to replace: absent, empty, or written by this before.</param>
    /// <param name="stage">Told the name of each stage as it begins; may be null.</param>
    /// <param name="cancel">Ends the work; once the old folder has been set aside it is carried through.</param>
    /// <exception cref="OperationCanceledException">Cancelled; the folder is as it was.</exception>
    /// <param name="replace">Whether the output of another job, or of another command, may be replaced as well.</param>
    public static Report Run(string job, string folder, Action<string>? stage, CancellationToken cancel, bool replace = false) =>
        Run(job, folder, Disk.Real, null, stage, cancel, replace);

    internal static Report Run(string job, string folder, Disk disk, IPostProcessor? post, Action<string>? stage, CancellationToken cancel, bool replace = false)
    {
        var owner = OutputOwner.Of(OutputOwner.Programs, job, replace);

        // What a killed run left is put right first, and a folder that may not be replaced is told before anybody waits for a plan.
        ImmutableArray<Finding> hindrances = OutputFolder.Prepare(folder, owner, disk);
        Walked walked = Walked.From(job, post, stage, cancel);
        ImmutableArray<Finding> findings = [.. walked.Findings, .. hindrances];
        int exit = Math.Max(walked.ExitCode, Teller.ExitCode(hindrances));
        OutputResult? written = null;
        if (exit == ExitCodes.Fine && walked.Plan is { } plan)
        {
            stage?.Invoke("writing");
            written = OutputFolder.Write(folder, OutputFiles.Of(plan, job), owner, disk, cancel);
            findings = [.. findings, .. written.Findings];
            exit = Teller.ExitCode(written.Findings);
        }

        bool done = written is { Written: true };
        var reply = new CutReply
        {
            ExitCode = exit,
            Job = walked.WireJob,
            Findings = walked.Teller.Wire(findings),
            Folder = done ? folder : null,
            Programs = done || exit == ExitCodes.NotProven ? walked.WirePrograms : [],
            Files = done ? [.. written!.Files.Select(f => new WireFile { Name = f.Name, Bytes = f.Bytes, Sha256 = f.Sha256 })] : [],
        };
        string closing = done
            ? $"Written to {folder}: {Count(reply.Programs.Length, "program")}, run sheet, drawings and proof. Print {Path.Combine(folder, OutputFiles.RunSheet)} first."
            : $"Nothing was written.{(Directory.Exists(folder) && hindrances.IsEmpty ? $" What lies in {folder} is from an earlier run." : "")}";
        return new Report(
            exit,
            walked.Teller.Remarks(findings),
            walked.Plan is null ? [Section.Of(closing)] : PlanSections.Of(walked.Plan, reply.Programs.Length > 0, closing),
            () => WireJson.Text(reply));
    }

    private static string Count(int number, string what) => number == 1 ? $"1 {what}" : FormattableString.Invariant($"{number} {what}s");
}
