using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Planning;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Proof;
using ToolpathForge.Service.Files;
using ToolpathForge.Service.Telling;
using ToolpathForge.Service.Wire;

namespace ToolpathForge.Service;

/// <summary>Reads a program back, whoever wrote it, and measures it against the job it is meant for.</summary>
public static class ProveProgram
{
    /// <summary>It cannot be told what the program is meant to cut.</summary>
    internal static readonly FindingKind Which = new(
        "prove-which-make",
        Severity.Stop,
        "The name of {file} does not say which of the job's programs it is meant to be: {programs}.",
        "Say it with --make and the name of the program, or the id of the make where only one program cuts that.")
    { Unusable = true };

    /// <summary>The job makes no such thing.</summary>
    internal static readonly FindingKind NoSuchMake = new(
        "prove-no-such-make",
        Severity.Stop,
        "The job has no make '{make}'; it has {programs}.",
        "{near}")
    { Unusable = true };

    /// <summary>Proves a program.</summary>
    /// <param name="file">The program's file.</param>
    /// <param name="job">The job's file.</param>
    /// <param name="make">Name of the program that it is meant to be, or id of a make that it cuts; null to go by the file's name.</param>
    /// <param name="stage">Told the name of each stage as it begins; may be null.</param>
    /// <param name="cancel">Ends the work.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static Report Run(string file, string job, string? make, Action<string>? stage, CancellationToken cancel)
    {
        (string? text, Finding? unreadable) = TextFile.Read(file, file, TextFile.LargestProgram);
        Walked walked = Walked.From(job, null, stage, cancel);
        List<Finding> findings = [.. walked.Findings];
        if (unreadable is not null)
        {
            findings.Add(unreadable);
        }

        ImmutableArray<PlannedProgram> programs = walked.Plan is null ? [] : [.. walked.Plan.Programs, .. walked.Plan.FailedProofs];
        PlannedProgram? meant = programs.IsEmpty || text is null ? null : Meant(file, make, programs, findings);
        int exit = Teller.ExitCode(findings);
        ProofReport? proof = null;
        if (text is not null && meant is not null)
        {
            stage?.Invoke("proof");
            proof = Prover.Prove(text, meant.Target);

            // How the job's own program fares is not what was asked.
            findings.RemoveAll(f => f.Kind == Planner.NotProven);
            exit = proof.Passed ? Teller.ExitCode(findings) : ExitCodes.NotProven;
        }

        var reply = new ProveReply
        {
            ExitCode = exit,
            File = file,
            Program = meant?.FileName,
            Makes = meant is null ? [] : [.. meant.Cut.Clamping.Makes.Select(m => m.Id)],
            Findings = walked.Teller.Wire(findings),
            Proof = proof is null ? null : ProofWire.Of(proof, walked.Plan!.Job.Tolerance),
        };
        return new Report(
            exit,
            walked.Teller.Remarks(findings),
            proof is null ? [] : ProofSections.Of(file, meant!, proof, walked.Plan!.Job),
            () => WireJson.Text(reply));
    }

    // What was asked for by name, narrowed by the file's own name where that leaves several.
    private static PlannedProgram? Meant(string file, string? make, ImmutableArray<PlannedProgram> programs, List<Finding> findings)
    {
        ImmutableArray<PlannedProgram> asked = make is null ? programs : [.. programs.Where(p => p.Name == make || p.Cut.Clamping.Makes.Any(m => m.Id == make))];
        if (asked.IsEmpty)
        {
            string[] makes = [.. programs.SelectMany(p => p.Cut.Clamping.Makes).Select(m => m.Id).Distinct(StringComparer.Ordinal)];
            string near = Words.Nearest(make!, makes) is { } word ? $"Did you mean {word}?" : "Use one of those ids.";
            findings.Add(Finding.Of(NoSuchMake, Place.None, Arg.Of("make", make!), Arg.Of("programs", string.Join(", ", makes)), Arg.Of("near", near)));
            return null;
        }

        string stem = Path.GetFileNameWithoutExtension(file);
        PlannedProgram? meant = asked.FirstOrDefault(p => string.Equals(p.Name, stem, StringComparison.OrdinalIgnoreCase))
            ?? (asked.Length == 1 ? asked[0] : null);
        if (meant is null)
        {
            findings.Add(Finding.Of(Which, Place.None, Arg.Of("file", file), Arg.Of("programs", string.Join(", ", asked.Select(p => p.Name)))));
        }

        return meant;
    }
}
