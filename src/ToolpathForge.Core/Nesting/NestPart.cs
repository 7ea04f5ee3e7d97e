using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Nesting;

/// <summary>A kind of piece to lay on panels.</summary>
/// <param name="Shape">Its outline and its openings, lines and arcs, in any frame, mm; not empty.</param>
/// <param name="Count">How many, at least 1.</param>
public sealed record NestPart(Region Shape, int Count);

/// <summary>Something on the panel that pieces keep away from: a clamp, a knot, a corner that is missing.</summary>
/// <param name="Shape">Its extent in the panel's frame, mm.</param>
/// <param name="Gap">How far every piece stays away from it, mm; at least 0.</param>
public sealed record NestObstacle(Region Shape, double Gap);

/// <summary>What is asked of a nest.</summary>
/// <param name="Parts">The kinds of piece; at least one.</param>
/// <param name="Room">Where pieces may lie on each panel, its margins already taken off, mm.</param>
/// <param name="Gap">Room between any two pieces, mm; at least 0.</param>
/// <param name="Turns">The angles that a piece may be turned by, radians counter-clockwise; at least one.</param>
/// <param name="Obstacles">What lies on every panel.</param>
public sealed record NestRequest(
    ImmutableArray<NestPart> Parts, Box2 Room, double Gap, ImmutableArray<double> Turns, ImmutableArray<NestObstacle> Obstacles)
{
    /// <summary>How many changes of the best order are tried at most; fewer are when the work of trying comes to its limit.</summary>
    public int Changes { get; init; } = 400;
}

/// <summary>A piece where it lies.</summary>
/// <param name="Part">Index into <see cref="NestRequest.Parts"/>.</param>
/// <param name="Placement">From the part's own frame to the panel's; never mirrored.</param>
/// <param name="Shape">The piece there.</param>
public sealed record NestedPiece(int Part, Placement Placement, Region Shape);

/// <summary>One panel and what lies on it, in the order of height, then from the left.</summary>
/// <param name="Pieces">At least one.</param>
public sealed record NestedPanel(ImmutableArray<NestedPiece> Pieces)
{
    /// <summary>The smallest box round all pieces.</summary>
    public Box2 Box => Pieces.Aggregate(Box2.Empty, (box, piece) => box.Union(piece.Shape.Box));
}

/// <summary>What came of a request.</summary>
/// <param name="Panels">The panels, the first filled first.</param>
/// <param name="Left">Kinds of which not one more fits on an empty panel; ascending, empty when all is laid.</param>
public sealed record NestResult(ImmutableArray<NestedPanel> Panels, ImmutableArray<int> Left)
{
    /// <summary>
    /// Share of the used panel that is piece: the area of all pieces over that of the room of every panel but the last, and of the last as far
    /// up as it is used; 0 to 1.
    /// </summary>
    /// <param name="room">The room of the request.</param>
    public double UsedShare(Box2 room)
    {
        double used = 0;
        for (int i = 0; i < Panels.Length; i++)
        {
            used += room.Width * (i + 1 < Panels.Length ? room.Height : Panels[i].Box.MaxY - room.MinY);
        }

        return used > 0 ? Panels.Sum(p => p.Pieces.Sum(q => q.Shape.Area)) / used : 0;
    }
}
