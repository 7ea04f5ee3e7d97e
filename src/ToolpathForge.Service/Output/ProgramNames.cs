using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;

namespace ToolpathForge.Service.Output;

/// <summary>Sees to it that every program can bear its name, on whatever system the folder is carried to.</summary>
internal static class ProgramNames
{
    /// <summary>A program would take a name that something else has.</summary>
    internal static readonly FindingKind Taken = new(
        "program-name-taken",
        Severity.Stop,
        "A program cannot be called {name}: {reason}.",
        "Give the make another id.")
    { Unusable = true };

    private static readonly ImmutableArray<string> Always = [OutputFiles.RunSheet, OutputFiles.Proof, Manifest.FileName];

    // Names of devices, which Windows gives to no file, whatever its ending (Microsoft, Naming Files, Paths, and Namespaces).
    private static readonly ImmutableArray<string> Devices =
        ["con", "prn", "aux", "nul", .. Enumerable.Range(1, 9).SelectMany(i => (string[])[FormattableString.Invariant($"com{i}"), FormattableString.Invariant($"lpt{i}")])];

    internal static ImmutableArray<Finding> Find(Plan plan) => Find(plan.Job);

    internal static ImmutableArray<Finding> Find(Job job) =>
    [
        .. from make in job.Makes
           let name = make.Id + job.Dialect.FileEnding
           let reason = Always.Contains(name, StringComparer.OrdinalIgnoreCase) ? "that file is always written beside the programs"
               : Devices.Contains(make.Id, StringComparer.OrdinalIgnoreCase) ? "on some systems that is the name of a device"
               : null
           where reason is not null
           select Finding.Of(Taken, make.At["id"].OfMake(make.Id), Arg.Of("name", name), Arg.Of("reason", reason)),
    ];
}
