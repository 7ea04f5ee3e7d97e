using ToolpathForge.Catalogue;
using ToolpathForge.Shapes;

namespace ToolpathForge.Jobs;

/// <summary>A board end: the profile cut straight into the end of a board.</summary>
/// <param name="Id">See <see cref="Make"/>.</param>
/// <param name="Count">See <see cref="Make"/>.</param>
/// <param name="Board">See <see cref="Make"/>.</param>
/// <param name="DesignWidth">See <see cref="Make"/>.</param>
/// <param name="Material">The timber.</param>
/// <param name="Thickness">Thickness of the board, mm: dressed, or measured if the job says so.</param>
/// <param name="Shape">See <see cref="Make"/>.</param>
/// <param name="Bit">See <see cref="Make"/>.</param>
/// <param name="Cut">See <see cref="Make"/>.</param>
/// <param name="BoardLength">Length of the board, mm.</param>
/// <param name="OnBed">How much of its length lies on the bed, from the tip, mm.</param>
/// <param name="GrainSlope">Slope of the fibres on the upper face, degrees: positive where they run towards the profile edge going in from the tip.</param>
/// <param name="EndAllowance">How far the raw end stands past the finished tip, mm.</param>
/// <param name="FenceRoom">How far past the reference edge the bit may cut into a sacrificial, metal-free fence, mm.</param>
/// <param name="At">See <see cref="Make"/>.</param>
public sealed record BoardEndMake(
    string Id,
    int Count,
    Lumber Board,
    double DesignWidth,
    Material Material,
    double Thickness,
    ShapeSpec Shape,
    Bit Bit,
    CutChoices Cut,
    double BoardLength,
    double OnBed,
    double GrainSlope,
    double EndAllowance,
    double FenceRoom,
    Places At)
    : ProfileMake(Id, Count, Board, DesignWidth, Material, Thickness, Shape, Bit, Cut, At)
{
    /// <summary>Whether a stand at bed height carries what hangs over the bed.</summary>
    public bool Stand { get; init; }

    /// <summary>Moisture of the boards, per cent: as the job says, or as their size of lumber is sold.</summary>
    public double Moisture { get; init; } = Board.Moisture;

    /// <summary>Density of the boards at their moisture, kg/m³.</summary>
    public double Density => Material.DensityAt(Moisture);

    /// <summary>The boards, and how they follow one another; without it one end each of as many boards as the count says.</summary>
    public BoardBatch Batch
    {
        get => field ?? new BoardBatch(
            [new MeasuredBoards("", Count, DesignWidth, Thickness, At["count"])], false, 1, null, BoardLength - EndAllowance, Waste.Loose, 0, false, 0, false, BoardLength);
        init;
    }
}
