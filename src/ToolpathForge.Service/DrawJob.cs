using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.MarkingOut;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Service.Files;
using ToolpathForge.Service.Output;
using ToolpathForge.Service.Telling;
using ToolpathForge.Service.Wire;

namespace ToolpathForge.Service;

/// <summary>Draws a job at full size, to print, to mark out from and to hand on; all of it, or nothing.</summary>
public static class DrawJob
{
    /// <summary>Ordinates nearer than that cannot be marked.</summary>
    internal static readonly FindingKind StepTooSmall = new(
        "draw-step-too-small",
        Severity.Stop,
        "Ordinates {found} apart cannot be told from each other; at least {allowed} is needed.",
        "Give --step a larger length, or leave it out for a usual one.")
    { Unusable = true };

    /// <summary>Draws the job and writes what came of it.</summary>
    /// <param name="job">The job's file.</param>
    /// <param name="folder">The folder to replace: absent, empty, or written by this before.</param>
    /// <param name="family">Whether boards are to be shown side by side as well.</param>
    /// <param name="step">What ordinates are to stand apart, as the person writes it; null for a usual step.</param>
    /// <param name="stage">Told the name of each stage as it begins; may be null.</param>
    /// <param name="cancel">Ends the work; once the old folder has been set aside it is carried through.</param>
    /// <exception cref="OperationCanceledException">Cancelled; the folder is as it was.</exception>
    /// <param name="replace">Whether the output of another job, or of another command, may be replaced as well.</param>
    public static Report Run(string job, string folder, bool family, string? step, Action<string>? stage, CancellationToken cancel, bool replace = false)
    {
        var owner = OutputOwner.Of(OutputOwner.Drawings, job, replace);
        ImmutableArray<Finding> hindrances = OutputFolder.Prepare(folder, owner, Disk.Real);
        stage?.Invoke("reading");
        Loaded loaded = JobFile.Load(job, cancel);
        stage?.Invoke("shapes");
        DrawPlan? plan = loaded.Job is { } read ? DrawPlan.Of(read) : null;
        double? apart = null;
        ImmutableArray<Finding> misread = plan is null ? [] : ReadStep(step, plan.Job.Unit, out apart);
        ImmutableArray<Finding> findings = [.. misread, .. loaded.Findings, .. plan is null ? [] : ProgramNames.Find(plan.Job), .. plan?.Findings ?? [], .. hindrances];
        OutputResult? written = null;
        if (plan is not null && Teller.ExitCode(findings) == ExitCodes.Fine)
        {
            cancel.ThrowIfCancellationRequested();
            stage?.Invoke("drawings");
            ImmutableArray<OutputFile> files = DrawFiles.Of(plan, family, apart);
            stage?.Invoke("writing");
            written = OutputFolder.Write(folder, files, owner, Disk.Real, cancel);
            findings = [.. findings, .. written.Findings];
        }

        bool done = written is { Written: true };
        var teller = new Teller(plan?.Job.Unit ?? LengthUnit.Inch);
        var reply = new DrawReply
        {
            ExitCode = Teller.ExitCode(findings),
            Job = plan is null ? null : JobWire.Of(plan.Job, job),
            Findings = teller.Wire(findings),
            Folder = done ? folder : null,
            Files = done ? [.. written!.Files.Select(f => new WireFile { Name = f.Name, Bytes = f.Bytes, Sha256 = f.Sha256 })] : [],
        };
        return new Report(reply.ExitCode, teller.Remarks(findings), Sections(plan, folder, done ? written!.Files.Length : null), () => WireJson.Text(reply));
    }

    private static ImmutableArray<Finding> ReadStep(string? text, LengthUnit unit, out double? step)
    {
        step = null;
        if (text is null)
        {
            return [];
        }

        Reading<Length> reading = MeasureText.ReadLength(text, unit);
        if (!reading.IsRead)
        {
            return [reading.ToFinding(Place.None, "--step", text)];
        }

        step = reading.Value.Millimetres;
        return step >= Ordinates.LeastStep ? [] : [Finding.Of(StepTooSmall, Place.None, Quantity.Length(step.Value), Quantity.Length(Ordinates.LeastStep))];
    }

    private static ImmutableArray<Section> Sections(DrawPlan? plan, string folder, int? files) => plan is null || files is null
        ? [Section.Of("Nothing was written.")]
        : [DrawTables.Of(plan), Section.Of(FormattableString.Invariant($"Written to {folder}: {files} files.{(plan.Pieces.Any(p => p is ProfilePiece) ? $" Print check-a4.pdf or check-letter.pdf first, and measure its bars; {DrawFiles.ByHand} tells how to mark out." : "")}"))];
}
