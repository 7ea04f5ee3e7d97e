using System.Text.Json;
using ToolpathForge.Catalogue;
using ToolpathForge.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>check without a job, through the command line.</summary>
public class CheckSettingsTests
{
    private static string[] Line(string line) => line.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    [Theory]
    [InlineData("check --bit 1/4-upcut --depth 38mm --material fir", 1, "bit-too-short")]
    [InlineData("check --bit upcut-1/4-long --depth 25.8mm --material cedar --overcut 0.4mm --spoilboard 12mm --stick-out 32mm", 0, "finish-pushed-aside")]
    [InlineData("check --hand --bit top-bearing-1/2-long --pattern 6mm --board 25.4mm", 0, "")]
    [InlineData("check --hand --bit top-bearing-1/2-long --pattern 6mm --board 25.4mm --depth 34mm", 1, "hand-depth-outside")]
    [InlineData("check --bit upcut-1/4 --depth 10 --unit mm --material douglas-fir --length 4880 --width 286 --on-bed 400", 1, "board-tips-machine")]
    [InlineData("check --bit upcut-1/4 --depth thick --material fir", 2, "number-expected")]
    [InlineData("check --bit upcut --depth 10mm --material fir", 1, "unknown-id")]
    [InlineData("check --bit upcut-1/4 --material fir", 2, "missing-key")]
    [InlineData("check --hand --bit top-bearing-1/2 --board 25mm --end up", 2, "unknown-word")]
    public void It_answers_with_a_table_or_in_json_and_its_exit_code(string line, int code, string finding)
    {
        Command.Ran told = Command.Run(Line(line));
        Command.Ran json = Command.Run([.. Line(line), "--json"]);
        Assert.Equal((code, code, ""), (told.Code, json.Code, json.Error));
        using JsonDocument reply = JsonDocument.Parse(json.Out);
        string[] codes = [.. reply.RootElement.GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("code").GetString()!)];
        Assert.Equal(finding.Length == 0, codes.Length == 0);
        Assert.True(finding.Length == 0 || codes.Contains(finding, StringComparer.Ordinal), string.Join(' ', codes));
        Assert.All(told.Out.Split('\n'), l => Assert.True(l.Length <= TableLayout.Screen, l));
        Assert.Equal(code == 2 || finding == "unknown-id", told.Out.Length == 0);
        foreach (JsonElement row in reply.RootElement.GetProperty("settings").EnumerateArray().Where(r => r.TryGetProperty("finding", out _)))
        {
            Assert.Contains(row.GetProperty("finding").GetString(), codes);
        }
    }

    [Fact]
    public void The_table_of_a_hand_router_is_as_worked()
    {
        Command.Ran ran = Command.Run(Line("check --hand --bit top-bearing-1/2-long --pattern 6mm --board 25.4mm --unit mm --end right"));
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Golden.Same("check-hand.txt", ran.Out);
    }

    [Fact]
    public void The_table_of_a_machine_is_as_worked()
    {
        Command.Ran ran = Command.Run(Line("check --bit upcut-1/4-long --depth 25.8mm --material cedar --overcut 0.4mm --spoilboard 12mm --stick-out 32mm --unit mm"));
        Assert.Equal(0, ran.Code);
        Golden.Same("check-machine.txt", ran.Out);
    }

    [Theory]
    [InlineData("check porch.toml --bit upcut-1/4", "check looks at the job 'porch.toml' or at settings, not at both.")]
    [InlineData("check --hand --bit top-bearing-1/2 --feed 1000", "--feed is for a machine, not for a hand router.")]
    [InlineData("check --bit upcut-1/4 --pattern 6mm", "--pattern is for a hand router.")]
    [InlineData("check porch.toml --unit mm", "--job and --unit are for a check of settings, without a job of its own.")]
    [InlineData("check --bit", "--bit needs a value.")]
    [InlineData("check --bit a --bit b", "--bit is given 2 times.")]
    [InlineData("check --depht 38mm --bit upcut-1/4", "check has no option '--depht'.")]
    [InlineData("check --hand=yes", "--hand takes no value.")]
    public void What_is_mistyped_is_told(string line, string says)
    {
        Command.Ran ran = Command.Run(Line(line));
        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.StartsWith($"problem: {says}\n", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_lends_its_machine_and_its_unit()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", Planning.SamplePlan.Text);
        Command.Ran ran = Command.Run([.. Line("check --bit downcut-1/4 --depth 6mm --material hardboard --job"), job]);
        Assert.Contains(Planning.SamplePlan.Plan.Job.Machine.Name, ran.Out, StringComparison.Ordinal);
        Assert.Contains(" in", ran.Out, StringComparison.Ordinal);
    }

    // The sample's rafter tail: hardboard 5.6 for boards of 38.1, edges of 41.275, so a hand router is set from 5.6 + 38.1 + 1 to 41.275 + 5.6 - 1.
    [Fact]
    public void Json_of_a_job_carries_every_setting_and_the_depths_of_the_hand_router()
    {
        using JsonDocument reply = JsonDocument.Parse(Command.Run("check", Command.Sample, "--json").Out);
        JsonElement[] settings = [.. reply.RootElement.GetProperty("settings").EnumerateArray()];
        string[] makes = [.. reply.RootElement.GetProperty("job").GetProperty("makes").EnumerateArray().Select(m => m.GetProperty("id").GetString()!)];
        Assert.Equal(makes, settings.Select(s => s.GetProperty("make").GetString()!).Distinct());
        JsonElement hand = Assert.Single(settings, s => s.GetProperty("depths").GetArrayLength() > 0);
        JsonElement window = Assert.Single(hand.GetProperty("depths").EnumerateArray());
        Assert.Equal(("rafter-tail", 44.7, 45.875), (hand.GetProperty("make").GetString(), window.GetProperty("least").GetDouble(), window.GetProperty("most").GetDouble()));
        Assert.All(settings.SelectMany(s => s.GetProperty("settings").EnumerateArray()), r => Assert.NotEqual("broken", r.GetProperty("verdict").GetString()));
    }

    [Theory]
    [InlineData("upcut-1/4", "upcut-1/4")]
    [InlineData("1/4-upcut", "upcut-1/4")]
    [InlineData("long-1/4-upcut", "upcut-1/4-long")]
    [InlineData("upcut", null)]
    [InlineData("", null)]
    [InlineData("-", null)]
    [InlineData("45", "chamfer-45")]
    public void Words_of_an_id_may_stand_in_any_order_and_nothing_is_guessed(string typed, string? id) =>
        Assert.Equal(id, Catalogues.Shipped.Bits.FindLoosely(typed)?.Id);
}
