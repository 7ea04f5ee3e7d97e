using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Shapes;

namespace ToolpathForge.Jobs;

/// <summary>A make whose edge is a shape, scaled to a board.</summary>
/// <param name="Id">See <see cref="Make"/>.</param>
/// <param name="Count">See <see cref="Make"/>.</param>
/// <param name="Board">The size of lumber the shape is drawn for.</param>
/// <param name="DesignWidth">The width the shape is scaled to: the dressed width, or the measured one if the job says so, mm.</param>
/// <param name="Material">See <see cref="Make"/>.</param>
/// <param name="Thickness">See <see cref="Make"/>.</param>
/// <param name="Shape">The shape.</param>
/// <param name="Bit">See <see cref="Make"/>.</param>
/// <param name="Cut">See <see cref="Make"/>.</param>
/// <param name="At">See <see cref="Make"/>.</param>
public abstract record ProfileMake(
    string Id,
    int Count,
    Lumber Board,
    double DesignWidth,
    Material Material,
    double Thickness,
    ShapeSpec Shape,
    Bit Bit,
    CutChoices Cut,
    Places At)
    : Make(Id, Count, Material, Thickness, Bit, Cut, At)
{
    /// <summary>The id of the block that it comes from with other boards; null when it stands alone.</summary>
    public string? Family { get; init; }

    /// <summary>What is done by hand; null for nothing.</summary>
    public HandWork? Hand { get; init; }

    /// <summary>Along the board from its finished tip to the nearer side of what it bears on, mm; null where nobody has said.</summary>
    public double? BearsAt { get; init; }

    /// <summary>What the maker of engineered timber allows, as the job quotes it; null where it says nothing.</summary>
    public string? MakerAllows { get; init; }

    /// <inheritdoc/>
    public override double LeftBelow => Hand?.Machined is { } machined ? Thickness - machined : base.LeftBelow;
}
