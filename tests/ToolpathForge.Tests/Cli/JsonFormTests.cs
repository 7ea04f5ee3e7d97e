using System.Text;
using System.Text.Json;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>What --json prints is what the contract's page describes: those properties, in that order, and nothing else.</summary>
public class JsonFormTests
{
    [Fact]
    public void Every_form_that_a_command_prints_is_as_described()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", SamplePlan.Text);
        string broken = scratch.Write("broken.toml", SamplePlan.Text.Replace("7 1/2", "1/16", StringComparison.Ordinal).Replace("unit =", "unti =", StringComparison.Ordinal));
        string folder = scratch.Path("out");
        string changed = scratch.Write("changed.nc", "G21 G90\nG1 X1\n");
        Printed<CheckReply>("check", job, "--json");
        Printed<CheckReply>("check", broken, "--json");
        Printed<SettingsReply>("check", "--bit", "upcut-1/4", "--depth", "38mm", "--material", "fir", "--json");
        Printed<SettingsReply>("check", "--hand", "--bit", "top-bearing-1/2", "--pattern", "1/2", "--board", "1 1/2", "--json");
        Printed<SettingsReply>("check", "--bit", "nothing", "--depth", "38mm", "--material", "fir", "--json");
        Printed<CutReply>("cut", job, "--out", folder, "--json");
        Printed<CutReply>("cut", broken, "--out", folder, "--json");
        Printed<ProveReply>("prove", Path.Combine(folder, "bracket.nc"), "--job", job, "--json");
        Printed<ProveReply>("prove", changed, "--job", job, "--make", "bracket", "--json");
        Printed<ProveReply>("prove", changed, "--job", broken, "--json");
        foreach (string kind in ToolpathForge.Service.ListCatalogue.Kinds)
        {
            Printed<CatalogueReply>("list", kind, "--json");
        }

        Fits(typeof(ProofFile), Parse(File.ReadAllText(Path.Combine(folder, "proof.json"))), "proof.json");
    }

    [Fact]
    public void Json_mode_prints_nothing_else_and_the_exit_code_is_the_commands()
    {
        Command.Ran ran = Command.Run("check", "no-such.toml", "--json");
        Assert.Equal(2, ran.Code);
        Assert.Equal("", ran.Error);
        Assert.Equal(2, Parse(ran.Out).GetProperty("exitCode").GetInt32());
    }

    [Fact]
    public void A_finding_carries_millimetres_and_its_message_the_unit_of_the_job()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", SamplePlan.Text.Replace("depth = \"4 1/4\"", "depth = \"7\"", StringComparison.Ordinal));
        JsonElement finding = Parse(Command.Run("check", job, "--json").Out).GetProperty("findings").EnumerateArray().Single(f => f.GetProperty("code").GetString() == "shape-too-deep");
        Assert.Equal(177.8, finding.GetProperty("found").GetProperty("value").GetDouble());
        Assert.Equal("mm", finding.GetProperty("found").GetProperty("unit").GetString());
        Assert.Contains("7 in", finding.GetProperty("message").GetString()!, StringComparison.Ordinal);
        JsonElement where = finding.GetProperty("where");
        Assert.Equal(job, where.GetProperty("file").GetString());
        Assert.Equal("rafter-tail", where.GetProperty("make").GetString());
        string line = File.ReadAllLines(job)[where.GetProperty("line").GetInt32() - 1];
        Assert.StartsWith("\"7\"", line[(where.GetProperty("column").GetInt32() - 1)..], StringComparison.Ordinal);
    }

    private static void Printed<T>(params string[] args)
    {
        Command.Ran ran = Command.Run(args);
        Assert.EndsWith("}\n", ran.Out, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', ran.Out);
        JsonElement root = Parse(ran.Out);
        Assert.Equal(ran.Code, root.GetProperty("exitCode").GetInt32());
        Assert.Equal(args[0], root.GetProperty("command").GetString());
        Assert.Equal(ContractVersion.Current, root.GetProperty("contract").GetString());
        Fits(typeof(T), root, string.Join(' ', args));
    }

    private static JsonElement Parse(string text) => JsonDocument.Parse(Encoding.UTF8.GetBytes(text)).RootElement;

    private static void Fits(Type type, JsonElement value, string where)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type.IsArray)
        {
            Assert.All(value.EnumerateArray(), item => Fits(type.GetElementType()!, item, where + "[]"));
            return;
        }

        if (type.Namespace != typeof(ContractVersion).Namespace)
        {
            JsonValueKind kind = value.ValueKind;
            Assert.True(
                type == typeof(string) ? kind == JsonValueKind.String : type == typeof(bool) ? kind is JsonValueKind.True or JsonValueKind.False : kind == JsonValueKind.Number,
                $"{where} is {kind}");
            return;
        }

        string[] described = [.. type.GetProperties().Select(p => char.ToLowerInvariant(p.Name[0]) + p.Name[1..])];
        int at = -1;
        foreach (JsonProperty property in value.EnumerateObject())
        {
            int next = Array.IndexOf(described, property.Name);
            Assert.True(next > at, $"{where}.{property.Name} is not described there");
            at = next;
            Fits(type.GetProperties()[next].PropertyType, property.Value, $"{where}.{property.Name}");
        }

        var nullability = new System.Reflection.NullabilityInfoContext();
        Assert.All(
            type.GetProperties().Where(p => nullability.Create(p).ReadState != System.Reflection.NullabilityState.Nullable),
            p => Assert.True(value.TryGetProperty(char.ToLowerInvariant(p.Name[0]) + p.Name[1..], out _), $"{where} lacks {p.Name}"));
    }
}
