using System.Text.Json;
using ToolpathForge.Cli;
using ToolpathForge.Service;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>Lists: their width, their filters, and rows of the user's own.</summary>
public class ListTests
{
    [Theory]
    [InlineData("in")]
    [InlineData("mm")]
    public void No_list_is_wider_than_a_terminal(string unit)
    {
        foreach (string kind in ListCatalogue.Kinds)
        {
            string text = Command.Run("list", kind, "--unit", unit).Out;
            Assert.All(text.Split('\n'), l => Assert.True(l.Length <= TableLayout.Screen, $"{kind}: {l}"));
        }
    }

    [Theory]
    [InlineData("bits --kind down-cut --diameter 1/4", "downcut-1/4")]
    [InlineData("bits --kind down-cut --diameter 6 --unit mm", "downcut-6mm")]
    [InlineData("bits --kind v", "v-60 v-90")]
    [InlineData("materials --kind hardwood", "white-oak yellow-poplar beech hard-maple sapele")]
    [InlineData("lumber --width 7.25 --thickness 1.5", "2x8")]
    [InlineData("panels --thickness 3.3mm", "hardboard-1/8 hardboard-3mm")]
    [InlineData("bits --diameter 11/16", "")]
    public void A_filter_leaves_the_rows_that_are_such(string line, string ids)
    {
        Command.Ran ran = Command.Run(["list", .. line.Split(' '), "--json"]);
        using JsonDocument json = JsonDocument.Parse(ran.Out);
        JsonElement rows = json.RootElement.GetProperty(line.Split(' ')[0]);
        Assert.Equal((0, ids), (ran.Code, string.Join(' ', rows.EnumerateArray().Select(r => r.GetProperty("id").GetString()))));
        Command.Ran told = Command.Run(["list", .. line.Split(' ')]);
        Assert.All(ids.Split(' '), id => Assert.Contains(id, told.Out, StringComparison.Ordinal));
        Assert.Equal(ids.Length == 0, told.Out == "Nothing in this list is such.\n");
    }

    [Fact]
    public void A_size_that_cannot_be_read_is_refused()
    {
        Command.Ran ran = Command.Run("list", "bits", "--diameter", "thick");
        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains("--diameter", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_of_the_users_own_takes_the_place_of_a_shipped_one_in_the_list()
    {
        using var scratch = new Scratch();
        scratch.Write("mine.toml", """
            format = 1
            unit = "mm"
            [[bit]]
            id = "top-bearing-1/2"
            name = "mine, with a worn bearing"
            kind = "top-bearing"
            substance = "steel"
            diameter = 12.6
            flute-length = 24
            flutes = 2
            shank = 8
            overall-length = 58
            max-speed = 22000
            can-plunge = false
            ramp-angle = 0
            bearing-diameter = 12.5
            bearing-height = 5
            basis = "user"
            source = "measured with a caliper"
            """);
        string job = scratch.Write("porch.toml", SamplePlan.Text.Replace("unit = \"in\"", "unit = \"in\"\ncatalogues = [\"mine.toml\"]", StringComparison.Ordinal));
        Command.Ran ran = Command.Run("list", "bits", "--kind", "top-bearing", "--job", job, "--unit", "mm");
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Matches("(?m)^top-bearing-1/2 .* 12\\.6 ", ran.Out);
        Assert.Contains("yours: measured with a caliper", ran.Out, StringComparison.Ordinal);
        Assert.Equal(1, ran.Out.Split('\n').Count(l => l.StartsWith("top-bearing-1/2 ", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("A table is broken at spaces", 10, "A table is|broken at|spaces")]
    [InlineData("short", 10, "short")]
    [InlineData("unbreakable-word here", 6, "unbreakable-word|here")]
    public void Text_is_broken_at_spaces_only(string text, int width, string lines) =>
        Assert.Equal(lines, string.Join('|', TableLayout.Broken(text, width)));
}
