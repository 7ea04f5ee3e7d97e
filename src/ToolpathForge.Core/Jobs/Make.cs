using System.Collections.Immutable;
using ToolpathForge.Catalogue;

namespace ToolpathForge.Jobs;

/// <summary>One thing to make, with its own stock and bit.</summary>
/// <param name="Id">The person's word for it; unique in the job, letters, digits and hyphens.</param>
/// <param name="Count">How many, at least 1.</param>
/// <param name="Material">What the bit cuts.</param>
/// <param name="Thickness">Thickness of what the bit cuts, mm.</param>
/// <param name="Bit">The bit.</param>
/// <param name="Cut">How it is to be cut, where the job says so.</param>
/// <param name="At">Where each key stands.</param>
public abstract record Make(string Id, int Count, Material Material, double Thickness, Bit Bit, CutChoices Cut, Places At)
{
    /// <summary>The panel it is cut from; null where it comes from a board.</summary>
    public PanelSheet? Sheet { get; init; }

    /// <summary>Holes and slots through it, in the order written.</summary>
    public ImmutableArray<Opening> Openings { get; init; } = [];

    /// <summary>What is engraved into it; null for nothing.</summary>
    public Marking? Marks { get; init; }

    /// <summary>Thickness that is left under the whole cut, mm: for the hand to finish, or as a skin; 0 for a cut right through.</summary>
    public virtual double LeftBelow => Cut.Skin ?? 0;

    /// <summary>Clamps and other metal on the bed, in the frame of its programs.</summary>
    public ImmutableArray<ClampBox> Clamps { get; init; } = [];
}
