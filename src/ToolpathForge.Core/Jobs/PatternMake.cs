using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Shapes;

namespace ToolpathForge.Jobs;

/// <summary>A pattern: a template plate from a panel, with the profile as its working edge.</summary>
/// <param name="Id">See <see cref="Make"/>.</param>
/// <param name="Count">See <see cref="Make"/>.</param>
/// <param name="Board">See <see cref="Make"/>.</param>
/// <param name="DesignWidth">See <see cref="Make"/>.</param>
/// <param name="Material">The panel's material; the panel itself is its sheet.</param>
/// <param name="Thickness">Measured thickness of the panel, mm: a nominal one is never taken.</param>
/// <param name="Shape">See <see cref="Make"/>.</param>
/// <param name="Bit">See <see cref="Make"/>.</param>
/// <param name="Cut">See <see cref="Make"/>.</param>
/// <param name="Hold">How far the plate goes on along the board past the curve, mm.</param>
/// <param name="Seat">How far the plate reaches past the reference edge, to carry the guide block, mm.</param>
/// <param name="Reach">How far it reaches past the profile edge, never short of it, mm.</param>
/// <param name="At">See <see cref="Make"/>.</param>
public sealed record PatternMake(
    string Id,
    int Count,
    Lumber Board,
    double DesignWidth,
    Material Material,
    double Thickness,
    ShapeSpec Shape,
    Bit Bit,
    CutChoices Cut,
    double Hold,
    double Seat,
    double Reach,
    Places At)
    : ProfileMake(Id, Count, Board, DesignWidth, Material, Thickness, Shape, Bit, Cut, At)
{
    /// <summary>The boards that it is for, as measured; empty where they are all as wide as the design.</summary>
    public ImmutableArray<MeasuredBoards> Measured { get; init; } = [];

    /// <summary>What the plate has besides its edge.</summary>
    public PlateFittings Fittings { get; init; } = PlateFittings.None;

    /// <summary>The widest board that it is for, mm: at least the design width.</summary>
    public double Widest => Measured.Select(b => b.Width).Append(DesignWidth).Max();
}
