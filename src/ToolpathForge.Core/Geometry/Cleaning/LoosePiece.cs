using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>
/// One piece of a drawing as it was read: lines and arcs in a row, not yet trusted. Nothing is refused here; <see cref="ContourCleaner"/> tells what cannot be used.
/// </summary>
/// <param name="Vertices">The vertices in order, mm. Unlike those of a <see cref="Contour"/> they may have bulges beyond ±1 (arcs of more than half a turn).</param>
/// <param name="IsClosed">Whether the last vertex joins the first.</param>
/// <param name="Source">Where it came from, in whatever count the caller keeps (the number of an entity in a drawing, say). It is handed back in repairs and contours.</param>
public readonly record struct LoosePiece(ImmutableArray<Vertex> Vertices, bool IsClosed, int Source)
{
    /// <summary>A contour as a piece.</summary>
    /// <param name="contour">Open or closed.</param>
    /// <param name="source">Where it came from.</param>
    public static LoosePiece Of(Contour contour, int source) => new([.. contour.Vertices], contour.IsClosed, source);

    /// <summary>A single line or arc as a piece.</summary>
    /// <param name="segment">The line or arc.</param>
    /// <param name="source">Where it came from.</param>
    public static LoosePiece Of(Segment segment, int source) => new([new Vertex(segment.Start, segment.Bulge), new Vertex(segment.End)], false, source);
}

/// <summary>How loose pieces are made into outlines.</summary>
public sealed record CleaningOptions
{
    /// <summary>
    /// What is closed without being asked for, mm. A drawing written to two decimals of a millimetre leaves two ends that were one at most 0.0141 apart, one written to three
    /// 0.0014; a hundredth lies between, and is less than a hand with a router can hold or a rule can show.
    /// </summary>
    public const double UsualGap = 0.01;

    /// <summary>The widest gap that may be asked for, mm: beyond it, closing is drawing.</summary>
    public const double WidestGap = 10;

    /// <summary>The options that hold when nothing is said.</summary>
    public static CleaningOptions Usual { get; } = new();

    /// <summary>
    /// Ends no farther apart than this are joined, mm, 0 to <see cref="WidestGap"/>; what lies outside is taken as the nearer bound and told. Up to <see cref="UsualGap"/> both
    /// ends move to their middle, and arcs stay arcs of the same turn; wider gaps are closed by a short line, and nothing moves.
    /// </summary>
    public double Gap { get; init; } = UsualGap;
}
