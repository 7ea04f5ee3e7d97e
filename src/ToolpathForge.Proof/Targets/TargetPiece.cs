using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>
/// One piece that the program is to make: an exact region between two heights. What the bit takes of it is a gouge; what is left standing along
/// an edge that must be cut is left-over.
/// </summary>
public sealed record TargetPiece
{
    /// <summary>What faults call it; need not be unique, though it helps.</summary>
    public required string Name { get; init; }

    /// <summary>
    /// The region's closed loops, each a chain of edges end to end with the material on the left: outlines counter-clockwise, holes clockwise. They do not cross.
    /// Ends have to meet within <see cref="ProofAccuracy.LoopGap"/>.
    /// </summary>
    public required ImmutableArray<ImmutableArray<TargetEdge>> Loops { get; init; }

    /// <summary>Height of the lower end of the cut, mm: the underside, or the top of a skin that stays (see <see cref="Target.Floors"/>).</summary>
    public required double Bottom { get; init; }

    /// <summary>Height of the piece's upper face, mm. A bit whose tip stays above it does the piece no harm.</summary>
    public required double Top { get; init; }

    /// <summary>Bridges that hold the piece.</summary>
    public ImmutableArray<TargetTab> Tabs { get; init; } = [];

    /// <summary>Stretches where material may stay, besides those of the tabs.</summary>
    public ImmutableArray<TargetAllowance> Allowances { get; init; } = [];

    /// <summary>Marks engraved into the upper face.</summary>
    public ImmutableArray<TargetMark> Marks { get; init; } = [];
}

/// <summary>
/// A bridge of waste that holds a piece along one of its straight edges. Its <em>core</em> has to stand untouched over the bit's whole width;
/// between its outer limits material may stay below the top (the ramps of a tab), never above it.
/// </summary>
/// <param name="Loop">Index into the piece's loops.</param>
/// <param name="Edge">Index into the loop; a <see cref="LineEdge"/>.</param>
/// <param name="CoreFrom">Start of the core, mm from the edge's start.</param>
/// <param name="CoreTo">End of the core, mm from the edge's start.</param>
/// <param name="OuterFrom">From where left-over is allowed, mm from the edge's start; not after the core's start.</param>
/// <param name="OuterTo">Up to where left-over is allowed, mm from the edge's start; not before the core's end.</param>
/// <param name="Top">Height of the tab's upper face, mm, between the piece's bottom and top.</param>
public sealed record TargetTab(int Loop, int Edge, double CoreFrom, double CoreTo, double OuterFrom, double OuterTo, double Top);

/// <summary>A stretch of an edge where material may stay below a height: an inner corner that no bit reaches, a part left for the saw.</summary>
/// <param name="Loop">Index into the piece's loops.</param>
/// <param name="Edge">Index into the loop.</param>
/// <param name="FromShare">Where it begins, as a share of the edge.</param>
/// <param name="ToShare">Where it ends, as a share of the edge.</param>
/// <param name="Below">Height up to which material may stay, mm; the piece's top for all of it.</param>
public sealed record TargetAllowance(int Loop, int Edge, double FromShare, double ToShare, double Below);

/// <summary>
/// A mark cut into a piece on purpose: the tip follows these strokes at a depth. A motion of the bit inside the piece is no gouge if it stays on the
/// strokes within the tolerance, no deeper than meant and no wider; and every stroke has to be cut.
/// </summary>
public sealed record TargetMark
{
    /// <summary>What faults call it.</summary>
    public required string Name { get; init; }

    /// <summary>The strokes' centre lines: open chains or single edges in any order. <see cref="TargetEdge.MustBeCut"/> says whether the stroke is required.</summary>
    public required ImmutableArray<TargetEdge> Strokes { get; init; }

    /// <summary>Height of the tip along the strokes, mm.</summary>
    public required double Depth { get; init; }

    /// <summary>Half the widest groove allowed at the piece's upper face, mm.</summary>
    public required double HalfWidth { get; init; }
}
