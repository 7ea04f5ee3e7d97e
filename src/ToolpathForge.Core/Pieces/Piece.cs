using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>A line that is drawn or marked on a piece without being cut through.</summary>
/// <param name="From">Where it begins, piece frame.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Label">What it is, in the words of the shop.</param>
public sealed record GuideLine(Point2 From, Point2 To, string Label);

/// <summary>A mark engraved into a piece: the way of the bit's tip, all at one depth.</summary>
/// <param name="Name">What it is, in the words of the shop.</param>
/// <param name="Strokes">Lines and arcs, piece frame.</param>
public sealed record EngravedMark(string Name, ImmutableArray<Contour> Strokes);

/// <summary>
/// A thing to cut, in the piece frame: X along the board from its tip inwards, Y from the reference edge, Z up from the upper face.
/// Its outline is closed and has the material on its left. What is cut is every edge whose role is not <see cref="EdgeRole.Existing"/>.
/// </summary>
/// <param name="Exact">The closed outline as exact curves.</param>
/// <param name="Roles">One role a curve of the outline.</param>
/// <param name="Thickness">mm.</param>
/// <param name="Guides">Lines to draw on it.</param>
public abstract record Piece(Outline Exact, ImmutableArray<EdgeRole> Roles, double Thickness, ImmutableArray<GuideLine> Guides)
{
    /// <summary>The make it comes from.</summary>
    public abstract Make Make { get; }

    /// <summary>Holes and slots through it.</summary>
    public ImmutableArray<Opening> Openings => Make.Openings;

    /// <summary>What is engraved into its upper face; empty for nothing.</summary>
    public ImmutableArray<EngravedMark> Marks { get; init; } = [];

    /// <summary>Length of the edges that are cut, mm.</summary>
    public double CutLength => Exact.Curves.Zip(Roles).Where(e => e.Second != EdgeRole.Existing).Sum(e => e.First.Length);

    /// <summary>Whether every edge is cut, so that the piece comes free.</summary>
    public bool IsCutAllRound => !Roles.Contains(EdgeRole.Existing);
}

/// <summary>A piece that carries the profile of a board's end: the end itself, or a pattern of it.</summary>
/// <param name="Make">The make it comes from.</param>
/// <param name="Profile">The profile it carries.</param>
/// <param name="Exact">See <see cref="Piece"/>.</param>
/// <param name="Roles">See <see cref="Piece"/>.</param>
/// <param name="Thickness">mm.</param>
/// <param name="Guides">See <see cref="Piece"/>.</param>
public sealed record ProfilePiece(
    ProfileMake Make, Profile Profile, Outline Exact, ImmutableArray<EdgeRole> Roles, double Thickness, ImmutableArray<GuideLine> Guides)
    : Piece(Exact, Roles, Thickness, Guides)
{
    /// <inheritdoc/>
    public override ProfileMake Make { get; } = Make;

    /// <summary>Whether it is a pattern for left-hand ends: but for its profile, all of it is then mirrored in X, from the tip inwards negative (<see cref="LeftHand"/>).</summary>
    public bool IsLeftHand => Make is PatternMake { Fittings.Hands: PlateHands.Left };

    /// <summary>Strips that are screwed under a pattern; empty for none.</summary>
    public ImmutableArray<PlateStrip> Strips { get; init; } = [];

    /// <summary>Where brads go through a pattern into the board, piece frame; empty for none.</summary>
    public ImmutableArray<Point2> Brads { get; init; } = [];
}

/// <summary>A piece that is just its outline, cut all round.</summary>
/// <param name="Make">The make it comes from.</param>
/// <param name="Exact">See <see cref="Piece"/>.</param>
/// <param name="Thickness">mm.</param>
public sealed record PlainPiece(Make Make, Outline Exact, double Thickness)
    : Piece(Exact, [.. Enumerable.Repeat(EdgeRole.Free, Exact.Curves.Length)], Thickness, [])
{
    /// <inheritdoc/>
    public override Make Make { get; } = Make;
}
