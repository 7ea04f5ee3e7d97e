using System.Text.Json;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>150 drawings written by ezdxf, over the versions and entities of the format: the areas are those that shapely finds in ezdxf's flattening, within perimeter times sagitta.</summary>
public class TraceAgainstShapelyTests
{
    [Fact]
    public void Areas_of_a_corpus_of_150_drawings_are_those_of_shapely()
    {
        using var folder = new Scratch();
        int seed = Random.Shared.Next();
        string request = $$"""{"folder": {{JsonSerializer.Serialize(folder.Root)}}, "seed": {{seed}}, "count": 150}""";
        JsonElement made = JsonDocument.Parse(OutsideTool.Python("trace_make.py", request, "ezdxf", "shapely")).RootElement;
        double sagitta = made.GetProperty("sagitta").GetDouble() + DrawingPieces.Tolerance;
        Assert.Equal(150, made.GetProperty("drawings").GetArrayLength());
        foreach (JsonElement drawing in made.GetProperty("drawings").EnumerateArray())
        {
            string name = drawing.GetProperty("name").GetString()!;
            string about = $"seed {seed}, {name}";
            ReadDrawing read = Drawn.Strict(File.ReadAllBytes(folder.Path(name)), name);
            Assert.True(read.IsUsable, $"{about}: {Drawn.Codes(read.Findings)}");
            var trace = DrawingTrace.Of(read, name);
            JsonElement[] pieces = [.. drawing.GetProperty("pieces").EnumerateArray()];
            Assert.True(pieces.Length == trace.Regions.Length, $"{about}: {trace.Regions.Length} regions for {pieces.Length}; {Drawn.Codes(trace.Findings)}");
            Assert.Empty(trace.Outlines.Open);
            TracedRegion[] regions = [.. trace.Regions.OrderBy(r => r.Area)];
            for (int i = 0; i < pieces.Length; i++)
            {
                double may = pieces[i].GetProperty("perimeter").GetDouble() * sagitta;
                Assert.Equal(pieces[i].GetProperty("area").GetDouble(), regions[i].Area, may);
                Assert.Equal(pieces[i].GetProperty("loops").GetInt32(), regions[i].Region.Loops.Length);
            }
        }
    }
}
