using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Service.Files;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>Jobs with outlines that are drawn in the test.</summary>
internal static class OutlineJobs
{
    internal const string Usual = "stock = { panel = 'hardboard-1/4', thickness = 5.6 }\nbit = 'downcut-1/4'\ncut = { tabs = 4, tab-form = 'square', tab-length = 6 }\n";

    /// <summary>Reads a job with one outline make whose drawing came with it as <c>@part</c>.</summary>
    internal static JobReading Read(string keys, params Contour[] drawn) => Read(keys, "brace.toml", drawn);

    internal static JobReading Read(string keys, string file, Contour[] drawn)
    {
        string dxf = DxfWriter.Write([new DxfLayer("outline", LineRole.FinishedEdge, [], [.. drawn])]);
        ReadDrawing drawing = DrawingReader.ReadStrict(System.Text.Encoding.UTF8.GetBytes(dxf), "part.dxf", cancel: CancellationToken.None);
        Loaded loaded = JobFile.Read(
            "format = 1\nname = 'Test'\nunit = 'mm'\ntolerance = '0.1 mm'\nmachine = 'desktop-400'\ndialect = 'metric-centre'\n[[make]]\nid = 'part'\nkind = 'outline'\n" + keys,
            file,
            null,
            new Dictionary<string, ReadDrawing>(StringComparer.Ordinal) { ["part"] = drawing },
            CancellationToken.None);
        return new JobReading(loaded.Job, loaded.Findings);
    }
}
