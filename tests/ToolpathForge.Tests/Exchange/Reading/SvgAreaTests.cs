using System.Text.Json;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Tests.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Areas of whole SVG drawings against other people's geometry, and against our own drawings in another format.</summary>
public class SvgAreaTests
{
    [Fact]
    public void Areas_of_a_corpus_of_60_drawings_are_those_of_shapely()
    {
        using var folder = new Scratch();
        int seed = Random.Shared.Next();
        string request = $$"""{"folder": {{JsonSerializer.Serialize(folder.Root)}}, "seed": {{seed}}, "count": 60}""";
        JsonElement made = JsonDocument.Parse(OutsideTool.Python("svg_make.py", request, "shapely")).RootElement;
        double sagitta = made.GetProperty("sagitta").GetDouble() + DrawingPieces.Tolerance;
        Assert.Equal(60, made.GetProperty("drawings").GetArrayLength());
        foreach (JsonElement drawing in made.GetProperty("drawings").EnumerateArray())
        {
            string name = drawing.GetProperty("name").GetString()!;
            string about = $"seed {seed}, {name}";
            ReadDrawing read = Drawn.Strict(File.ReadAllBytes(folder.Path(name)), name);
            Assert.True(read is { IsUsable: true, Unit: not null }, $"{about}: {Drawn.Codes([.. read.Findings, .. read.Repairs])}");
            var trace = DrawingTrace.Of(read, name);
            JsonElement[] pieces = [.. drawing.GetProperty("pieces").EnumerateArray()];
            Assert.True(pieces.Length == trace.Regions.Length, $"{about}: {trace.Regions.Length} regions for {pieces.Length}; {Drawn.Codes(trace.Findings)}");
            Assert.Empty(trace.Outlines.Open);
            TracedRegion[] regions = [.. trace.Regions.OrderBy(r => r.Area)];
            for (int i = 0; i < pieces.Length; i++)
            {
                double may = pieces[i].GetProperty("perimeter").GetDouble() * sagitta;
                Assert.True(Math.Abs(pieces[i].GetProperty("area").GetDouble() - regions[i].Area) <= may, $"{about}: {regions[i].Area}");
                Assert.Equal(pieces[i].GetProperty("loops").GetInt32(), regions[i].Region.Loops.Length);
            }
        }
    }

    [Fact]
    public void Our_own_drawings_hold_the_same_edges_in_both_formats()
    {
        using var folder = new Scratch();
        Assert.Equal(0, Command.Run("draw", Repo.Path("samples", "boathouse", "guide.toml"), "--out", folder.Path("drawings")).Code);
        int compared = 0;
        foreach (string svg in Directory.GetFiles(folder.Path("drawings"), "*.svg", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            string dxf = Path.ChangeExtension(svg, ".dxf");
            if (!File.Exists(dxf))
            {
                continue;
            }

            foreach (string layer in (string[])["finished-edge", "edge"])
            {
                var one = DrawingTrace.Of(Drawn.Strict(File.ReadAllBytes(svg), svg), svg, layer);
                var other = DrawingTrace.Of(Drawn.Strict(File.ReadAllBytes(dxf), dxf), dxf, layer);
                Assert.Equal("mm", one.Drawing.Unit?.Name);
                Assert.Equal(other.Regions.Length, one.Regions.Length);
                Assert.Equal(other.Outlines.Open.Length, one.Outlines.Open.Length);

                // Our SVG writes thousandths of a mm: each point may be half of one away in X and in Y.
                const double Away = 0.0005 * 1.4143;
                double may = (Away + DrawingPieces.Tolerance) * other.Regions.Sum(r => r.Length);
                Assert.Equal(other.Area, one.Area, may + 1e-6);
                Assert.Equal(other.Box.Width, one.Box.Width, 2 * (Away + DrawingPieces.Tolerance));
                Assert.Equal(other.Box.Height, one.Box.Height, 2 * (Away + DrawingPieces.Tolerance));
                compared += other.Regions.Length + other.Outlines.Open.Length;
            }
        }

        Assert.True(compared >= 4, $"{compared}");
    }
}
