using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;

namespace ToolpathForge.Checks;

/// <summary>What a check looks at: one clamping and how it is to be cut. Checks read; they change nothing.</summary>
/// <param name="Job">The job.</param>
/// <param name="Clamping">What lies on the bed.</param>
/// <param name="Settings">The numbers it is cut with.</param>
/// <param name="Pieces">The pieces, fitted.</param>
internal sealed record CheckInput(Job Job, Clamping Clamping, CutSettings Settings, ImmutableArray<PlacedContour> Pieces)
{
    internal Make Make => Clamping.Make;

    internal Bit Bit => Clamping.Make.Bit;

    internal Machine Machine => Job.Machine;

    /// <summary>Where a key of the make stands.</summary>
    internal Place At(string key) => Make.At[key].OfMake(Make.Id);
}
