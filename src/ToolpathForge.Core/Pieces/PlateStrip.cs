using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Pieces;

/// <summary>A strip of wood that is screwed under a pattern, its guiding edge against an edge of the board. Lengths in mm, piece frame.</summary>
/// <param name="Name">What it is, in the words of the shop.</param>
/// <param name="Corner">Where its guiding edge begins, at the end nearest the tip of the board.</param>
/// <param name="Along">The way of that edge, length 1.</param>
/// <param name="Across">From that edge away from the board, length 1.</param>
/// <param name="Length">Along the edge.</param>
/// <param name="Width">Across it.</param>
/// <param name="Thickness">How far it hangs below the plate.</param>
/// <param name="Screws">How far from its beginning the screws are, in the middle of its width.</param>
/// <param name="Pilot">Diameter of the holes to drill in it.</param>
public sealed record PlateStrip(
    string Name, Point2 Corner, Point2 Along, Point2 Across, double Length, double Width, double Thickness, ImmutableArray<double> Screws, double Pilot)
{
    /// <summary>Where the screws are.</summary>
    public IEnumerable<Point2> ScrewPlaces => Screws.Select(d => Corner + (Along * d) + (Across * (Width / 2)));

    /// <summary>Its outline as it lies, closed.</summary>
    public Contour Outline => Contour.Polygon(Corner, Corner + (Along * Length), Corner + (Along * Length) + (Across * Width), Corner + (Across * Width));
}
