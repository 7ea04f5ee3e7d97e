using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using ToolpathForge.Tests.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Plugin;

/// <summary>Both hosts of the samples on the brace of the boathouse, against the command and ezdxf.</summary>
public class SampleHostTests
{
    private static string CoreFile { get; } = Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll");

    private static string Brace { get; } = Repo.Path("samples", "boathouse", "brace.dxf");

    // Select in a DXF, plan, preview drawn back, program written and proven.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_brace_is_cut_from_its_drawing(bool python)
    {
        using var scratch = new Scratch();
        string job = scratch.Write("job.toml", BraceJob());
        string copy = scratch.Path("copy.dxf"), programs = scratch.Path("programs");
        string said = Run(python, 0, Brace, copy, job, programs);
        Assert.Contains("lines and arcs drawn", said, StringComparison.Ordinal);

        // The proof, once more by the command, on what lies in the folder and from the drawing itself.
        JsonNode proof = JsonNode.Parse(File.ReadAllText(Path.Combine(programs, "proof.json")))!;
        Assert.NotEmpty(proof["programs"]!.AsArray());
        foreach (JsonNode? program in proof["programs"]!.AsArray())
        {
            string name = program!["file"]!.GetValue<string>();
            Assert.True(program["proof"]!["passed"]!.GetValue<bool>());
            Assert.Equal(0, Command.Run("prove", Path.Combine(programs, name), "--job", Repo.Path("samples", "boathouse", "brace.toml")).Code);
        }

        JsonNode audit = Audit(copy);
        Assert.Empty(audit["faults"]!.AsArray());
        Assert.Equal(4, audit["units"]!.GetValue<int>());
        Dictionary<string, int> layers = audit["layers"]!.AsObject().ToDictionary(l => l.Key, l => l.Value!.GetValue<int>(), StringComparer.Ordinal);
        string[] declared = [.. audit["declared"]!.AsArray().Select(l => l!.GetValue<string>())];
        Assert.All(layers.Keys, l => Assert.Contains(l, declared));
        Assert.Contains(layers.Keys, l => l.StartsWith("toolpath-p1-", StringComparison.Ordinal) && l.EndsWith("-finish", StringComparison.Ordinal));
        int drawn = layers.Where(l => l.Key.StartsWith("toolpath-", StringComparison.Ordinal)).Sum(l => l.Value);
        Assert.Contains(drawn.ToString(CultureInfo.InvariantCulture) + " lines and arcs drawn", said, StringComparison.Ordinal);

        // What the person had drawn is still there.
        JsonObject before = Audit(Brace)["layers"]!.AsObject();
        Assert.Equal(before.Sum(l => l.Value!.GetValue<int>()), layers.Values.Sum() - drawn);
    }

    // What is proven above against the brace's own job is cut by the same words.
    [Fact]
    public void The_job_for_a_selection_is_that_of_the_brace()
    {
        static string[] Words(string text) => [.. text.Split('\n').Where(l => !l.StartsWith('#') && l.Length > 0)];
        string brace = File.ReadAllText(Repo.Path("samples", "boathouse", "brace.toml"));
        Assert.Equal(Words(brace.Replace("\"brace.dxf\"", "\"@selection\"", StringComparison.Ordinal)), Words(BraceJob()));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_stop_is_shown_and_nothing_is_written(bool python)
    {
        using var scratch = new Scratch();
        string job = scratch.Write("job.toml", BraceJob().Replace("tab-length = 6", "tab-length = 500", StringComparison.Ordinal));
        string said = Run(python, 1, Brace, scratch.Path("copy.dxf"), job, scratch.Path("programs"));
        Assert.Contains("stop: ", said, StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch.Path("programs")));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_cannot_be_read_is_told(bool python)
    {
        using var scratch = new Scratch();
        string job = scratch.Write("job.toml", BraceJob());
        string said = Run(python, 2, scratch.Write("rubbish.dxf", "rubbish"), scratch.Path("copy.dxf"), job, scratch.Path("programs"));
        Assert.DoesNotContain("Traceback", said, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", said, StringComparison.Ordinal);
        Assert.Equal("job.toml rubbish.dxf", Scratch.Names(scratch.Root));
    }

    // The core's input closes with the host, however that ends.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_host_that_is_killed_leaves_no_core_behind(bool python)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The stand-in for the core's file is a Unix shell script.");
        using var scratch = new Scratch();
        string job = scratch.Write("job.toml", BraceJob());
        string id = scratch.Path("id");
        string core = scratch.Write("core", $"#!/bin/sh\necho $$ > {id}.new\nmv {id}.new {id}\nexec dotnet exec {CoreFile} host\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(core, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        }

        using Process host = Process.Start(Start(python, Brace, scratch.Path("copy.dxf"), job, scratch.Path("programs"), core))!;
        _ = host.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        Assert.True(SpinWait.SpinUntil(() => File.Exists(id), TimeSpan.FromSeconds(60)));
        host.Kill();
        host.WaitForExit();
        string running = "/proc/" + File.ReadAllText(id).Trim();
        Assert.True(SpinWait.SpinUntil(() => !Directory.Exists(running), TimeSpan.FromSeconds(60)), "The core still runs.");
    }

    private static string BraceJob() => File.ReadAllText(Repo.Path("samples", "hosts", "selection.toml"));

    private static JsonNode Audit(string file) => JsonNode.Parse(OutsideTool.Python("dxf_audit.py", file, "ezdxf"))!;

    private static string Run(bool python, int code, string drawing, string copy, string job, string programs)
    {
        if (python)
        {
            // Says what is missing where it is.
            OutsideTool.Python("dxf_audit.py", Brace, "ezdxf");
        }

        using Process host = Process.Start(Start(python, drawing, copy, job, programs, CoreFile))!;
        Task<string> error = host.StandardError.ReadToEndAsync();
        string said = host.StandardOutput.ReadToEnd() + error.Result;
        host.WaitForExit();
        Assert.True(host.ExitCode == code, said);
        return said;
    }

    private static ProcessStartInfo Start(bool python, string drawing, string copy, string job, string programs, string core)
    {
        string[] arguments = python
            ? ["/usr/bin/python3", Repo.Path("samples", "hosts", "python", "toolpath_host.py"), drawing, copy]
            : ["dotnet", "exec", Path.Combine(AppContext.BaseDirectory, "drawing-host.dll"), drawing, "--out", copy];
        return new ProcessStartInfo(arguments[0], [.. arguments[1..], "--job", job, "--programs", programs, "--core", core])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
    }
}
