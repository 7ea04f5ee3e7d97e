using ToolpathForge.Catalogue;
using ToolpathForge.Geometry;

namespace ToolpathForge.Jobs;

/// <summary>
/// A piece cut from a panel by the outline of a drawing, its holes with it. The piece frame is the drawing's own, scaled, mirrored and turned as the job asks and
/// then turned half round, so that on the machine it lies as it was drawn.
/// </summary>
/// <param name="Id">See <see cref="Make"/>; where a drawing holds several outlines, the block's id with a number.</param>
/// <param name="Count">See <see cref="Make"/>.</param>
/// <param name="Drawing">The drawing as the job names it.</param>
/// <param name="Material">The panel's material.</param>
/// <param name="Thickness">Measured thickness of the panel, mm.</param>
/// <param name="Edge">The outer outline, counter-clockwise, piece frame.</param>
/// <param name="Bit">See <see cref="Make"/>.</param>
/// <param name="Cut">See <see cref="Make"/>.</param>
/// <param name="At">See <see cref="Make"/>.</param>
public sealed record OutlineMake(
    string Id, int Count, string Drawing, Material Material, double Thickness, Outline Edge, Bit Bit, CutChoices Cut, Places At)
    : Make(Id, Count, Material, Thickness, Bit, Cut, At)
{
    /// <summary>The id of the block that it comes from: outlines of one block share panels.</summary>
    public required string Block { get; init; }

    /// <summary>From the drawing, scaled, to the piece frame.</summary>
    public required Placement Laid { get; init; }

    /// <summary>How many times as large as drawn it is cut.</summary>
    public required double Scale { get; init; }

    /// <summary>Whether the waste of openings that are large enough is held whole, so that smaller pieces of a shared blank may lie in it.</summary>
    public bool HoldsWaste { get; init; }

    /// <summary>Where a point of the piece lies in the drawing, mm.</summary>
    /// <param name="point">Piece frame.</param>
    public Point2 InDrawing(Point2 point) => Laid.Inverse().Apply(point) / Scale;
}
