using System.Text;
using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Service.Files;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>The drawing of a rafter tail under samples/boathouse: a shoulder, a hollow and a round of two ellipses, and the edges of the board it was sketched on.</summary>
internal static class TailDrawing
{
    /// <summary>110 mm along the board and 80 mm up it.</summary>
    internal static Outline Line { get; } = new(
        [
            new LineCurve(new(0, 0), new(0, 14)),
            new EllipseCurve(new(60, 14), new(-60, 0), new(0, 40), 0, Math.PI / 2),
            new EllipseCurve(new(60, 80), new(0, -26), new(50, 0), 0, Math.PI / 2),
        ],
        false);

    internal static string Dxf { get; } = DxfWriter.Write(
    [
        new DxfLayer("tail", LineRole.FinishedEdge, [Line], []),
        new DxfLayer("board", LineRole.Edge, [], [Contour.Polyline(new(-120, 0), new(125, 0), new(125, 139.7), new(-120, 139.7))]),
    ]);

    internal static ReadDrawing Read(params Contour[] drawn) => Read(DxfWriter.Write([new DxfLayer("tail", LineRole.FinishedEdge, [], [.. drawn])]), "tail.dxf");

    internal static ReadDrawing Read(string text, string name) => DrawingReader.ReadRepairing(Encoding.UTF8.GetBytes(text), name, cancel: CancellationToken.None);

    /// <summary>Reads a job with one pattern whose shape is a drawing that came with it as <c>@tail</c>, or lies in a folder.</summary>
    internal static JobReading Job(string answers, ReadDrawing? drawing, string? folder = null, string board = "2x6")
    {
        Loaded loaded = JobFile.Read(
            Shapes.ShapeJobs.Text("kind = 'drawing', " + answers, board),
            "tail.toml",
            folder,
            drawing is null ? null : new Dictionary<string, ReadDrawing>(StringComparer.Ordinal) { ["tail"] = drawing },
            CancellationToken.None);
        return new JobReading(loaded.Job, loaded.Findings);
    }
}
