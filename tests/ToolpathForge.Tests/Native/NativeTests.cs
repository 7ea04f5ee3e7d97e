using System.Security.Cryptography;
using ToolpathForge.Tests.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Native;

/// <summary>The native executable is the command: for every sample and every kind of answer the same code, the same text, the same files to the byte.</summary>
[Trait("Published", "yes")]
public class NativeTests
{
    /// <summary>Every job among the samples.</summary>
    public static TheoryData<string> Samples =>
        [.. Directory.EnumerateFiles(Repo.Path("samples", "boathouse"), "*.toml").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Samples))]
    public void Every_sample_is_cut_drawn_and_checked_to_the_same_bytes(string sample)
    {
        string native = NativeCommand.Executable();
        using var scratch = new Scratch();
        string job = Repo.Path("samples", "boathouse", sample);
        foreach (string[] args in (string[][])[["cut", job, "--out", "@cut"], ["draw", job, "--out", "@drawn", "--family"], ["check", job], ["check", job, "--json"]])
        {
            // The folder's name has the same length on both sides, so that tables are laid out alike.
            string[] To(string side) => [.. args.Select(a => a[0] == '@' ? scratch.Path(side, a[1..]) : a)];
            Command.Ran managed = Command.Run(To("by-runtime"));
            NativeCommand.Ran ran = NativeCommand.Run(native, scratch.Root, null, To("by-machine"));
            string Same(string told) => told.Replace("by-machine", "by-runtime", StringComparison.Ordinal);
            Assert.Equal((managed.Code, managed.Out, managed.Error), (ran.Code, Same(ran.Out), Same(ran.Error)));
        }

        SortedDictionary<string, string> files = Hashes(scratch.Path("by-runtime"));
        Assert.NotEmpty(files);
        Assert.Equal(files, Hashes(scratch.Path("by-machine")));
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("help", "cut")]
    [InlineData("list", "bits")]
    [InlineData("list", "lumber", "--json")]
    [InlineData("list", "panels")]
    [InlineData("list", "materials")]
    [InlineData("list", "machines")]
    [InlineData("list", "dialects", "--json")]
    [InlineData("list", "shapes")]
    [InlineData("lits")]
    [InlineData("check", "nowhere.toml")]
    [InlineData("check", "nowhere.toml", "--json")]
    [InlineData("trace", "@frame.dxf")]
    [InlineData("trace", "@plate-sizes.svg", "--json")]
    public void Every_kind_of_answer_is_the_same(params string[] args)
    {
        string native = NativeCommand.Executable();
        string[] words = [.. args.Select(a => a.StartsWith('@') ? Repo.Path("samples", "boathouse", a[1..]) : a)];
        using var scratch = new Scratch();
        Command.Ran managed = Command.Run(words);
        NativeCommand.Ran ran = NativeCommand.Run(native, scratch.Root, null, words);
        Assert.Equal((managed.Code, managed.Out, managed.Error), (ran.Code, ran.Out, ran.Error));
    }

    // Every line that the managed one answers; which answer comes first is nobody's promise.
    [Fact]
    public void The_service_answers_the_same()
    {
        string native = NativeCommand.Executable();
        string job = System.Text.Json.JsonSerializer.Serialize(SampleText);
        string input = string.Concat(
            """{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"protocol":"1","client":"test"}}""", "\n",
            """{"jsonrpc":"2.0","id":2,"method":"catalogue","params":{}}""", "\n",
            $$$"""{"jsonrpc":"2.0","id":3,"method":"plan","params":{"job":{{{job}}}}}""", "\n",
            """{"jsonrpc":"2.0","id":4,"method":"no-such","params":{}}""", "\n",
            "{", "\n");
        using var scratch = new Scratch();
        NativeCommand.Ran ran = NativeCommand.Run(native, scratch.Root, input, "host");
        NativeCommand.Ran managed = NativeCommand.Run("dotnet", scratch.Root, input, "exec", Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll"), "host");
        Assert.Equal((managed.Code, managed.Error), (ran.Code, ran.Error));
        static string[] Lines(string text) => [.. text.Split('\n').Order(StringComparer.Ordinal)];
        Assert.Equal(Lines(managed.Out), Lines(ran.Out));
        Assert.Contains(Lines(ran.Out), line => line.Contains("\"id\":3", StringComparison.Ordinal) && line.Contains("\"result\"", StringComparison.Ordinal));
    }

    // Catalogues are within it: alone in a folder with spaces, by a link, from any working folder.
    [Fact]
    public void It_needs_nothing_beside_it()
    {
        string native = NativeCommand.Executable();
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links are tried where anybody may make them.");
        using var scratch = new Scratch();
        string folder = Directory.CreateDirectory(scratch.Path("a folder", "with spaces")).FullName;
        string copy = Path.Combine(folder, "toolpathforge");
        File.Copy(native, copy);
        File.CreateSymbolicLink(scratch.Path("link"), copy);
        string expected = Command.Run("list", "bits").Out;
        foreach ((string executable, string from) in ((string, string)[])[(copy, "/"), (copy, scratch.Root), (scratch.Path("link"), "/"), (scratch.Path("link"), folder)])
        {
            NativeCommand.Ran ran = NativeCommand.Run(executable, from, null, "list", "bits");
            Assert.Equal((0, expected, ""), (ran.Code, ran.Out, ran.Error));
        }
    }

    private static string SampleText => File.ReadAllText(Command.Sample);

    private static SortedDictionary<string, string> Hashes(string folder) => new(
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .ToDictionary(f => Path.GetRelativePath(folder, f), f => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(f))), StringComparer.Ordinal),
        StringComparer.Ordinal);
}
