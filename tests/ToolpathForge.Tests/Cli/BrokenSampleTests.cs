using System.Text.Json;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>The sample broken in one place: the finding, where it points, the exit code, and no file left.</summary>
public class BrokenSampleTests
{
    private const string Tail = "shape = { kind = \"quarter-ellipse\", form = \"scoop\", run = \"7 1/2\", depth = \"4 1/4\", end-cut = \"10 deg\", long-side = \"top\" }";

    public static TheoryData<string, string, string, string, int> Ways => new()
    {
        // what it is about, what is replaced, by what, the code, the exit code
        { "syntax: a bracket lost", "[[make]]\nid = \"rafter-tail\"", "[[make]\nid = \"rafter-tail\"", "toml-syntax", 2 },
        { "syntax: a quote lost", "name = \"Boathouse porch\"", "name = \"Boathouse porch", "quote-not-closed", 2 },
        { "syntax: an unknown key", "plate = { hold = \"4\", seat", "plate = { holt = \"4\", seat", "unknown-key-near", 2 },
        { "syntax: a wrong type", "unit = \"in\"", "unit = 25.4", "wrong-type", 2 },
        { "syntax: an unknown format", "format = 1", "format = 9", "format-unknown", 2 },
        { "units: none stated", "unit = \"in\"\n", "", "", 2 },
        { "units: an unknown one", "tolerance = \"0.1 mm\"", "tolerance = \"0.1 furlong\"", "", 2 },
        { "units: a share where none makes sense", "thickness = \"5.6 mm\" }    # measured; sold as 1/4 in", "thickness = \"0.1 w\" }", "", 2 },
        { "ranges: a negative size", "run = \"7 1/2\"", "run = \"-7 1/2\"", "too-small", 1 },
        { "ranges: not a number", "tolerance = \"0.1 mm\"", "tolerance = nan", "not-finite", 2 },
        { "ranges: an absurd count", "board = \"2x8\"", "count = 100000000\nboard = \"2x8\"", "too-large", 1 },
        { "ranges: a tolerance the decimals cannot hold", "tolerance = \"0.1 mm\"", "tolerance = \"0.005 mm\"", "tolerance-too-fine", 1 },
        { "geometry: a curve that leaves no end", "depth = \"4 1/4\"", "depth = \"7\"", "shape-too-deep", 1 },
        { "geometry: an inside corner no bit reaches", Tail, Tail.Replace("scoop", "belly", StringComparison.Ordinal).Replace("10 deg", "45 deg", StringComparison.Ordinal), "curve-too-tight", 1 },
        { "geometry: a hollow tighter than the bit", Tail, Tail.Replace("7 1/2", "1/16", StringComparison.Ordinal).Replace("4 1/4", "1/16", StringComparison.Ordinal), "curve-too-tight", 1 },
        { "geometry: tabs that find no room", "cut = { tabs = 4, direction = \"climb\" }", "cut = { tabs = 40, direction = \"climb\" }", "tabs-impossible", 1 },
        { "machine: too small", "machine = \"desktop-400\"", "machine = \"desktop-300\"", "outside-travel", 1 },
        { "machine: an unknown one, nearly right", "machine = \"desktop-400\"", "machine = \"desktop-40\"", "unknown-id-near", 1 },
        { "machine: a feed it cannot run", "cut = { tabs = 4, direction = \"climb\" }", "cut = { tabs = 4, feed = \"9000 mm/min\" }", "feed-outside-machine", 1 },
        { "machine: a speed it cannot turn", "cut = { tabs = 4, direction = \"climb\" }", "cut = { tabs = 4, speed = 1000 }", "speed-outside-machine", 1 },
        { "bit: too short", "bit = \"upcut-1/4-long\"", "bit = \"downcut-1/4\"", "bit-too-short", 1 },
        { "bit: faster than its marking", "cut = { tabs = 4, direction = \"climb\" }", "cut = { tabs = 4, speed = 30000 }", "speed-above-bit", 1 },
        { "bit: an unknown one", "bit = \"upcut-1/4-long\"", "bit = \"upcut-1/4-lng\"", "unknown-id-near", 1 },
        { "dialect: an unknown one", "dialect = \"metric-centre\"", "dialect = \"metric-centr\"", "unknown-id-near", 1 },
        { "thickness of a panel never measured", "stock = { panel = \"hardboard-1/4\", thickness = \"5.6 mm\" }    # measured; sold as 1/4 in", "stock = { panel = \"hardboard-1/4\" }", "thickness-missing", 1 },
        { "files: a catalogue that is not there", "dialect = \"metric-centre\"", "dialect = \"metric-centre\"\ncatalogues = [\"nowhere.toml\"]", "catalogue-missing", 2 },
    };

