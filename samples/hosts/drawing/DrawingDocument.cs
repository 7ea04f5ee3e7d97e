using System.Collections.Immutable;
using System.Text;
using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.DrawingHost;

/// <summary>A drawing held in memory, mm: what was read from a file, and beside it what the plugin drew.</summary>
internal sealed class DrawingDocument
{
    private const string FindingLayer = "findings";
    private const double Cross = 2;

    /// <summary>What the person drew.</summary>
    internal List<WireEntity> Own { get; } = [];

    /// <summary>What the person selected of it.</summary>
    internal List<WireEntity> Selected { get; } = [];

    /// <summary>What the plugin drew.</summary>
    internal List<WireEntity> Preview { get; } = [];

    /// <summary>What the plugin marked.</summary>
    internal List<(double X, double Y, string Text)> Marks { get; } = [];

    /// <summary>Reads a DXF or SVG file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="layer">The one layer to select; null for all.</param>
    /// <param name="complaint">Why there is none; null when there is.</param>
    internal static DrawingDocument? Read(string path, string? layer, out string? complaint)
    {
        byte[] bytes;
        try
        {
            bytes = File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            complaint = $"'{path}' can't be read: {e.Message}";
            return null;
        }

        ReadDrawing drawing = DrawingReader.ReadRepairing(bytes, path);
        complaint = !drawing.IsUsable ? $"'{path}' can't be used ({string.Join(", ", drawing.Findings.Select(f => f.Kind.Code))}); toolpathforge trace says more."
            : drawing.Unit is null ? $"'{path}' states no unit; state one in the file."
            : null;
        if (complaint is not null)
        {
            return null;
        }

        var document = new DrawingDocument();
        foreach (DrawnEntity drawn in drawing.Entities)
        {
            WireEntity[] entities = [.. WireCurves.Of(drawn)];
            document.Own.AddRange(entities);
            document.Selected.AddRange(entities.Where(e => layer is null || e.Layer == layer));
        }

        return document;
    }

    /// <summary>
    /// The text of a DXF with everything in it, a layer as it is named; splines as polylines of short chords, marks as crosses on the layer <c>findings</c>. Characters that names of layers
    /// may not have are written as underscores.
    /// </summary>
    internal string Dxf()
    {
        IEnumerable<WireEntity> crosses = Marks.SelectMany(m => (WireEntity[])
        [
            new() { Kind = "line", Layer = FindingLayer, From = [m.X - Cross, m.Y - Cross], To = [m.X + Cross, m.Y + Cross] },
            new() { Kind = "line", Layer = FindingLayer, From = [m.X - Cross, m.Y + Cross], To = [m.X + Cross, m.Y - Cross] },
        ]);
        var layers = ImmutableArray.CreateBuilder<DxfLayer>();
        foreach (IGrouping<string, WireEntity> on in Own.Concat(Preview).Concat(crosses).GroupBy(e => Name(e.Layer), StringComparer.OrdinalIgnoreCase))
        {
            (Outline? Exact, Contour? Contour)[] written = [.. on.Select(WireCurves.Back)];
            layers.Add(new DxfLayer(on.Key, Role(on.Key), [.. written.Select(w => w.Exact).OfType<Outline>()], [.. written.Select(w => w.Contour).OfType<Contour>()]));
        }

        return DxfWriter.Write(layers.ToImmutable());
    }

    private static string Name(string? layer)
    {
        var name = new StringBuilder();
        foreach (char c in (layer ?? "").Trim())
        {
            name.Append(DxfLayer.IsName("x" + c + "x") ? c : '_');
        }

        return name.Length is > 0 and <= 255 && name.ToString() is not "0" ? name.ToString() : "drawing";
    }

    private static LineRole Role(string layer) =>
        layer.EndsWith("-travel", StringComparison.Ordinal) ? LineRole.RapidPath
        : layer.EndsWith("-ramp", StringComparison.Ordinal) ? LineRole.RampPath
        : layer.EndsWith("-engrave", StringComparison.Ordinal) ? LineRole.Engraving
        : layer.StartsWith("toolpath-", StringComparison.Ordinal) ? LineRole.CutPath
        : layer == FindingLayer ? LineRole.KeepOut
        : LineRole.Edge;
}
