using System.Collections.Immutable;
using System.Text;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Small SVG drawings written by hand, and the ways to read them.</summary>
internal static class SvgDrawn
{
    /// <summary>A picture of 100 x 100 mm whose coordinates are mm, Y down from its upper edge.</summary>
    internal static string File(string inner) => File(inner, "width=\"100mm\" height=\"100mm\" viewBox=\"0 0 100 100\"");

    internal static string File(string inner, string size) =>
        $"<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" {size}>\n{inner}\n</svg>";

    internal static ReadDrawing Strict(string text) => DrawingReader.ReadStrict(Encoding.UTF8.GetBytes(text), "drawing.svg", cancel: TestContext.Current.CancellationToken);

    internal static ReadDrawing Repairing(string text, DrawingUnit? unit = null, DrawingLimits? limits = null) => Repairing(Encoding.UTF8.GetBytes(text), unit, limits);

    internal static ReadDrawing Repairing(byte[] bytes, DrawingUnit? unit = null, DrawingLimits? limits = null) =>
        DrawingReader.ReadRepairing(bytes, "drawing.svg", unit, limits, TestContext.Current.CancellationToken);

    /// <summary>The curves of a sound drawing of one thing.</summary>
    internal static ImmutableArray<Curve> Curves(string inner)
    {
        ReadDrawing read = Strict(File(inner));
        Assert.True(read.IsUsable, Drawn.Codes([.. read.Findings, .. read.Repairs]));
        return Assert.Single(read.Entities).Path.Curves;
    }

    /// <summary>Back to the coordinates that the file has, for the picture of <see cref="File(string)"/>.</summary>
    internal static Point2 Down(Point2 p) => new(p.X, 100 - p.Y);

    internal static void Near(Point2 expected, Point2 found, double may = 1e-9) => Assert.True(expected.DistanceTo(found) <= may, $"{found}, not {expected}");
}