    [Theory]
    [MemberData(nameof(Ways))]
    public void Each_way_of_breaking_it_is_told_with_its_place_and_leaves_no_file(string about, string from, string to, string code, int exit)
    {
        using var scratch = new Scratch();
        Assert.Contains(from, SamplePlan.Text, StringComparison.Ordinal);
        int at = SamplePlan.Text.IndexOf(from, StringComparison.Ordinal);
        string job = scratch.Write("porch.toml", SamplePlan.Text[..at] + to + SamplePlan.Text[(at + from.Length)..]);
        Command.Ran ran = Command.Run("cut", job, "--out", scratch.Path("out"), "--json");
        Assert.True(ran.Code == exit, $"{about}: ended with {ran.Code}\n{ran.Error}");
        Assert.Equal("porch.toml", Scratch.Names(scratch.Root));

        using JsonDocument json = JsonDocument.Parse(ran.Out);
        JsonElement[] stops = [.. json.RootElement.GetProperty("findings").EnumerateArray().Where(f => f.GetProperty("severity").GetString() == "stop")];
        Assert.NotEmpty(stops);
        JsonElement finding = code.Length > 0 ? stops.First(f => f.GetProperty("code").GetString() == code) : stops[0];
        Assert.True(finding.GetProperty("where").GetProperty("line").GetInt32() > 0, $"{about}: no line\n{ran.Error}");
        Assert.NotEqual("", finding.GetProperty("message").GetString());
        Assert.NotEqual("", finding.GetProperty("advice").GetString());
    }

    // A bit of the user's own that neither plunges nor ramps cannot get into a panel.
    [Fact]
    public void A_bit_that_cannot_go_down_is_told()
    {
        using var scratch = new Scratch();
        scratch.Write("mine.toml", """
            format = 1
            unit = "in"
            [[bit]]
            id = "edge-only"
            name = "an edge bit"
            kind = "straight"
            substance = "steel"
            diameter = "1/4"
            flute-length = "1"
            flutes = 2
            shank = "1/4"
            overall-length = "2 1/2"
            max-speed = 24000
            can-plunge = false
            ramp-angle = "0 deg"
            basis = "user"
            source = "the bit in hand"
            """);
        string job = scratch.Write("porch.toml", SamplePlan.Text
            .Replace("dialect = \"metric-centre\"", "dialect = \"metric-centre\"\ncatalogues = [\"mine.toml\"]", StringComparison.Ordinal)
            .Replace("downcut-1/4", "edge-only", StringComparison.Ordinal));
        Command.Ran ran = Command.Run("check", job, "--json");
        Assert.Equal(1, ran.Code);
        Assert.Contains("bit-cannot-plunge", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void All_problems_are_told_in_one_go()
    {
        using var scratch = new Scratch();
        string text = SamplePlan.Text
            .Replace("machine = \"desktop-400\"", "machine = \"dektop-400\"", StringComparison.Ordinal)
            .Replace("seat = \"1 1/2\"", "seet = \"1 1/2\"", StringComparison.Ordinal)
            .Replace("run = \"9\"", "run = \"nine\"", StringComparison.Ordinal);
        Command.Ran ran = Command.Run("check", scratch.Write("porch.toml", text));
        Assert.Equal(2, ran.Code);
        foreach (string said in (string[])["desktop-400", "seat", "nine"])
        {
            Assert.Contains(said, ran.Error, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("no-such.toml")]
    [InlineData(".")]
    public void A_job_file_that_is_not_there_or_is_a_folder_is_told(string job)
    {
        Command.Ran ran = Command.Run("check", job);
        Assert.Equal(2, ran.Code);
        Assert.NotEqual("", ran.Error);
    }

    [Fact]
    public void A_folder_with_a_strangers_file_in_it_is_left_alone()
    {
        using var scratch = new Scratch();
        string mine = scratch.Write("out/letter.txt", "mine");
        Command.Ran ran = Command.Run("cut", Command.Sample, "--out", scratch.Path("out"));
        Assert.NotEqual(0, ran.Code);
        Assert.Equal("letter.txt", Scratch.Names(scratch.Path("out")));
        Assert.Equal("mine", File.ReadAllText(mine));
    }
}
