using System.Globalization;
using System.Text;
using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Cli;
using ToolpathForge.Tests.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>Jobs that name a drawing in their folder, through the command line: DXF or SVG, and those that can't be had.</summary>
public sealed class DrawingFileTests
{
    private const double Height = 256;

    private static string Job(string keys) =>
        "format = 1\nname = 'Test'\nunit = 'mm'\ntolerance = '0.1 mm'\nmachine = 'desktop-400'\ndialect = 'metric-centre'\n[[make]]\nid = 'part'\nkind = 'outline'\n" + keys + OutlineJobs.Usual;

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static string At(Point2 p) => $"{Number(p.X)} {Number(Height - p.Y)}";

    private static string Svg(string inner, string size = "width=\"256mm\" height=\"256mm\"") =>
        $"<svg xmlns=\"http://www.w3.org/2000/svg\" {size} viewBox=\"0 0 256 256\">{inner}</svg>";

    /// <summary>Lines and arcs as a path; the radius of an arc by its chord c and bulge b is c(1 + b²)/4|b|.</summary>
    private static string Path(Contour contour)
    {
        Vertex[] v = contour.Vertices.ToArray();
        var text = new StringBuilder("<path d=\"M" + At(v[0].Point));
        for (int i = 0; i < v.Length; i++)
        {
            (Point2 from, Point2 to, double b) = (v[i].Point, v[(i + 1) % v.Length].Point, v[i].Bulge);
            string radius = b == 0 ? "" : Number(from.DistanceTo(to) * (1 + (b * b)) / (4 * Math.Abs(b)));
            text.Append(b == 0 ? " L" : $" A{radius} {radius} 0 {(Math.Abs(b) > 1 ? 1 : 0)} {(b > 0 ? 0 : 1)} ").Append(At(to));
        }

        return text.Append("Z\"/>").ToString();
    }

    /// <summary>Cuts a job in a folder and hands back its programs by name, each proven once more from its file.</summary>
    private static SortedDictionary<string, string> Cut(Scratch scratch, string name, string job)
    {
        string file = scratch.Write(name + ".toml", job);
        string folder = scratch.Path("out-" + name);
        Command.Ran ran = Command.Run("cut", file, "--out", folder);
        Assert.True(ran.Code == 0, ran.Out + ran.Error);
        var programs = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (string program in Directory.GetFiles(folder, "*.nc"))
        {
            Assert.Equal(0, Command.Run("prove", program, "--job", file).Code);
            programs.Add(System.IO.Path.GetFileName(program), File.ReadAllText(program));
        }

        Assert.NotEmpty(programs);
        return programs;
    }

    /// <summary>The same moves to the same places, within the last of the three digits that are written, where arcs that are put together differently are rounded.</summary>
    private static void SameCut(SortedDictionary<string, string> one, SortedDictionary<string, string> other)
    {
        Assert.Equal(one.Keys, other.Keys);
        foreach ((string name, string text) in one)
        {
            (string Line, double[] Words)[] a = [.. Moves(text)], b = [.. Moves(other[name])];
            Assert.True(a.Length > 50 && a.Length == b.Length);
            foreach (((string Line, double[] Words) mine, (string Line, double[] Words) theirs) in a.Zip(b))
            {
                Assert.True(mine.Words.Zip(theirs.Words).All(w => Math.Abs(w.First - w.Second) < 0.0011), $"{mine.Line} and {theirs.Line}");
            }
        }
    }

    /// <summary>What holds after each line: a word that a line leaves out is what it was, but for the centre of an arc.</summary>
    private static IEnumerable<(string Line, double[] Words)> Moves(string text)
    {
        const string Letters = "GXYZFSMTIJ";
        double[] at = new double[Letters.Length];
        foreach (string line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(l => l[0] != '('))
        {
            (at[^1], at[^2]) = (0, 0);
            foreach (string word in line.Split(' ').Where(w => w.Length > 1 && Letters.Contains(w[0])))
            {
                at[Letters.IndexOf(word[0], StringComparison.Ordinal)] = double.Parse(word[1..], CultureInfo.InvariantCulture);
            }

            yield return (line, [.. at]);
        }
    }

