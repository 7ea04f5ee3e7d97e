using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;

namespace ToolpathForge.Planning;

/// <summary>The lines at the head of a program: what it makes, from what, with what, and where zero is.</summary>
internal static class ProgramNotes
{
    internal static ImmutableArray<string> For(Job job, string name, CutPlan cut)
    {
        Clamping clamping = cut.Clamping;
        Make make = clamping.Make;
        string Size(double mm) => ShopText.Size(mm, job.Unit);
        string what = make is PatternMake
            ? FormattableString.Invariant($"{clamping.Pieces.Length} pattern(s) for {make.Board.Name}")
            : $"end of a {make.Board.Name} board";
        string zero = make is PatternMake
            ? "X0 Y0 near left corner of the blank"
            : "X0 Y0 where the fence meets the finished tip; the board lies at minus X, minus Y";
        return
        [
            $"{job.Name}: {name}",
            what,
            $"Stock: {make.Material.Name}, {Size(make.Thickness)} thick",
            .. cut.Works.Select((w, i) => FormattableString.Invariant($"Bit {i + 1}: {w.Path.Bit.Name}, edges at least {Size(w.Settings.Steps[^1])} long")),
            $"Zero: {zero}; Z0 on the {(job.Zero == ZeroHeight.Bed ? "spoilboard" : "upper face of the stock")}",
            "Read the run sheet before you start. Eyes, ears, dust: protect them.",
        ];
    }
}
