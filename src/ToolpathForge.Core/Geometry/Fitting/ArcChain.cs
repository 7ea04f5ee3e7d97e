namespace ToolpathForge.Geometry;

/// <summary>Lines and arcs that stand for one exact curve, in its direction.</summary>
/// <param name="Segments">In order, each beginning where the one before ends; none shorter than <see cref="Accuracy.SamePoint"/>.</param>
/// <param name="Bound">Largest distance between chain and curve, both ways, mm.</param>
internal sealed record ArcChain(IReadOnlyList<Segment> Segments, double Bound)
{
    /// <summary>The chain of a curve that lines and arcs give exactly.</summary>
    public static ArcChain Exact(params IReadOnlyList<Segment> segments) => new(segments, 0);

    /// <summary>The same chain walked the other way.</summary>
    public ArcChain Reversed() => new([.. Segments.Reverse().Select(s => s.Reversed)], Bound);
}
