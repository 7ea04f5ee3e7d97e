using System.Collections.Immutable;
using System.Text;
using ToolpathForge.Findings;
using ToolpathForge.Service.Output;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Service;

public class OutputFolderTests
{
    private static readonly ImmutableArray<OutputFile> Files = [OutputFile.Text("tail.nc", "G0\n"), OutputFile.Text("drawings/tail.svg", "<svg/>")];

    private static OutputResult Write(string folder) => OutputFolder.Write(folder, Files, null, Disk.Real, CancellationToken.None);

    private static string Codes(OutputResult result) => string.Join(' ', result.Findings.Select(f => f.Kind.Code));

    [Fact]
    public void What_was_written_may_be_written_again_and_gives_the_same_bytes()
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("a", "out");
        OutputResult first = Write(folder);
        Assert.True(first.Written);
        Assert.Equal("drawings/tail.svg tail.nc", string.Join(' ', first.Files.Select(f => f.Name)));
        SortedDictionary<string, string?> once = Scratch.Snapshot(folder);
        Assert.True(Write(folder).Written);
        Assert.Equal(once, Scratch.Snapshot(folder));

        // SHA-256 of "G0\n", worked out with sha256sum.
        Assert.Contains("\"sha256\": \"3b7fe25639867d0e186bd77a042b8cfd7a1dc313b72ce8603a5681a9093ac19c\"", once["manifest.json"]!, StringComparison.Ordinal);
        Assert.EndsWith("}\n", once["manifest.json"]!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("notes.txt", "notes.txt")]
    [InlineData("drawings/mine.svg", "drawings/mine.svg")]
    [InlineData("photos/a.png", "photos/")]
    [InlineData(".hidden", ".hidden")]
    [InlineData("drawings/.DS_Store", "drawings/.DS_Store")]
    public void A_foreign_file_is_named_and_nothing_is_touched(string foreign, string named)
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("out");
        Assert.True(Write(folder).Written);
        scratch.Write("out/" + foreign, "mine");
        SortedDictionary<string, string?> before = Scratch.Snapshot(scratch.Root);
        OutputResult result = OutputFolder.Write(folder, [OutputFile.Text("other.nc", "")], null, Disk.Real, CancellationToken.None);
        Finding finding = Assert.Single(result.Findings);
        Assert.Equal("output-foreign-file", finding.Kind.Code);
        Assert.Contains(finding.Args, a => a.Name == "name" && a.Text == named);
        Assert.Empty(result.Files);
        Assert.Equal(before, Scratch.Snapshot(scratch.Root));
        Assert.Equal("output-foreign-file", Assert.Single(OutputFolder.Prepare(folder, null, Disk.Real)).Kind.Code);
    }

    [Fact]
    public void A_folder_of_somebody_elses_is_never_touched()
    {
        using var scratch = new Scratch();
        scratch.Write("out/a", "1");
        scratch.Write("out/manifest.json", "{\"kind\":\"something else\",\"format\":1,\"files\":[]}");
        SortedDictionary<string, string?> before = Scratch.Snapshot(scratch.Root);
        Assert.Equal("output-foreign-file output-foreign-file", Codes(Write(scratch.Path("out"))));
        Assert.Equal(before, Scratch.Snapshot(scratch.Root));
    }

    [Fact]
    public void The_folder_of_the_job_itself_is_refused()
    {
        using var scratch = new Scratch();
        scratch.Write("porch.toml", "format = 1");
        Assert.Equal("output-foreign-file", Codes(Write(scratch.Root)));
        Assert.True(Write(scratch.Path("out")).Written);
    }

    [Fact]
    public void An_edited_file_is_kept_and_a_deleted_one_is_no_hindrance()
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("out");
        Assert.True(Write(folder).Written);
        File.WriteAllText(scratch.Path("out", "tail.nc"), "G9\n");
        Assert.Equal("output-edited-file", Codes(Write(folder)));
        Assert.Equal("G9\n", File.ReadAllText(scratch.Path("out", "tail.nc")));
        File.Delete(scratch.Path("out", "tail.nc"));
        Assert.True(Write(folder).Written);
        Assert.Equal("G0\n", File.ReadAllText(scratch.Path("out", "tail.nc")));
    }

    [Theory]
    [InlineData("../tail.nc")]
    [InlineData("/etc/tail.nc")]
    [InlineData("drawings/../../x")]
    [InlineData("manifest.json")]
    [InlineData("C:\\x")]
    [InlineData("a//b")]
    [InlineData("")]
    public void A_manifest_that_names_what_lies_outside_is_no_manifest(string name)
    {
        using var scratch = new Scratch();
        string outside = scratch.Write("tail.nc", "mine");
        string text = $"{{\"kind\":\"toolpathforge-output\",\"format\":1,\"files\":[{{\"name\":\"{name.Replace("\\", "\\\\", StringComparison.Ordinal)}\",\"bytes\":4,\"sha256\":\"\"}}]}}";
        Assert.Null(Manifest.Read(Encoding.UTF8.GetBytes(text)));
        scratch.Write("out/manifest.json", text);
        Assert.Equal("output-foreign-file", Codes(Write(scratch.Path("out"))));
        Assert.True(File.Exists(outside));
        Assert.Throws<ArgumentException>(() => OutputFolder.Write(scratch.Path("new"), [OutputFile.Text(name, "")], null, Disk.Real, CancellationToken.None));
    }

    // What lies in a folder is a person's work of an afternoon: another job's, or another command's, goes only when that is said.
    [Fact]
    public void What_another_job_or_command_made_is_replaced_only_when_told()
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("out");
        OutputResult As(string made, string job, bool replace = false) =>
            OutputFolder.Write(folder, [OutputFile.Text("a.nc", $"{made} {job}")], OutputOwner.Of(made, job, replace), Disk.Real, CancellationToken.None);
        Assert.Empty(As(OutputOwner.Programs, "jobs/a.toml").Findings);
        Assert.Empty(As(OutputOwner.Programs, "elsewhere/a.toml").Findings);
        Assert.Equal("output-of-other", Codes(As(OutputOwner.Programs, "b.toml")));
        Assert.Equal("output-of-other", Codes(As(OutputOwner.Drawings, "a.toml")));
        Assert.Equal("output-of-other", Assert.Single(OutputFolder.Prepare(folder, OutputOwner.Of(OutputOwner.Drawings, "a.toml"), Disk.Real)).Kind.Code);
        Assert.Equal("programs elsewhere/a.toml", File.ReadAllText(Path.Combine(folder, "a.nc")));
        Assert.Empty(As(OutputOwner.Drawings, "b.toml", replace: true).Findings);
        Assert.Equal("drawings b.toml", File.ReadAllText(Path.Combine(folder, "a.nc")));

        // A folder of an earlier version does not say whose it is.
        Assert.Empty(OutputFolder.Write(scratch.Path("old"), [OutputFile.Text("a.nc", "")], null, Disk.Real, CancellationToken.None).Findings);
        Assert.Empty(OutputFolder.Prepare(scratch.Path("old"), OutputOwner.Of(OutputOwner.Trial, "c.toml"), Disk.Real));
    }

    [Fact]
    public void Names_that_differ_only_in_case_are_refused_because_some_disks_ignore_case()
    {
        using var scratch = new Scratch();
        Assert.Throws<ArgumentException>(() => OutputFolder.Write(scratch.Path("out"), [OutputFile.Text("a.nc", ""), OutputFile.Text("A.nc", "")], null, Disk.Real, CancellationToken.None));
        Assert.Empty(Directory.EnumerateFileSystemEntries(scratch.Root));
    }

    [Fact]
    public void A_link_to_a_folder_is_followed_and_stays_a_link()
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch.Path("real"));
        Directory.CreateSymbolicLink(scratch.Path("out"), scratch.Path("real"));
        Assert.True(Write(scratch.Path("out")).Written);
        Assert.NotNull(new DirectoryInfo(scratch.Path("out")).LinkTarget);
        Assert.True(File.Exists(scratch.Path("real", "tail.nc")));
        Assert.Equal("out real", Scratch.Names(scratch.Root));
    }

    [Fact]
    public void A_link_inside_the_folder_is_foreign_even_under_our_name()
    {
        using var scratch = new Scratch();
        Assert.True(Write(scratch.Path("out")).Written);
        string precious = scratch.Write("precious.nc", "G0\n");
        File.Delete(scratch.Path("out", "tail.nc"));
        File.CreateSymbolicLink(scratch.Path("out", "tail.nc"), precious);
        Assert.Equal("output-foreign-file", Codes(Write(scratch.Path("out"))));
        Assert.True(File.Exists(precious));
    }

    [Fact]
    public void Paths_that_cannot_be_a_folder_are_told_apart()
    {
        using var scratch = new Scratch();
        scratch.Write("file", "");
        Directory.CreateSymbolicLink(scratch.Path("nowhere"), scratch.Path("missing"));
        Assert.Equal("output-not-a-folder", Codes(Write(scratch.Path("file"))));
        Assert.Equal("output-cannot-write", Codes(Write(scratch.Path("file", "out"))));
        Assert.Equal("output-unusable-path", Codes(Write(scratch.Path("nowhere"))));
        Assert.Equal("output-unusable-path", Codes(Write(Path.GetPathRoot(scratch.Root)!)));
        Assert.Equal("output-cannot-write", Codes(Write("")));
        Assert.Equal("output-cannot-write", Codes(Write("a\0b")));
        Assert.Equal("output-cannot-write", Codes(Write(scratch.Path(new string('x', 250)))));
        Assert.Equal("file nowhere", Scratch.Names(scratch.Root));
    }

    [Fact]
    public void Two_runs_at_once_give_one_whole_result_and_one_refusal_or_two_whole_results()
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("out");
        for (int round = 0; round < 20; round++)
        {
            var results = new OutputResult[4];
            Parallel.For(0, results.Length, i =>
                results[i] = OutputFolder.Write(folder, [OutputFile.Text("a.nc", $"{i}"), OutputFile.Text("b.nc", $"{i}")], null, Disk.Real, CancellationToken.None));
            Assert.Contains(results, r => r.Written);
            Assert.All(results.Where(r => !r.Written), r => Assert.Equal("output-busy", Codes(r)));
            Assert.Equal(File.ReadAllText(Path.Combine(folder, "a.nc")), File.ReadAllText(Path.Combine(folder, "b.nc")));
            Assert.Equal("out", Scratch.Names(scratch.Root));
        }
    }

    [Fact]
    public void A_file_saved_into_the_folder_at_the_last_moment_is_kept()
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("out");
        Assert.True(Write(folder).Written);
        var disk = new Disk((what, path) =>
        {
            if (what == "rename" && path == folder)
            {
                File.WriteAllText(Path.Combine(folder, "late.txt"), "mine");
            }
        });
        OutputResult result = OutputFolder.Write(folder, [OutputFile.Text("other.nc", "")], null, disk, CancellationToken.None);
        Assert.Equal("output-foreign-file", Codes(result));
        Assert.Equal("mine", File.ReadAllText(Path.Combine(folder, "late.txt")));
        Assert.True(File.Exists(Path.Combine(folder, "tail.nc")));
        Assert.Equal("out", Scratch.Names(scratch.Root));
    }

    [Fact]
    public void Permissions_of_the_folder_stay_and_files_are_not_executable()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Windows has no such permissions.");
            return;
        }

        using var scratch = new Scratch();
        string folder = scratch.Path("out");
        Directory.CreateDirectory(folder);
        const UnixFileMode Shared = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute;
        File.SetUnixFileMode(folder, Shared);
        Assert.True(Write(folder).Written);
        Assert.Equal(Shared, File.GetUnixFileMode(folder));
        Assert.Equal(UnixFileMode.None, File.GetUnixFileMode(Path.Combine(folder, "tail.nc")) & (UnixFileMode.UserExecute | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute | UnixFileMode.OtherWrite));
    }
}
