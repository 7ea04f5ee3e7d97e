using System.Text.Json.Nodes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Plugin;

/// <summary>The plugin's DLL under a runtime that isn't ours: a host built for .NET Framework 4.7.2, run by Mono as Debian has it.</summary>
public class SecondRuntimeTests
{
    [Fact]
    public void The_plugin_works_on_the_older_runtime()
    {
        using var scratch = new Scratch();
        string configuration = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;
        string host = Repo.Path("tests", "ToolpathForge.SecondRuntime", "bin", configuration, "net472", "second-runtime.exe");
        (int code, string said, string error) = OutsideTool.Program("mono", "mono-devel", host, Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll"), scratch.Root);

        Assert.True(code == 0, said + error);
        Assert.StartsWith("runtime: Mono 4.", said, StringComparison.Ordinal);
        Assert.Contains("Memory: conforms", said, StringComparison.Ordinal);
        Assert.DoesNotContain("FAIL", said, StringComparison.Ordinal);
        Assert.Contains("1 of 1 proven", said, StringComparison.Ordinal);
        JsonArray programs = JsonNode.Parse(File.ReadAllText(scratch.Path("plate", "proof.json")))!["programs"]!.AsArray();
        Assert.True(Assert.Single(programs)!["proof"]!["passed"]!.GetValue<bool>());
        Assert.True(File.Exists(scratch.Path("plate", programs[0]!["file"]!.GetValue<string>())));
    }
}
