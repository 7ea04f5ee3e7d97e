using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>A bridge left standing between a piece and its waste, on a straight unfinished edge.</summary>
/// <param name="Center">Middle of the tab on the finished edge, on the bed.</param>
/// <param name="Along">Unit direction of the edge there.</param>
/// <param name="Length">Length at its top, mm.</param>
/// <param name="Reach">From its middle to where the bit is back at full depth, along the edge, mm.</param>
/// <param name="Top">Height of its upper face in the program's Z, mm.</param>
/// <param name="Flat">From its middle to where the bit begins to sink, along the edge, mm: half the tab and the bit's radius. The reach of a square tab.</param>
public sealed record Tab(Point2 Center, Point2 Along, double Length, double Reach, double Top, double Flat)
{
    /// <summary>The name of the opening whose waste it holds; null for one that holds a piece.</summary>
    public string? Opening { get; init; }
}
