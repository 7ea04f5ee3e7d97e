using System.Text;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Service.Output;
using static ToolpathForge.Service.Wire.WireNumber;

namespace ToolpathForge.Service.Wire;

/// <summary>A program in the contract's form.</summary>
internal static class ProgramWire
{
    internal static WireProgram Of(PlannedProgram program, Job job) => new()
    {
        File = program.FileName,
        Sha256 = Manifest.Hash(Encoding.UTF8.GetBytes(program.Text)),
        Makes = [program.Cut.Clamping.Make.Id],
        Bit = program.Cut.Path.Bit.Id,
        Bits = [.. program.Cut.Works.Select(w => w.Path.Bit.Id)],
        Speed = Rounded(program.Cut.Settings.Speed),
        Feed = Rounded(program.Cut.Settings.Feed),
        Times = program.Cut.Clamping.Times,
        Minutes = Rounded(program.Seconds / 60),
        CuttingLength = Rounded(program.Proof.Motion.FeedLength),
        Proof = ProofWire.Of(program.Proof, job.Tolerance),
    };
}
