using System.Text;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>Files that are not as they should be, through the command.</summary>
public class FileTests
{
    private const string OwnBit =
        """
        format = 1
        unit = "in"

        [[bit]]
        id = "my-downcut"
        name = "My down-cut"
        kind = "down-cut"
        substance = "carbide"
        diameter = "1/4"
        flute-length = "1"
        flutes = 2
        shank = "1/4"
        overall-length = "2 1/2"
        max-speed = 24000
        can-plunge = true
        ramp-angle = "10 deg"
        basis = "user"
        source = "Measured with a caliper"

        """;

    private static string WithCatalogue(string text) =>
        text.Replace("dialect = \"metric-centre\"", "dialect = \"metric-centre\"\ncatalogues = [\"bits/mine.toml\"]", StringComparison.Ordinal);

    [Fact]
    public void Drawings_do_not_replace_programs_nor_one_job_another_unless_told()
    {
        using var scratch = new Scratch();
        string a = scratch.Write("a.toml", SamplePlan.Text);
        string b = scratch.Write("b.toml", SamplePlan.Text);
        Assert.Equal(0, Command.Run("cut", a, "--out", scratch.Path("out")).Code);
        byte[] before = File.ReadAllBytes(scratch.Path("out/manifest.json"));
        foreach (string[] other in (string[][])[["draw", a], ["cut", b], ["trial", a]])
        {
            Command.Ran refused = Command.Run([.. other, "--out", scratch.Path("out")]);
            Assert.NotEqual(0, refused.Code);
            Assert.Contains("holds the programs of a.toml", refused.Error + refused.Out, StringComparison.Ordinal);
            Assert.Equal(before, File.ReadAllBytes(scratch.Path("out/manifest.json")));
        }

        Assert.Equal(0, Command.Run("draw", a, "--out", scratch.Path("out"), "--replace").Code);
    }

