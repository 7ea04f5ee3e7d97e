namespace ToolpathForge.Exchange.Reading;

/// <summary>How much of a drawing is read before it is refused. The defaults are far above what a person draws.</summary>
/// <param name="Bytes">Largest file.</param>
/// <param name="Curves">Most curves once all blocks are put in place; each use of a block counts as one more, whatever is in it.</param>
/// <param name="Depth">Blocks within blocks, or groups within groups.</param>
/// <param name="Time">Longest time that reading may take.</param>
public sealed record DrawingLimits(long Bytes, int Curves, int Depth, TimeSpan Time)
{
    /// <summary>64 MB, a million curves, 32 levels, one minute.</summary>
    public static DrawingLimits Default { get; } = new(64 << 20, 1_000_000, 32, TimeSpan.FromMinutes(1));
}
