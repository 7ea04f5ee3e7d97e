using System.Text.Json;
using ToolpathForge.Drawings;
using ToolpathForge.Pieces;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>The sample through the command line, as its user would run it.</summary>
public class SampleTests
{
    private static readonly string[] s_files =
    [
        "beam-end.nc", "bracket.nc", "drawings", "manifest.json", "proof.json", "purlin-end.nc", "rafter-tail.nc", "run-sheet.html", "toolpaths",
    ];

    [Fact]
    public void Cut_writes_everything_and_a_second_run_the_same_bytes()
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("out");
        Command.Ran first = Command.Run("cut", Command.Sample, "--out", folder);
        Assert.Equal(0, first.Code);
        Assert.Equal("", first.Error);
        Assert.Equal(string.Join(' ', s_files), Scratch.Names(folder));
        SortedDictionary<string, string?> before = Scratch.Snapshot(folder);
        Assert.Equal(0, Command.Run("cut", Command.Sample, "--out", folder).Code);
        Assert.Equal(before, Scratch.Snapshot(folder));
    }

    // A job that is stopped has no programs; its settings are told all the same, and the broken one shows.
    [Fact]
    public void Check_shows_the_broken_setting_of_a_job_that_is_stopped()
    {
        using var scratch = new Scratch();
        Command.Ran ran = Command.Run("check", scratch.Write("porch.toml", SamplePlan.Text.Replace("upcut-1/4-long", "upcut-1/4", StringComparison.Ordinal)));
        Assert.Equal(1, ran.Code);
        string[] broken = [.. ran.Out.Split('\n').Where(line => line.Contains(" broken ", StringComparison.Ordinal)).Select(line => line.Split("  ")[0])];
        Assert.Equal(["flute length", "shank"], broken);
        Assert.DoesNotContain("Nothing stands in the way", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_writes_nothing_and_says_that_nothing_stands_in_the_way()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", SamplePlan.Text);
        Command.Ran ran = Command.Run("check", job);
        Assert.Equal(0, ran.Code);
        Assert.Contains("Nothing stands in the way", ran.Out, StringComparison.Ordinal);

        // The settings of every program, those that are alike together.
        Assert.Contains("\nrafter-tail, beam-end, purlin-end: 1/4 in down-cut spiral in Hardboard, on: Desktop, 400 x 400 mm.\n", ran.Out, StringComparison.Ordinal);
        Assert.Contains("\nbracket: 1/4 in up-cut spiral, long in Western red cedar", ran.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("broken", ran.Out, StringComparison.Ordinal);
        Assert.Equal("porch.toml", Scratch.Names(scratch.Root));
    }

    [Fact]
    public void A_new_job_can_be_cut_as_it_stands_and_is_never_overwritten()
    {
        using var scratch = new Scratch();
        string job = scratch.Path("mine.toml");
        Assert.Equal(0, Command.Run("new", job).Code);
        string text = File.ReadAllText(job);
        Assert.Equal(0, Command.Run("cut", job, "--out", scratch.Path("out")).Code);
        Assert.NotEqual(0, Command.Run("new", job).Code);
        Assert.Equal(text, File.ReadAllText(job));
    }

    [Fact]
    public void Prove_reads_back_what_cut_wrote_and_catches_what_was_changed_since()
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("out");
        Command.Run("cut", Command.Sample, "--out", folder);
        string program = Path.Combine(folder, "rafter-tail.nc");
        Assert.Equal(0, Command.Run("prove", program, "--job", Command.Sample).Code);
        string copy = scratch.Write("mine.nc", File.ReadAllText(program).Replace("Z-0.3", "Z-1.3", StringComparison.Ordinal));
        Assert.Equal(2, Command.Run("prove", copy, "--job", Command.Sample).Code);
        Command.Ran deeper = Command.Run("prove", copy, "--job", Command.Sample, "--make", "rafter-tail");
        Assert.Equal(3, deeper.Code);
        Assert.Equal(3, Command.Run("prove", Path.Combine(folder, "beam-end.nc"), "--job", Command.Sample, "--make", "rafter-tail").Code);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("cut")]
    public void Json_is_one_object_on_standard_output_and_carries_the_proof(string verb)
    {
        using var scratch = new Scratch();
        string[] more = verb == "cut" ? ["--out", scratch.Path("out")] : [];
        Command.Ran ran = Command.Run([verb, Command.Sample, "--json", .. more]);
        using JsonDocument json = JsonDocument.Parse(ran.Out);
        Assert.Equal(0, json.RootElement.GetProperty("exitCode").GetInt32());
        Assert.Equal(4, json.RootElement.GetProperty("programs").GetArrayLength());
    }

    [Theory]
    [InlineData("lumber", "2x8")]
    [InlineData("panels", "hardboard-1/4")]
    [InlineData("bits", "downcut-1/4")]
    [InlineData("materials", "western-red-cedar")]
    [InlineData("machines", "desktop-400")]
    [InlineData("dialects", "metric-centre")]
    [InlineData("shapes", "quarter-ellipse")]
    public void Every_list_shows_its_rows_and_reads_as_json(string list, string id)
    {
        Assert.Contains(id, Command.Run("list", list).Out, StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(Command.Run("list", list, "--json").Out);
        Assert.Contains(id, json.RootElement.GetRawText(), StringComparison.Ordinal);
    }

    // The picture that the README shows.
    [Fact]
    public void The_readmes_picture_is_what_the_program_draws_today()
    {
        Piece piece = SamplePlan.Plan.Pieces.Single(p => p.Make.Id == "rafter-tail");
        Drawing drawing = PieceDrawing.Of(piece, SamplePlan.Plan.Job.Unit);
        string svg = SvgWriter.Write(drawing, 0.5);
        Golden.SameFile(Repo.Path("samples", "boathouse", "rafter-tail.svg"), System.Text.Encoding.UTF8.GetBytes(svg));
    }

    [Fact]
    public void The_samples_programs_are_as_they_were()
    {
        foreach (ToolpathForge.Planning.PlannedProgram program in SamplePlan.Plan.Programs)
        {
            Golden.Same("boathouse-" + program.FileName, program.Text);
        }
    }

    [Fact]
    public void Timings_name_the_stages()
    {
        Command.Ran ran = Command.Run("check", Command.Sample, "--timings");
        Assert.Equal(0, ran.Code);
        foreach (string stage in (string[])["reading", "shapes", "toolpaths", "programs", "proof"])
        {
            Assert.Contains(stage, ran.Out + ran.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Cancelled_work_leaves_no_folder_and_ends_with_130()
    {
        using var scratch = new Scratch();
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Equal(130, Command.Run(source.Token, "cut", Command.Sample, "--out", scratch.Path("out")).Code);
        Assert.Equal("", Scratch.Names(scratch.Root));
    }
}
