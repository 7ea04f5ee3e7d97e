using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>The drawing of an open bracket and a cleat under samples/boathouse, and frames for tests.</summary>
internal static class FrameDrawing
{
    internal static Contour Bracket { get; } = new([new(0, 0, 0), new(340, 0, 0), new(340, 44, 0), new(44, 340, 0), new(0, 340, 0)], true);

    /// <summary>A triangle with corners of 8 mm.</summary>
    internal static Contour Opening { get; } = BraceDrawing.Rounded([new(36, 36), new(250, 36), new(36, 250)], 8);

    internal static Contour[] Screws { get; } = [Contour.Circle(new Point2(20, 322), 4), Contour.Circle(new Point2(322, 20), 4)];

    internal static Contour Cleat { get; } = Square(360, 0, 100, 30, 8);

    internal static string Dxf { get; } = DxfWriter.Write(
    [
        new DxfLayer("bracket", LineRole.FinishedEdge, [], [Bracket, Opening, .. Screws]),
        new DxfLayer("cleat", LineRole.FinishedEdge, [], [Cleat]),
    ]);

    /// <summary>A rectangle with round corners.</summary>
    internal static Contour Square(double x, double y, double width, double height, double radius) =>
        BraceDrawing.Rounded([new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height)], radius);
}
