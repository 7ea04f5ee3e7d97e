using System.IO.Compression;
using ToolpathForge.Tests.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Native;

/// <summary>Each package, from a local feed alone, in a project that knows nothing of this checkout.</summary>
[Trait("Published", "yes")]
public class PackageTests
{
    private const string CoreProgram = """
        using ToolpathForge.Jobs;
        using ToolpathForge.Planning;
        using ToolpathForge.Proof;

        JobReading reading = JobReader.Read(System.IO.File.ReadAllText(args[0]), "porch.toml", name => null);
        Plan plan = Planner.Plan(reading.Job!);
        foreach (PlannedProgram program in plan.Programs) { System.Console.WriteLine(program.FileName + " " + program.Text.Length); }
        System.Console.WriteLine(FaultCodes.All.Length > 0);
        """;

    private const string PluginProgram = """
        using System;
        using ToolpathForge.Plugin.Client;
        using ToolpathForge.Plugin.Contract;

        using var client = new CoreClient(() => new CoreCommand("dotnet", new[] { "exec", args[0], "host" }), "a consumer");
        Console.WriteLine(client.Initialize(default).Contract);
        Console.WriteLine(client.Plan(new PlanRequest { Job = System.IO.File.ReadAllText(args[1]) }, default).Plan);
        """;

    [Fact]
    public void A_new_project_plans_the_sample_with_the_core()
    {
        string feed = Feed();
        using var scratch = new Scratch();
        string[] said = Consume(scratch, feed, "ToolpathForge.Core", CoreProgram, Command.Sample).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal([.. Planning.SamplePlan.Plan.Programs.Select(p => FormattableString.Invariant($"{p.FileName} {p.Text.Length}")), "True"], said);
    }

    [Fact]
    public void A_new_project_asks_a_core_through_the_plugin()
    {
        string feed = Feed();
        using var scratch = new Scratch();
        Assert.Equal("1.0\np1\n", Consume(scratch, feed, "ToolpathForge.Plugin", PluginProgram, Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll"), Command.Sample));
    }

    [Fact]
    public void The_tool_is_installed_from_a_local_feed_and_runs()
    {
        string feed = Feed();
        using var scratch = new Scratch();
        Configure(scratch, feed);
        NativeCommand.Ran installed = NativeCommand.Run("dotnet", scratch.Root, null, "tool", "install", "ToolpathForge", "--tool-path", scratch.Path("tools"), "--configfile", scratch.Path("nuget.config"));
        Assert.True(installed.Code == 0, installed.Out + installed.Error);
        NativeCommand.Ran ran = NativeCommand.Run(scratch.Path("tools", "toolpathforge"), scratch.Root, null, "list", "bits");
        Assert.Equal((0, Command.Run("list", "bits").Out), (ran.Code, ran.Out));
    }

    [Theory]
    [InlineData("ToolpathForge.Core", "lib/net10.0/ToolpathForge.Core.dll")]
    [InlineData("ToolpathForge.Proof", "lib/net10.0/ToolpathForge.Proof.dll")]
    [InlineData("ToolpathForge.Plugin", "lib/netstandard2.0/ToolpathForge.Plugin.dll")]
    public void Each_carries_readme_words_licence_documentation_and_symbols(string id, string assembly)
    {
        string feed = Feed();
        using ZipArchive package = ZipFile.OpenRead(Directory.GetFiles(feed, id + ".?.*.nupkg").Single());
        string[] names = [.. package.Entries.Select(e => e.FullName)];
        Assert.All((string[])[assembly, assembly.Replace(".dll", ".xml", StringComparison.Ordinal), "README.md"], name => Assert.Contains(name, names));
        using var reader = new StreamReader(package.GetEntry(id + ".nuspec")!.Open());
        string words = reader.ReadToEnd();
        Assert.All(
            (string[])["<license type=\"expression\">MIT</license>", "<readme>README.md</readme>", "<description>", "<tags>"], part => Assert.Contains(part, words, StringComparison.Ordinal));
        using ZipArchive symbols = ZipFile.OpenRead(Directory.GetFiles(feed, id + ".?.*.snupkg").Single());
        Assert.Contains(assembly.Replace(".dll", ".pdb", StringComparison.Ordinal), symbols.Entries.Select(e => e.FullName));
    }

    private static string Feed()
    {
        string? folder = Environment.GetEnvironmentVariable("TOOLPATHFORGE_PACKAGES");
        if (folder is not null && Directory.Exists(folder))
        {
            return folder;
        }

        const string Message = "There are no packages to try: bash tests/run.sh makes them.";
        Assert.SkipUnless(Environment.GetEnvironmentVariable("CI") == "true", Message);
        throw new InvalidOperationException(Message);
    }

    // The feed is the only source. What our packages depend on is taken from where this checkout's own restore has put it, so that nothing is fetched; ours go into
    // a folder of their own, since a version once seen is never looked at again.
    private static void Configure(Scratch scratch, string feed)
    {
        string known = Environment.GetEnvironmentVariable("NUGET_PACKAGES") ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        scratch.Write("nuget.config", $"""
            <configuration>
              <config><add key="globalPackagesFolder" value="{scratch.Path("packages")}" /></config>
              <fallbackPackageFolders><clear /><add key="known" value="{known}" /></fallbackPackageFolders>
              <packageSources><clear /><add key="local" value="{feed}" /></packageSources>
            </configuration>
            """);
    }

    private static string Consume(Scratch scratch, string feed, string id, string program, params string[] args)
    {
        Configure(scratch, feed);
        string version = Path.GetFileNameWithoutExtension(Directory.GetFiles(feed, id + ".?.*.nupkg").Single())[(id.Length + 1)..];
        scratch.Write("consumer/consumer.csproj", $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework></PropertyGroup>
              <ItemGroup><PackageReference Include="{id}" Version="{version}" /></ItemGroup>
            </Project>
            """);
        scratch.Write("consumer/Program.cs", program);
        NativeCommand.Ran ran = NativeCommand.Run("dotnet", scratch.Path("consumer"), null, ["run", "-v", "quiet", "-p:UseSharedCompilation=false", "--", .. args]);
        Assert.True(ran.Code == 0, ran.Out + ran.Error);
        return ran.Out;
    }
}
