using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>The drawing of a shelf brace under samples/boathouse: a hollow of 160 mm, a thumb notch, two screw holes, a slot and a rounded cut-out, and a cap beside it.</summary>
internal static class BraceDrawing
{
    internal const double Hollow = 160;

    internal static Contour Brace { get; } = new(
        [
            new(0, 0, 0), new(220, 0, 0), new(220, 36, 0),

            // A quarter turn to the right, a bulge of -tan(90°/4).
            new(196, 36, -Math.Tan(Math.PI / 8)), new(36, 196, 0), new(36, 220, 0), new(0, 220, 0),

            // Half a turn to the right: into the material.
            new(0, 110, -1), new(0, 86, 0),
        ],
        true);

    internal static Contour Slot { get; } = new([new(110, 13.5, 0), new(150, 13.5, 1), new(150, 22.5, 0), new(110, 22.5, 1)], true);

    internal static Contour[] Screws { get; } = [Contour.Circle(new Point2(18, 200), 4), Contour.Circle(new Point2(200, 18), 4)];

    /// <summary>A triangle with corners of 6 mm.</summary>
    internal static Contour CutOut { get; } = Rounded([new(14, 14), new(86, 14), new(14, 74)], 6);

    /// <summary>A cap of 84 mm with round corners.</summary>
    internal static Contour Cap { get; } = Rounded([new(250, 10), new(334, 10), new(334, 94), new(250, 94)], 20);

    internal static string Dxf { get; } = DxfWriter.Write(
    [
        new DxfLayer("outline", LineRole.FinishedEdge, [], [Brace, Cap]),
        new DxfLayer("holes", LineRole.Edge, [], [Slot, .. Screws, CutOut, Contour.Circle(new Point2(292, 52), 6)]),
    ]);

    internal static Contour Rounded(Point2[] corners, double radius)
    {
        var vertices = new List<Vertex>();
        for (int i = 0; i < corners.Length; i++)
        {
            Point2 corner = corners[i];
            Point2 before = (corner - corners[(i + corners.Length - 1) % corners.Length]).Unit();
            Point2 after = (corners[(i + 1) % corners.Length] - corner).Unit();
            double turn = Math.Atan2(before.Cross(after), before.Dot(after));
            double cut = radius * Math.Tan(turn / 2);
            vertices.Add(new Vertex(corner - (before * cut), Math.Tan(turn / 4)));
            vertices.Add(new Vertex(corner + (after * cut), 0));
        }

        return new Contour([.. vertices], true);
    }
}
