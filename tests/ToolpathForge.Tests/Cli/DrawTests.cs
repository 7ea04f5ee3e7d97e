using System.Buffers.Binary;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>Drawings of the sample through the command line, looked at by other people's programs.</summary>
public class DrawTests
{
    [Fact]
    public void Draw_writes_every_drawing_and_a_second_run_the_same_bytes()
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("drawings");
        Command.Ran first = Command.Run("draw", Command.Sample, "--out", folder, "--family");
        Assert.Equal((0, ""), (first.Code, first.Error));
        SortedDictionary<string, string?> before = Scratch.Snapshot(folder);
        foreach (string name in (string[])["patterns/rafter-tail", "patterns/beam-end", "patterns/purlin-end", "profiles/rafter-tail", "profiles/beam-end", "profiles/purlin-end", "profiles/bracket"])
        {
            Assert.All((string[])[".svg", ".dxf", "-a4.pdf", "-letter.pdf"], ending => Assert.Contains(name + ending, before.Keys));
        }

        Assert.All((string[])["check-a4.pdf", "check-letter.pdf", "by-hand.html", "family/all.svg", "family/all-a4.pdf", "family/all-letter.pdf"], name => Assert.Contains(name, before.Keys));
        Assert.Equal(0, Command.Run("draw", Command.Sample, "--out", folder, "--family").Code);
        Assert.Equal(before, Scratch.Snapshot(folder));
        Assert.Equal(0, Command.Run("draw", Command.Sample, "--out", folder).Code);
        Assert.False(Directory.Exists(Path.Combine(folder, "family")));
    }

    // Whoever cuts by hand has no machine: what stops cut does not stop draw. What spoils a shape stops both, and nothing is touched.
    [Fact]
    public void A_bit_that_is_too_short_can_be_drawn_for_a_shape_that_is_too_deep_cannot()
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("drawings");
        string job = scratch.Write("porch.toml", SamplePlan.Text.Replace("upcut-1/4-long", "upcut-1/4", StringComparison.Ordinal));
        Assert.Equal(1, Command.Run("cut", job, "--out", scratch.Path("cut")).Code);
        Assert.Equal(0, Command.Run("draw", job, "--out", folder).Code);
        SortedDictionary<string, string?> before = Scratch.Snapshot(folder);
        scratch.Write("porch.toml", SamplePlan.Text.Replace("depth = \"4 1/4\"", "depth = \"7\"", StringComparison.Ordinal));
        Command.Ran deep = Command.Run("draw", job, "--out", folder);
        Assert.Equal(1, deep.Code);
        Assert.Contains("shape-too-deep", Command.Run("draw", job, "--out", folder, "--json").Out, StringComparison.Ordinal);
        Assert.Equal(before, Scratch.Snapshot(folder));
    }

    [Fact]
    public void Json_lists_every_file_written()
    {
        using var scratch = new Scratch();
        using JsonDocument json = JsonDocument.Parse(Command.Run("draw", Command.Sample, "--out", scratch.Path("out"), "--json").Out);
        Assert.Equal("draw", json.RootElement.GetProperty("command").GetString());
        string[] told = [.. json.RootElement.GetProperty("files").EnumerateArray().Select(f => f.GetProperty("name").GetString()!)];
        string[] found = [.. Scratch.Snapshot(scratch.Path("out")).Where(f => f.Value is not null && f.Key != "manifest.json").Select(f => f.Key)];
        Assert.Equal(found, told);
    }

    // ezdxf reads every DXF, its audit finds nothing, and the quarter ellipses come back as ellipses with the job's own semi-axes.
    [Fact]
    public void Ezdxf_reads_every_drawing_with_its_ellipse_exact()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Command.Run("draw", Command.Sample, "--out", scratch.Path("out")).Code);
        (string Name, double Longer, double Shorter)[] ellipses =
            [("patterns/rafter-tail", 7.5, 4.25), ("patterns/beam-end", 9, 6.5), ("patterns/purlin-end", 2.75, 1.875), ("profiles/rafter-tail", 7.5, 4.25), ("profiles/bracket", 3.25, 2.5)];
        foreach ((string name, double longer, double shorter) in ellipses)
        {
            using JsonDocument read = JsonDocument.Parse(OutsideTool.Python("dxf_read.py", File.ReadAllText(scratch.Path("out", name + ".dxf")), "ezdxf"));
            Assert.Equal(0, read.RootElement.GetProperty("errors").GetArrayLength() + read.RootElement.GetProperty("fixes").GetArrayLength());
            Assert.Equal(4, read.RootElement.GetProperty("units").GetInt32());
            JsonElement ellipse = read.RootElement.GetProperty("entities").EnumerateArray().Single(e => e.GetProperty("kind").GetString() == "ELLIPSE");
            Assert.Equal("finished-edge", ellipse.GetProperty("layer").GetString());
            double[] numbers = [.. ellipse.GetProperty("numbers").EnumerateArray().Select(n => n.GetDouble())];
            Assert.Equal(longer * 25.4, Math.Sqrt((numbers[3] * numbers[3]) + (numbers[4] * numbers[4])), 1e-9);
            Assert.Equal(shorter / longer, numbers[6], 1e-12);
            Assert.Equal(Math.PI / 2, numbers[8] - numbers[7], 1e-12);
        }
    }

    [Theory]
    [InlineData("half an inch", 2, "--step says 'half an inch'")]
    [InlineData("1/32", 2, "cannot be told from each other")]
    [InlineData("3/8", 0, "")]
    public void The_step_of_the_ordinates_is_the_persons(string step, int code, string says)
    {
        using var scratch = new Scratch();
        Command.Ran ran = Command.Run("draw", Command.Sample, "--out", scratch.Path("out"), "--step", step);
        Assert.Equal(code, ran.Code);
        if (code == 0)
        {
            string sheet = File.ReadAllText(scratch.Path("out", "by-hand.html"));

            // The boards are listed first, each has its own section.
            Assert.Contains("<tr><td>rafter-tail</td><td>2x8</td>", sheet, StringComparison.Ordinal);
            Assert.Contains("<tr><td>3/8 in</td>", sheet, StringComparison.Ordinal);
            Assert.DoesNotContain("<tr><td>1/2 in</td>", sheet, StringComparison.Ordinal);
        }
        else
        {
            Assert.Contains(says, ran.Error, StringComparison.Ordinal);
            Assert.False(Directory.Exists(scratch.Path("out")));
        }
    }

    // librsvg renders every SVG at 254 dots an inch, ten a millimetre: the picture is as large as the drawing says, and a carpenter's paper is.
    [Fact]
    public void Librsvg_draws_every_svg_at_its_size_in_millimetres()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Command.Run("draw", Command.Sample, "--out", scratch.Path("out"), "--family").Code);
        string[] files = Directory.GetFiles(scratch.Path("out"), "*.svg", SearchOption.AllDirectories);
        Assert.True(files.Length >= 5);
        foreach (string svg in files)
        {
            string picture = scratch.Path("picture.png");
            (int exit, _, string error) = OutsideTool.Program("rsvg-convert", "librsvg2-bin", "-d", "254", "-p", "254", svg, "-o", picture);
            Assert.Equal((0, ""), (exit, error));
            ReadOnlySpan<byte> head = File.ReadAllBytes(picture).AsSpan(16, 8);
            Match size = Regex.Match(File.ReadAllText(svg), "width=\"(?<wide>[0-9.]+)mm\" height=\"(?<high>[0-9.]+)mm\"", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));
            double Millimetres(string group) => double.Parse(size.Groups[group].Value, CultureInfo.InvariantCulture);
            Assert.Equal(Millimetres("wide") * 10, BinaryPrimitives.ReadInt32BigEndian(head), 1.0);
            Assert.Equal(Millimetres("high") * 10, BinaryPrimitives.ReadInt32BigEndian(head[4..]), 1.0);
        }
    }

    // A make may bear any id the reader takes; two of them never lead to one file.
    [Fact]
    public void Ids_that_look_like_endings_of_files_do_no_harm()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", SamplePlan.Text.Replace("beam-end", "rafter-tail-a4", StringComparison.Ordinal));
        Assert.Equal(0, Command.Run("draw", job, "--out", scratch.Path("out"), "--family").Code);
        Assert.True(File.Exists(scratch.Path("out", "patterns", "rafter-tail-a4.dxf")));
    }

    // Nor do a family and a make that is called like the picture of one.
    [Fact]
    public void A_make_called_like_the_picture_of_a_family_does_no_harm()
    {
        using var scratch = new Scratch();
        string text = File.ReadAllText(Repo.Path("samples", "boathouse", "family.toml")).Replace("{ board = \"2x4\" },", "", StringComparison.Ordinal);
        string job = scratch.Write("porch.toml", text.Replace("id = \"round\"", "id = \"hollow-family\"", StringComparison.Ordinal).Replace("family = [\n    { board = \"2x4\", count = 3 },\n    { board = \"2x6\", count = 2 },\n]", "board = \"2x6\"", StringComparison.Ordinal));
        Command.Ran ran = Command.Run("cut", job, "--out", scratch.Path("out"));
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.True(File.Exists(scratch.Path("out", "drawings", "hollow-family.svg")));
        Assert.True(File.Exists(scratch.Path("out", "drawings", "hollow.family.svg")));
    }

    [Fact]
    public void The_family_of_the_boathouse_is_cut_and_drawn_and_ezdxf_reads_every_blank_and_pattern()
    {
        using var scratch = new Scratch();
        string job = Repo.Path("samples", "boathouse", "family.toml");
        Assert.Equal(0, Command.Run("cut", job, "--out", scratch.Path("cut")).Code);
        Assert.Equal(0, Command.Run("draw", job, "--out", scratch.Path("draw"), "--family").Code);
        string[] cut = [.. Scratch.Snapshot(scratch.Path("cut")).Keys];
        Assert.All(Enumerable.Range(1, 5), i => Assert.All((string[])[$"panel-{i}.nc", $"drawings/panel-{i}.svg", $"drawings/panel-{i}.dxf"], name => Assert.Contains(name, cut)));
        string[] drawn = [.. Scratch.Snapshot(scratch.Path("draw")).Keys];
        Assert.All((string[])["check-a4.pdf", "check-letter.pdf", "family/hollow-a4.pdf", "family/round.svg"], name => Assert.Contains(name, drawn));
        foreach (string file in (string[])[.. cut.Where(n => n.EndsWith(".dxf", StringComparison.Ordinal)).Select(n => scratch.Path("cut", n)), .. drawn.Where(n => n.EndsWith(".dxf", StringComparison.Ordinal)).Select(n => scratch.Path("draw", n))])
        {
            using JsonDocument said = JsonDocument.Parse(OutsideTool.Python("dxf_read.py", File.ReadAllText(file), "ezdxf"));
            Assert.Equal(0, said.RootElement.GetProperty("errors").GetArrayLength());
        }
    }
}
