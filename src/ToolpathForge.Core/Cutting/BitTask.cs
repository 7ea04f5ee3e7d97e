using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Jobs;

namespace ToolpathForge.Cutting;

/// <summary>What one bit is to do in a clamping.</summary>
/// <param name="Bit">The bit.</param>
/// <param name="Settings">The numbers it cuts with.</param>
/// <param name="Marks">Whether it engraves the marks.</param>
/// <param name="Openings">The openings it cuts.</param>
/// <param name="Outline">Whether it cuts the outline.</param>
internal sealed record BitTask(Bit Bit, CutSettings Settings, bool Marks, ImmutableArray<Opening> Openings, bool Outline)
{
    /// <summary>The bits of makes in the order of their use: what engraves, what cuts openings, and last what cuts the outlines.</summary>
    /// <param name="makes">What is made, at least one; of several, all are cut alike but for their tabs.</param>
    /// <param name="machine">On what.</param>
    /// <param name="outline">The numbers of the outlines.</param>
    internal static ImmutableArray<BitTask> For(ImmutableArray<Make> makes, Machine machine, CutSettings outline)
    {
        Make make = makes[0];
        Make? marked = makes.FirstOrDefault(m => m.Marks is not null);
        Marking? marks = marked?.Marks;
        ImmutableArray<Opening> all = [.. makes.SelectMany(m => m.Openings)];
        Bit[] before = [.. marks is null ? [] : (ReadOnlySpan<Bit>)[marks.Bit], .. all.Select(o => o.Bit)];
        Bit[] bits = [.. before.Distinct().Where(b => b != make.Bit), make.Bit];
        return
        [
            .. bits.Select(bit =>
            {
                bool engraves = marks?.Bit == bit;
                ImmutableArray<Opening> openings = [.. all.Where(o => o.Bit == bit).Distinct()];
                CutSettings settings = bit == make.Bit
                    ? outline
                    : openings.Length > 0 ? CutSettings.ForOpenings(make, bit, machine, outline.Skin) : CutSettings.ForMarks(marked!, marks!, machine);
                return new BitTask(bit, settings, engraves, openings, bit == make.Bit);
            }),
        ];
    }
}
