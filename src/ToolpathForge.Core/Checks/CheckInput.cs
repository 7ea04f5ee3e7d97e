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
/// <param name="Make">The make that is looked at, one of those on the bed.</param>
/// <param name="Bit">The bit that is looked at.</param>
/// <param name="Settings">The numbers it is cut with.</param>
/// <param name="Pieces">The pieces of the make, fitted.</param>
internal sealed record CheckInput(Job Job, Clamping Clamping, Make Make, Bit Bit, CutSettings Settings, ImmutableArray<PlacedContour> Pieces)
{
    /// <summary>Where the keys stand that concern the bit: the make's, or an opening's own.</summary>
    internal Places Keys { get; init; } = Make.At;

    internal Machine Machine => Job.Machine;

    /// <summary>Where a key of the make stands.</summary>
    internal Place At(string key) => Keys[key].OfMake(Make.Id);
}
