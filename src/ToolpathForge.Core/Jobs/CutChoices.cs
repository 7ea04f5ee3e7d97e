using System.Collections.Immutable;

namespace ToolpathForge.Jobs;

/// <summary>How a make is to be cut, where the job says so; null leaves it to the catalogue and the rules.</summary>
/// <param name="Speed">Spindle speed, rev/min.</param>
/// <param name="Feed">Feed in the plane, mm/min.</param>
/// <param name="Plunge">Feed downwards, mm/min.</param>
/// <param name="PassDepth">Largest depth of one pass, mm.</param>
/// <param name="Allowance">What roughing leaves on the finished edge, mm.</param>
/// <param name="Overcut">How far below the stock the last pass goes, mm.</param>
/// <param name="Direction">Which way round the finish goes.</param>
/// <param name="Tabs">How many tabs.</param>
/// <param name="TabLength">Length of a tab, mm.</param>
/// <param name="TabHeight">Height of a tab, mm.</param>
public sealed record CutChoices(
    double? Speed,
    double? Feed,
    double? Plunge,
    double? PassDepth,
    double? Allowance,
    double? Overcut,
    DirectionChoice? Direction,
    int? Tabs,
    double? TabLength,
    double? TabHeight)
{
    /// <summary>Largest distance between tabs along the outline, mm.</summary>
    public double? TabSpacing { get; init; }

    /// <summary>How tabs are shaped; null for ramped where those have room, else square.</summary>
    public TabForm? TabForm { get; init; }

    /// <summary>Where tabs are wanted; none for places of the program's choosing.</summary>
    public ImmutableArray<PlaceOnEdge> TabPlaces { get; init; } = [];

    /// <summary>Where the finish is to begin; null for a place of the program's choosing.</summary>
    public PlaceOnEdge? Lead { get; init; }

    /// <summary>How narrow slots are made easier.</summary>
    public SlotChoice Slot { get; init; }

    /// <summary>Thickness of a skin left under the whole cut instead of tabs, mm; null for none.</summary>
    public double? Skin { get; init; }
}