    [Fact]
    public void An_outline_is_cut_the_same_from_an_svg_as_from_a_dxf()
    {
        using var scratch = new Scratch();
        Contour[] drawn = [BraceDrawing.Brace, BraceDrawing.Slot, BraceDrawing.CutOut];
        scratch.Write("brace.dxf", DxfWriter.Write([new DxfLayer("outline", LineRole.FinishedEdge, [], [.. drawn, .. BraceDrawing.Screws])]));
        scratch.Write("brace.svg", Svg(string.Concat(drawn.Select(Path)) + "<circle cx=\"18\" cy=\"56\" r=\"4\"/><circle cx=\"200\" cy=\"238\" r=\"4\"/>"));
        SameCut(Cut(scratch, "dxf", Job("drawing = 'brace.dxf'\n")), Cut(scratch, "svg", Job("drawing = 'brace.svg'\n")));
    }

    [Fact]
    public void A_boards_end_is_cut_the_same_from_an_svg_as_from_a_dxf()
    {
        using var scratch = new Scratch();
        scratch.Write("tail.dxf", TailDrawing.Dxf);
        string path = "<path d=\"M" + At(new(0, 0)) + " L" + At(new(0, 14)) + " A60 40 0 0 1 " + At(new(60, 54)) + " A50 26 0 0 0 " + At(new(110, 80)) + "\"/>";
        scratch.Write("tail.svg", Svg($"<g id=\"tail\">{path}</g><rect id=\"board\" width=\"9\" height=\"9\" display=\"none\"/>"));
        const string Asks = "kind = 'drawing', layer = 'tail', depth = '3', file = ";
        SameCut(Cut(scratch, "dxf", ShapeJobs.Text(Asks + "'tail.dxf'", "2x6")), Cut(scratch, "svg", ShapeJobs.Text(Asks + "'tail.svg'", "2x6")));
    }

    [Theory]
    [InlineData("gone.dxf", 2, "There is no drawing 'gone.dxf'.", "Put it in the job's folder")]
    [InlineData("gone.svg", 2, "There is no drawing 'gone.svg'.", "Put it in the job's folder")]
    [InlineData("folder.dxf", 2, "folder.dxf", "This is a folder, not a file.")]
    [InlineData("empty.svg", 2, "empty.svg", "neither a DXF nor an SVG drawing")]
    [InlineData("bare.svg", 1, "does not say what unit it is drawn in", "unit = \"mm\" or \"in\"")]
    [InlineData("bare.dxf", 1, "does not say what unit it is drawn in", "unit = \"mm\" or \"in\"")]
    public void A_drawing_that_cannot_be_had_stops_the_job_with_what_to_do_and_nothing_is_written(string drawing, int code, string says, string advice)
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch.Path("folder.dxf"));
        scratch.Write("empty.svg", "");
        scratch.Write("bare.svg", Svg(Path(Contour.Rectangle(new Box2(0, 0, 90, 70))) + "<path d=\"M200 200h9v-9\"/>", "width=\"256\" height=\"256\""));
        scratch.Write("bare.dxf", DxfWriter.Write([new DxfLayer("outline", LineRole.FinishedEdge, [], [Contour.Rectangle(new Box2(0, 0, 90, 70)), Contour.Polyline(new(200, 0), new(209, 0), new(209, 9))])])
            .Replace("$INSUNITS", "$NOUNITS", StringComparison.Ordinal));
        string outline = scratch.Write("outline.toml", Job($"drawing = '{drawing}'\n"));
        string shape = scratch.Write("shape.toml", ShapeJobs.Text($"kind = 'drawing', file = '{drawing}'", "2x6"));
        var before = Scratch.Snapshot(scratch.Root);
        foreach (string job in (string[])[outline, shape])
        {
            Command.Ran ran = Command.Run("cut", job, "--out", scratch.Path("out"));
            Assert.Equal(code, ran.Code);
            string all = ran.Out + ran.Error;
            Assert.Contains(says, all, StringComparison.Ordinal);
            Assert.Contains(advice, all, StringComparison.Ordinal);
            Assert.Contains("Nothing was written.", all, StringComparison.Ordinal);
        }

        Assert.Equal(before, Scratch.Snapshot(scratch.Root));
    }
}
