using System.Text.Json;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>
/// 150 drawings written by ezdxf, a general-purpose library, over the versions of the format, text and binary: what we read is what it says that it wrote, seen from above.
/// What ezdxf's own frames (OCS) say doesn't lie flat is left out and told.
/// </summary>
public class DxfAgainstEzdxfTests
{
    private const double Near = 1e-6;

    /// <summary>Heights that differ by less are one, mm; nothing that ezdxf draws here comes near it.</summary>
    private const double Flat = 1e-3;

    [Fact]
    public void A_corpus_of_150_drawings_is_read_to_a_millionth_strictly_unless_something_leans()
    {
        int leaning = 0, raised = 0;
        using var folder = new Scratch();
        int seed = Random.Shared.Next();
        string request = $$"""{"folder": {{JsonSerializer.Serialize(folder.Root)}}, "seed": {{seed}}, "count": 150}""";
        JsonElement made = JsonDocument.Parse(OutsideTool.Python("drawings_make.py", request, "ezdxf")).RootElement;
        Assert.Equal(150, made.GetArrayLength());
        foreach (JsonElement drawing in made.EnumerateArray())
        {
            string name = drawing.GetProperty("name").GetString()!;
            string about = $"seed {seed}, {name}";
            byte[] bytes = File.ReadAllBytes(folder.Path(name));
            ReadDrawing read = Drawn.Strict(bytes, name);
            double unit = Unit(drawing) ?? 1;
            (double Low, double High)[] heights = [.. drawing.GetProperty("entities").EnumerateArray().Select(e => Heights(e, unit))];
            int lean = heights.Count(h => h.High - h.Low > Flat);
            int high = heights.Count(h => h.High - h.Low <= Flat && Math.Max(Math.Abs(h.Low), Math.Abs(h.High)) > Flat);
            Assert.Equal(high, read.Findings.Where(f => f.Kind.Code == "drawing-other-height").Sum(f => (int)f.Args.Single(a => a.Name == "count").Quantity!.Value.Value));
            if (lean > 0)
            {
                Assert.Contains("drawing-needs-repair", Drawn.Codes(read.Findings), StringComparison.Ordinal);
                Assert.Empty(read.Entities);
                read = DrawingReader.ReadRepairing(bytes, name, cancel: TestContext.Current.CancellationToken);
                Assert.True(lean == read.Repairs.Count(r => r.Kind.Code == "drawing-out-of-plane") && lean == read.Repairs.Length, $"{about}: {lean} lean; {Drawn.Codes(read.Repairs)}");
            }

            leaning += lean;
            raised += high;
            Assert.True(read.IsUsable, about + ": " + string.Join("; ", read.Repairs.Concat(read.Findings).Select(f => f.Kind.Code)));
            Assert.Equal($"DXF {drawing.GetProperty("version").GetString()}, {(drawing.GetProperty("binary").GetBoolean() ? "binary" : "text")}", read.Format);
            Assert.Equal(Unit(drawing), read.Unit?.Millimetres);
            Assert.Equal(1, read.Ignored.Where(i => i.Kind == "TEXT").Sum(i => i.Count));
            Compare(drawing, read, about);
        }

        Assert.True(leaning > 20 && raised > 100, $"seed {seed}: {leaning} lean, {raised} lie higher or lower");
    }

    private static double? Unit(JsonElement drawing) => drawing.GetProperty("unit") is { ValueKind: JsonValueKind.Number } unit ? unit.GetDouble() : null;

    private static (double Low, double High) Heights(JsonElement entity, double unit)
    {
        double[] z = [.. entity.GetProperty("curves").EnumerateArray().SelectMany(c => c.EnumerateArray()).Select(p => p[2].GetDouble() * unit)];
        return (z.Min(), z.Max());
    }

    private static void Compare(JsonElement drawing, ReadDrawing read, string about)
    {
        double unit = Unit(drawing) ?? 1;
        Point2[][] theirs = [.. drawing.GetProperty("entities").EnumerateArray()
            .Where(e => Heights(e, unit) is var (low, high) && high - low <= Flat).SelectMany(e => e.GetProperty("curves").EnumerateArray())
            .Select(c => c.EnumerateArray().Select(p => new Point2(p[0].GetDouble() * unit, p[1].GetDouble() * unit)).ToArray())];

        // A closed polyline may begin with any of its edges, and one that is scaled unevenly comes as single curves: so each of theirs must be one of ours, and none is left.
        List<Curve> ours = [.. read.Entities.SelectMany(e => e.Path.Curves)];
        Assert.True(theirs.Length == ours.Count, $"{about}: {ours.Count} curves, ezdxf has {theirs.Length}");
        foreach (Point2[] points in theirs)
        {
            int same = ours.FindIndex(curve => Off(curve, points) <= Near);
            if (same < 0)
            {
                Assert.Fail($"{about}: the nearest to the curve of ezdxf from {points[0]} over {points[points.Length / 2]} to {points[^1]} is {ours.Min(c => Off(c, points)):G3} mm off");
            }

            ours.RemoveAt(same);
        }
    }

    private static double Off(Curve curve, Point2[] points)
    {
        (Point2 a, Point2 b) = (points[0], points[^1]);
        double along = Math.Max(a.DistanceTo(curve.Start), b.DistanceTo(curve.End));
        double against = Math.Max(a.DistanceTo(curve.End), b.DistanceTo(curve.Start));

        // Where a whole circle or ellipse begins means nothing.
        bool whole = a.DistanceTo(b) < Near && curve is ArcCurve or EllipseCurve;
        double ends = whole ? curve.Start.DistanceTo(curve.End) : Math.Min(along, against);
        return ends > Near ? ends : Math.Max(ends, points.Max(p => Nearest.Distance(curve, p)));
    }
}
