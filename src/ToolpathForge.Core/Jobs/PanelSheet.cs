using ToolpathForge.Catalogue;

namespace ToolpathForge.Jobs;

/// <summary>How pieces may be turned on the blank, to lay more on one.</summary>
public enum PlateTurn
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>By half a turn.</summary>
    Half,

    /// <summary>By quarter turns.</summary>
    Quarter,
}

/// <summary>The panel that a make is cut from.</summary>
/// <param name="Panel">Its row.</param>
public sealed record PanelSheet(Panel Panel)
{
    /// <summary>How far the clamped sheet is from flat over a piece, as measured, mm; null when the job does not say.</summary>
    public double? Flatness { get; init; }

    /// <summary>How pieces may be turned on the blank.</summary>
    public PlateTurn Turned { get; init; }
}
