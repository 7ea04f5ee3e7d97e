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
    /// <summary>The bits of a make in the order of their use: what engraves, what cuts openings, and last what cuts the outline.</summary>
    /// <param name="make">What is made.</param>
    /// <param name="machine">On what.</param>
    /// <param name="outline">The numbers of the outline.</param>
    internal static ImmutableArray<BitTask> For(Make make, Machine machine, CutSettings outline)
    {
        var bits = new List<Bit>();
        if (make.Marks is { } marks)
        {
            bits.Add(marks.Bit);
        }

        bits.AddRange(make.Openings.Select(o => o.Bit));
        bits = [.. bits.Distinct().Where(b => b != make.Bit), make.Bit];
        return
        [
            .. bits.Select(bit =>
            {
                bool engraves = make.Marks?.Bit == bit;
                ImmutableArray<Opening> openings = [.. make.Openings.Where(o => o.Bit == bit)];
                CutSettings settings = bit == make.Bit
                    ? outline
                    : openings.Length > 0 ? CutSettings.ForOpenings(make, bit, machine, outline.Skin) : CutSettings.ForMarks(make, make.Marks!, machine);
                return new BitTask(bit, settings, engraves, openings, bit == make.Bit);
            }),
        ];
    }
}
