using System.Text.Json;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>The strips of a fitted pattern through the command line, as ezdxf reads them.</summary>
public class DrawFittingsTests
{
    private static JsonElement[] Circles(string file)
    {
        using JsonDocument read = JsonDocument.Parse(OutsideTool.Python("dxf_read.py", File.ReadAllText(file), "ezdxf"));
        Assert.Equal(0, read.RootElement.GetProperty("errors").GetArrayLength() + read.RootElement.GetProperty("fixes").GetArrayLength());
        return [.. read.RootElement.GetProperty("entities").EnumerateArray().Where(e => e.GetProperty("kind").GetString() == "CIRCLE").Select(e => e.Clone())];
    }

    private static (double X, double Y, double Radius) Numbers(JsonElement circle)
    {
        JsonElement n = circle.GetProperty("numbers");
        return (n[0].GetDouble(), n[1].GetDouble(), n[n.GetArrayLength() - 1].GetDouble());
    }

    // The block's edge lies on the guide-block line, the drawing's zero height, its holes half of 1 1/2 in above; the plate's are of the bit, the block's 1/8 in.
    [Fact]
    public void Holes_of_the_block_come_to_lie_on_those_of_the_plate()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Command.Run("draw", Repo.Path("samples", "boathouse", "guide.toml"), "--out", scratch.Path("out")).Code);
        string pattern = scratch.Path("out", "patterns", "bracket-guide");
        foreach (string strip in (string[])["guide-block", "end-stop"])
        {
            Assert.All((string[])[".svg", ".dxf", "-a4.pdf", "-letter.pdf"], ending => Assert.True(File.Exists($"{pattern}.{strip}{ending}")));
        }

        (double X, double Y, double Radius)[] pilots = [.. Circles(pattern + ".guide-block.dxf").Select(Numbers).OrderBy(c => c.X)];
        (double X, double Y, double Radius)[] plate = [.. Circles(pattern + ".dxf").Select(Numbers).Where(c => Math.Abs(c.Y - (25.4 * 0.75)) < 1e-6).OrderByDescending(c => c.X)];
        Assert.Equal(3, pilots.Length);
        Assert.Equal(pilots.Length, plate.Length);
        Assert.All(pilots, c => Assert.Equal(25.4 / 16, c.Radius, 1e-9));
        Assert.All(plate, c => Assert.Equal(25.4 / 8, c.Radius, 1e-9));

        // From the block's end nearest the tip, which lies at the right of the plate.
        Assert.All(pilots.Zip(plate), pair => Assert.Equal(pair.First.X - pilots[0].X, plate[0].X - pair.Second.X, 1e-6));
        Assert.All(pilots, c => Assert.Equal(25.4 * 0.75, c.Y, 1e-6));
    }
}
