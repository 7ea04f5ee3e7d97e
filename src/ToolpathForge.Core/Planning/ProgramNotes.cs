using System.Collections.Immutable;
using System.Globalization;
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
        string what = make switch
        {
            TrialMake => "trial piece: a square with a slot and a hole, to be measured",
            _ when clamping.Makes.Length > 1 => string.Join(", ", clamping.Makes.Select(m => FormattableString.Invariant($"{clamping.CountOf(m)} x {m.Id}"))),
            PatternMake pattern => FormattableString.Invariant($"{clamping.Pieces.Length} pattern(s) for {pattern.Board.Name}"),
            OutlineMake drawn => FormattableString.Invariant($"{clamping.Pieces.Length} by the outline of {drawn.Drawing}"),
            BoardEndMake end when clamping.Pieces.Length == 1 => $"end of a {end.Board.Name} board",
            BoardEndMake end => FormattableString.Invariant($"ends of {clamping.Pieces.Length} {end.Board.Name} boards, side by side"),
            _ => throw new InvalidOperationException($"No words for a {make.GetType().Name}."),
        };
        string zero = make.Sheet is not null
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

    /// <summary>What a program that waits between the boards of a batch says before each run after the first; empty for one that is started anew.</summary>
    internal static ImmutableArray<string> Waits(Clamping clamping) => !clamping.Waits
        ? []
        :
        [
            .. clamping.Turns.GroupBy(t => t.Run).Skip(1).Select(run => string.Create(
                CultureInfo.InvariantCulture,
                $"Next: {(run.Count() == 1 ? "board" : "boards")} {string.Join(", ", run.Select(t => t.Board))}, {(run.First().End == 1 ? "first" : "second, end over end")}")),
        ];
}
