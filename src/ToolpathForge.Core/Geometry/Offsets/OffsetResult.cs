using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Geometry;

/// <summary>What an offset does at a corner that opens away from it.</summary>
public enum JoinStyle
{
    /// <summary>An arc about the corner: every point of the result is at the distance exactly.</summary>
    Round,

    /// <summary>
    /// The parallels are drawn on until they meet, as long as they do so within <see cref="Offsetter.SharpLimit"/> distances of the corner
    /// (inside angle of 60° or more); a sharper corner is rounded, so that no spike runs away. The region is that of <see cref="Round"/> united with the kite
    /// of vertex, foot, apex and foot at every such corner.
    /// </summary>
    Sharp,
}

/// <summary>How the two sides of an open contour's offset are closed at its ends.</summary>
public enum EndStyle
{
    /// <summary>
    /// Straight across, at the end itself: what surrounds the end piece stops at the line across its end; what surrounds any other piece or vertex stays,
    /// even where it reaches beyond that line.
    /// </summary>
    Flat,

    /// <summary>Half a circle about the end.</summary>
    Round,
}

/// <summary>Which piece of the input a segment of a result is parallel to.</summary>
/// <param name="Contour">Index of the contour, in the order of <see cref="Region.Loops"/>; 0 for a single contour.</param>
/// <param name="Segment">Index of the segment of the contour as it was given.</param>
/// <param name="IsJoin">
/// True for a piece that goes round a vertex (an arc, or an edge of a sharp corner or of a flat end); <see cref="Segment"/> is then the segment that ends at
/// that vertex, or the first segment at the start of an open contour.
/// </param>
public readonly record struct SegmentOrigin(int Contour, int Segment, bool IsJoin);

/// <summary>One contour of an offset.</summary>
/// <param name="Contour">The contour. Closed loops keep the material (the grown or shrunk region) on their left.</param>
/// <param name="Origins">One for each segment of <see cref="Contour"/>.</param>
public sealed record OffsetLoop(Contour Contour, ImmutableArray<SegmentOrigin> Origins);

/// <summary>What may become of a contour when it is offset, other than one contour turning into one.</summary>
public enum LoopFate
{
    /// <summary>One contour of the input gave several of the result.</summary>
    Split,

    /// <summary>Several contours of the input run together in one of the result.</summary>
    Merged,

    /// <summary>A contour of the input left nothing in the result.</summary>
    Vanished,
}

/// <summary>An entry of the account that an offset gives of its loops.</summary>
/// <param name="Fate">What happened.</param>
/// <param name="Contours">The contours of the input concerned, ascending.</param>
/// <param name="Loops">The loops of the result concerned, ascending; empty when vanished.</param>
/// <param name="Where">
/// A point of the event: a corner of the result where pieces from different contours (merged) or from parts of one contour that are not neighbours (split)
/// meet; the middle of the contour's box when it vanished.
/// </param>
public sealed record LoopEvent(LoopFate Fate, ImmutableArray<int> Contours, ImmutableArray<int> Loops, Point2 Where);

/// <summary>The result of an offset, and the account of every loop.</summary>
/// <param name="Loops">The contours, in the order of the first piece of input they belong to; each starts with that piece.</param>
/// <param name="Events">The loops that merged, split or vanished. A loop that is not named here became one loop.</param>
/// <param name="Unproven">
/// Null when the result passed its check. Otherwise the finding <see cref="GeometryFindings.OffsetUnproven"/> with a reproducer, and <see cref="Loops"/> is empty:
/// a guess is never handed out.
/// </param>
public sealed record OffsetResult(ImmutableArray<OffsetLoop> Loops, ImmutableArray<LoopEvent> Events, Finding? Unproven)
{
    /// <summary>The closed loops as a region; open contours have no part in it.</summary>
    public Region ToRegion()
    {
        var closed = ImmutableArray.CreateBuilder<Contour>(Loops.Length);
        foreach (OffsetLoop loop in Loops)
        {
            if (loop.Contour.IsClosed)
            {
                closed.Add(loop.Contour);
            }
        }

        return Region.Oriented(closed.DrainToImmutable());
    }
}
