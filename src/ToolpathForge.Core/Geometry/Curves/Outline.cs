using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>A chain of exact curves, each beginning where the one before ends. It lives beside the fitted <see cref="Contour"/>.</summary>
/// <param name="Curves">At least one, in order.</param>
/// <param name="IsClosed">Whether the last ends where the first begins.</param>
public sealed record Outline(ImmutableArray<Curve> Curves, bool IsClosed)
{
    /// <summary>The outline carried into another frame.</summary>
    /// <param name="placement">Where it goes.</param>
    public Outline Placed(Placement placement) => new([.. Curves.Select(c => c.Placed(placement))], IsClosed);

    /// <summary>The same outline walked the other way.</summary>
    public Outline Reversed() => new([.. Curves.Reverse().Select(c => c.Reversed())], IsClosed);
}
