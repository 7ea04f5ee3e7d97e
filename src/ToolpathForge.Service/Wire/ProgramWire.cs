using System.Text;
using ToolpathForge.Clampings;
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
        Makes = [.. program.Cut.Clamping.Makes.Select(m => m.Id)],
        Bit = program.Cut.Path.Bit.Id,
        Bits = [.. program.Cut.Works.Select(w => w.Path.Bit.Id)],
        Speed = Rounded(program.Cut.Settings.Speed),
        Feed = Rounded(program.Cut.Settings.Feed),
        Times = program.Cut.Clamping.Starts,
        Waits = program.Cut.Clamping.Times - program.Cut.Clamping.Starts,
        Turns = [.. program.Cut.Clamping.Turns.Select(Of)],
        Minutes = Rounded(program.Seconds / 60),
        CuttingLength = Rounded(program.Proof.Motion.FeedLength),
        Proof = ProofWire.Of(program.Proof, job.Tolerance),
    };

    private static WireTurn Of(BoardTurn turn) => new()
    {
        Run = turn.Run,
        Place = turn.Place,
        Board = turn.Board,
        Name = turn.Boards.Name.Length > 0 ? turn.Boards.Name : null,
        End = turn.End,
        Width = Rounded(turn.Boards.Width),
        Thickness = Rounded(turn.Boards.Thickness),
    };
}
