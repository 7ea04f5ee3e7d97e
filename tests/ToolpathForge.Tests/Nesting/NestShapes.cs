using ToolpathForge.Geometry;
using ToolpathForge.Nesting;

namespace ToolpathForge.Tests.Nesting;

/// <summary>Pieces to nest: plates with a hollow or a round at one end as patterns have, brackets, frames with a large opening.</summary>
internal static class NestShapes
{
    /// <summary>A plate whose end is a hollow quarter round (bulge negative) or a belly, lower left corner at the origin.</summary>
    internal static Region Plate(double length, double width, double radius, bool hollow)
    {
        double bulge = Math.Tan(Math.PI / 8) * (hollow ? -1 : 1);
        return Region.Of(new Contour(
            [
                new Vertex(0, 0, 0), new Vertex(length - radius, 0, bulge), new Vertex(length, radius, 0), new Vertex(length, width, 0), new Vertex(0, width, 0),
            ],
            true));
    }

    /// <summary>A corner bracket: two square edges and a hollow between their ends.</summary>
    internal static Region Bracket(double leg, double foot) => Region.Of(new Contour(
        [
            new Vertex(0, 0, 0), new Vertex(leg, 0, 0), new Vertex(leg, foot, -Math.Tan(Math.PI / 8)), new Vertex(foot, leg, 0), new Vertex(0, leg, 0),
        ],
        true));

    /// <summary>A square frame with a round opening.</summary>
    internal static Region Frame(double side, double radius) => Region.Of(
        Contour.Polygon(new Point2(0, 0), new Point2(side, 0), new Point2(side, side), new Point2(0, side)),
        Contour.Circle(new Point2(side / 2, side / 2), radius));

    /// <summary>The sample: 60 pieces of the boathouse porch in miniature, brackets and patterns in five widths.</summary>
    internal static NestRequest Sixty() => new(
        [
            new NestPart(Bracket(260, 60), 20),
            new NestPart(Bracket(180, 45), 16),
            new NestPart(Plate(290, 180, 150, true), 8),
            new NestPart(Plate(220, 140, 110, false), 8),
            new NestPart(Plate(160, 90, 75, true), 8),
        ],
        new Box2(12, 12, 1208, 2428),
        14,
        [0, Math.PI / 2, Math.PI, -Math.PI / 2],
        []);
}
