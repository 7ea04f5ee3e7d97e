using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Geometry;

/// <summary>What was put right about loose pieces.</summary>
public enum RepairKind
{
    /// <summary>A piece or segment of no length was left out. Size: its length.</summary>
    ZeroLengthDropped,

    /// <summary>A piece that lies on others was left out. Size: its length.</summary>
    DoubledDropped,

    /// <summary>Two ends were moved together. Size: how far apart they were; each moved by half of it, or in a junction of more ends by no more than all of it.</summary>
    EndsMoved,

    /// <summary>Two ends were joined by a short line. Size: its length.</summary>
    GapBridged,

    /// <summary>At a point where three or more ends meet it was decided which go on into which. Size: the largest turn among the pairs, radians.</summary>
    JunctionDecided,
}

/// <summary>One thing that was put right.</summary>
/// <param name="Kind">What was done.</param>
/// <param name="At">Where, mm.</param>
/// <param name="Size">How large, in the measure that the kind names.</param>
/// <param name="Sources">The pieces it concerns, by <see cref="LoosePiece.Source"/>, ascending, each once.</param>
public readonly record struct Repair(RepairKind Kind, Point2 At, double Size, ImmutableArray<int> Sources);

/// <summary>One contour made of loose pieces.</summary>
/// <param name="Contour">
/// The contour. It begins at its lowest leftmost vertex (the smallest X, then Y). A closed one runs counter-clockwise where it bounds material from
/// without and clockwise where it is a hole; an open one begins at the end that comes first in the same order.
/// </param>
/// <param name="Sources">The pieces it is made of, by <see cref="LoosePiece.Source"/>, ascending, each once.</param>
/// <param name="Depth">How many sound closed contours it lies in: even for outer loops, odd for holes. 0 for open and unsound ones.</param>
/// <param name="Parent">Index, in <see cref="CleanOutlines.Closed"/>, of the innermost contour it lies in; -1 when there is none.</param>
/// <param name="IsSound">False when it crosses itself or another contour; it is then part of no region. Touching in a point is sound.</param>
public sealed record CleanContour(Contour Contour, ImmutableArray<int> Sources, int Depth, int Parent, bool IsSound);

/// <summary>What <see cref="ContourCleaner"/> makes of loose pieces. The same pieces in another order or direction give the same result.</summary>
/// <param name="Regions">One for each sound outer loop, with the holes directly in it, in the order of the outer loops in <paramref name="Closed"/>.</param>
/// <param name="Closed">The closed contours, in the order of their first vertices (X, then Y).</param>
/// <param name="Open">The open contours, in the same order.</param>
/// <param name="Repairs">Everything that was put right, by kind, then by place.</param>
/// <param name="Findings">Everything that the person should know: what could not be used, crossings, open ends, and a line on each kind of repair.</param>
public sealed record CleanOutlines(
    ImmutableArray<Region> Regions,
    ImmutableArray<CleanContour> Closed,
    ImmutableArray<CleanContour> Open,
    ImmutableArray<Repair> Repairs,
    ImmutableArray<Finding> Findings);