    [Fact]
    public void A_size_of_two_words_on_the_command_line_is_asked_for_in_quotes()
    {
        Command.Ran refused = Command.Run("check", "--hand", "--bit", "top-bearing-1/2", "--pattern", "1/2", "--board", "1", "1/2");
        Assert.Equal(2, refused.Code);
        Assert.Contains("--board \"1 1/2\"", refused.Error + refused.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_with_a_byte_order_mark_and_the_line_ends_of_windows_is_read_the_same()
    {
        using var scratch = new Scratch();
        string plain = scratch.Write("porch.toml", SamplePlan.Text);
        string dressed = scratch.Path("dressed", "porch.toml");
        Directory.CreateDirectory(scratch.Path("dressed"));
        File.WriteAllText(dressed, SamplePlan.Text.Replace("\n", "\r\n", StringComparison.Ordinal), new UTF8Encoding(true));
        Command.Ran one = Command.Run("check", plain);
        Assert.Equal(0, one.Code);
        Assert.Equal(one, Command.Run("check", dressed));
    }

    [Fact]
    public void A_jobs_own_bits_are_used_and_listed()
    {
        using var scratch = new Scratch();
        scratch.Write("bits/mine.toml", OwnBit);
        string job = scratch.Write("porch.toml", WithCatalogue(SamplePlan.Text).Replace("bit = \"downcut-1/4\"", "bit = \"my-downcut\"", StringComparison.Ordinal));
        Command.Ran check = Command.Run("check", job);
        Assert.Equal((0, ""), (check.Code, check.Error));
        Assert.Contains("my-downcut", check.Out, StringComparison.Ordinal);
        Assert.Contains("yours: Measured with a caliper", Command.Run("list", "bits", "--job", job).Out, StringComparison.Ordinal);
        Assert.DoesNotContain("my-downcut", Command.Run("list", "bits").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("missing", "porch.toml:10:15: The catalogue file 'bits/mine.toml'")]
    [InlineData("folder", "bits/mine.toml: This is a folder")]
    [InlineData("latin", "bits/mine.toml:1:5: The file is not text in UTF-8")]
    [InlineData("large", "bits/mine.toml: The file is larger than 4 MB")]
    [InlineData("broken", "bits/mine.toml:1:")]
    public void A_catalogue_file_that_cannot_be_used_is_told_and_stops_the_job(string what, string told)
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", WithCatalogue(SamplePlan.Text));
        string rows = scratch.Path("bits", "mine.toml");
        Directory.CreateDirectory(scratch.Path("bits"));
        switch (what)
        {
            case "folder":
                Directory.CreateDirectory(rows);
                break;
            case "latin":
                File.WriteAllBytes(rows, Encoding.Latin1.GetBytes("# Gr\u00f6\u00dfe\n"));
                break;
            case "large":
                File.WriteAllText(rows, new string('#', (4 << 20) + 1));
                break;
            case "broken":
                File.WriteAllText(rows, "[[bit\n");
                break;
        }

        Command.Ran ran = Command.Run("cut", job, "--out", scratch.Path("out"));
        Assert.Equal(2, ran.Code);
        Assert.Contains(told, ran.Error.Replace(job, "porch.toml", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal("bits porch.toml", Scratch.Names(scratch.Root));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0\0\0\0")]
    [InlineData("%PDF-1.4")]
    [InlineData("format = 1")]
    [InlineData("[[[[[[[[")]
    public void A_file_that_is_no_job_ends_with_2_and_a_finding(string text)
    {
        using var scratch = new Scratch();
        Command.Ran ran = Command.Run("check", scratch.Write("porch.toml", text));
        Assert.Equal(2, ran.Code);
        Assert.StartsWith("problem: ", ran.Error, StringComparison.Ordinal);
        Assert.Equal("", ran.Out);
    }

    [Fact]
    public void Prove_says_what_is_wrong_line_by_line_or_why_it_cannot_tell()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", SamplePlan.Text);
        string program = scratch.Write("Rafter-Tail.tap", SamplePlan.Program("rafter-tail").Text.Replace("Z-0.3", "Z-1.3", StringComparison.Ordinal));
        Command.Ran deeper = Command.Run("prove", program, "--job", job);
        Assert.Equal(3, deeper.Code);
        Assert.Contains("FAILED. Do not run it.", deeper.Out, StringComparison.Ordinal);
        Assert.Matches(@"Rafter-Tail\.tap:\d+: The tip goes lower than allowed\. -0\.\d+ in, allowed -0\.\d+ in\. \(below-floor", deeper.Out);

        Command.Ran which = Command.Run("prove", scratch.Write("mine.nc", "G0"), "--job", job);
        Assert.Equal(2, which.Code);
        Assert.Contains("rafter-tail, beam-end, purlin-end, bracket", which.Error, StringComparison.Ordinal);
        Command.Ran near = Command.Run("prove", program, "--job", job, "--make", "raftertail");
        Assert.Equal(2, near.Code);
        Assert.Contains("Did you mean rafter-tail?", near.Error, StringComparison.Ordinal);
        Assert.Equal(2, Command.Run("prove", scratch.Path("none.nc"), "--job", job).Code);
        Command.Ran stopped = Command.Run("prove", program, "--job", scratch.Write("bad.toml", SamplePlan.Text.Replace("depth = \"4 1/4\"", "depth = \"7\"", StringComparison.Ordinal)));
        Assert.Equal(1, stopped.Code);
        Assert.Contains("up a board", stopped.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nul", "on some systems that is the name of a device")]
    [InlineData("Com7", "on some systems that is the name of a device")]
    public void A_make_whose_file_could_not_bear_its_name_is_refused(string id, string reason)
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", SamplePlan.Text.Replace("id = \"rafter-tail\"", $"id = \"{id}\"", StringComparison.Ordinal));
        Command.Ran ran = Command.Run("cut", job, "--out", scratch.Path("out"));
        Assert.Equal(2, ran.Code);
        Assert.Contains($"porch.toml:13:6, {id}: A program cannot be called {id}.nc: {reason}.", ran.Error, StringComparison.Ordinal);
        Assert.Equal("porch.toml", Scratch.Names(scratch.Root));
    }

    [Fact]
    public void A_program_cannot_take_the_name_of_the_run_sheet()
    {
        using var scratch = new Scratch();
        string dialect = File.ReadAllText(Repo.Path("postprocessors", "metric-centre.toml"))
            .Replace("id = \"metric-centre\"", "id = \"mine\"", StringComparison.Ordinal)
            .Replace("file-ending = \".nc\"", "file-ending = \".html\"", StringComparison.Ordinal);
        scratch.Write("mine.toml", dialect);
        string job = scratch.Write("porch.toml", SamplePlan.Text
            .Replace("dialect = \"metric-centre\"", "dialect = \"mine\"\ncatalogues = [\"mine.toml\"]", StringComparison.Ordinal)
            .Replace("id = \"rafter-tail\"", "id = \"Run-Sheet\"", StringComparison.Ordinal));
        Command.Ran ran = Command.Run("cut", job, "--out", scratch.Path("out"));
        Assert.Equal(2, ran.Code);
        Assert.Contains("A program cannot be called Run-Sheet.html: that file is always written beside the programs.", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Lists_are_told_in_the_unit_asked_for()
    {
        Assert.StartsWith("Lengths in millimeters.\n", Command.Run("list", "lumber", "--unit", "mm").Out, StringComparison.Ordinal);
        Assert.Contains("184.15 ", Command.Run("list", "lumber", "--unit", "mm").Out, StringComparison.Ordinal);
        string panels = Command.Run("list", "panels").Out;
        Assert.Contains(" 0.21 ", panels, StringComparison.Ordinal);
        Assert.DoesNotContain(" + ", panels, StringComparison.Ordinal);
    }
}
