using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.RunSheets;
using ToolpathForge.Service.Files;
using ToolpathForge.Service.Output;
using ToolpathForge.Service.Telling;

namespace ToolpathForge.Service;

/// <summary>Writes the program of a trial piece, and the page that says what to measure on it; both, or none.</summary>
public static class TrialJob
{
    /// <summary>The name of the page.</summary>
    internal const string Page = "trial.html";

    /// <summary>The job has no make of that id.</summary>
    internal static readonly FindingKind NoSuchMake = new(
        "trial-no-such-make",
        Severity.Stop,
        "The job has no make '{make}'; it has {words}.",
        "Name one of them, or leave --make out for the first.")
    { Unusable = true };

    /// <summary>Plans the trial piece for a make of the job and writes what came of it.</summary>
    /// <param name="job">The job's file: machine, dialect, stock and bit come from it.</param>
    /// <param name="make">Id of the make whose bit is to be looked at; null for the first.</param>
    /// <param name="folder">The folder to replace: absent, empty, or written by this before.</param>
    /// <param name="stage">Told the name of each stage as it begins; may be null.</param>
    /// <param name="cancel">Ends the work; once the old folder has been set aside it is carried through.</param>
    /// <exception cref="OperationCanceledException">Cancelled; the folder is as it was.</exception>
    /// <param name="replace">Whether the output of another job, or of another command, may be replaced as well.</param>
    public static Report Run(string job, string? make, string folder, Action<string>? stage, CancellationToken cancel, bool replace = false)
    {
        var owner = OutputOwner.Of(OutputOwner.Trial, job, replace);
        ImmutableArray<Finding> hindrances = OutputFolder.Prepare(folder, owner, Disk.Real);
        stage?.Invoke("reading");
        Loaded loaded = JobFile.Load(job, cancel);
        List<Finding> findings = [.. loaded.Findings.Where(f => f.Kind.Severity == Severity.Stop), .. hindrances];
        Make? like = loaded.Job?.Makes.FirstOrDefault(m => make is null || m.Id == make);
        if (loaded.Job is { } read && like is null)
        {
            findings.Add(Finding.Of(NoSuchMake, Place.InFile(job, 0, 0), Arg.Of("make", make!), Arg.Of("words", string.Join(", ", read.Makes.Select(m => m.Id)))));
        }

        Plan? plan = like is null || Teller.ExitCode(findings) != ExitCodes.Fine ? null : Planner.Trial(loaded.Job!, like, stage, cancel);
        findings.AddRange(plan?.Findings ?? []);
        int exit = plan is { FailedProofs.IsEmpty: false } ? ExitCodes.NotProven : Teller.ExitCode(findings);
        bool done = false;
        if (plan is not null && exit == ExitCodes.Fine)
        {
            stage?.Invoke("writing");
            OutputResult written = OutputFolder.Write(
                folder, [.. plan.Programs.Select(p => OutputFile.Text(p.FileName, p.Text)), OutputFile.Text(Page, TrialPage.Write(plan))], owner, Disk.Real, cancel);
            findings.AddRange(written.Findings);
            exit = Teller.ExitCode(written.Findings);
            done = written.Written;
        }

        string closing = done
            ? $"Written to {folder}: the program of a trial piece and {Page}, which says what to measure and what to write into the job."
            : "Nothing was written.";
        return new Report(exit, new Teller(loaded.Job?.Unit ?? Measures.LengthUnit.Inch).Remarks(findings), [Section.Of(closing)], null);
    }
}
