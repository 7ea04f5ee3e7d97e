using ToolpathForge.Tests.Native;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>The README's commands run as they stand, one after another, beside the samples.</summary>
public class ReadmeTests
{
    [Fact]
    public void Every_command_of_the_readme_runs_as_it_stands()
    {
        string[] commands = [.. File.ReadLines(Repo.Path("README.md")).Where(l => l.StartsWith("    toolpathforge ", StringComparison.Ordinal)).Select(l => l.Trim().Split("  ")[0])];
        Assert.True(commands.Length >= 10, string.Join('\n', commands));
        using var scratch = new Scratch();
        foreach (string sample in Directory.EnumerateFiles(Repo.Path("samples", "boathouse")))
        {
            Directory.CreateDirectory(scratch.Path("samples", "boathouse"));
            File.Copy(sample, scratch.Path("samples", "boathouse", Path.GetFileName(sample)));
        }

        foreach (string command in commands)
        {
            // With nothing on its standard input, or the service would wait for requests.
            NativeCommand.Ran ran = NativeCommand.Run("dotnet", scratch.Root, null, ["exec", Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll"), .. command.Split(' ')[1..]]);
            Assert.True(ran.Code == 0, $"{command} ends with {ran.Code}: {ran.Error}");
        }

        Assert.True(File.Exists(scratch.Path("out", "run-sheet.html")));
    }

    // The function that the README gives for bash, as it stands.
    [Fact]
    public void Bash_completes_with_the_readmes_function()
    {
        string[] lines = [.. File.ReadLines(Repo.Path("README.md")).Select(l => l.Trim()).Where(l => l.StartsWith("_toolpathforge()", StringComparison.Ordinal) || l.StartsWith("complete ", StringComparison.Ordinal))];
        Assert.Equal(2, lines.Length);
        string command = $"toolpathforge() {{ dotnet exec '{Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll")}' \"$@\"; }}";
        (int exit, string output, string error) = OutsideTool.Program(
            "bash", "bash", "-c", $"{command}\n{string.Join('\n', lines)}\nCOMP_LINE='toolpathforge list ma' COMP_POINT=21 COMP_WORDS=(toolpathforge list ma) COMP_CWORD=2\n_toolpathforge\necho \"${{COMPREPLY[@]}}\"");
        Assert.Equal((0, "machines materials\n", ""), (exit, output, error));
    }

    [Theory]
    [InlineData("toolpathforge ", "check cut draw host list new prove trace trial")]
    [InlineData("toolpathforge c", "check cut")]
    [InlineData("toolpathforge new --u", "--unit")]
    [InlineData("toolpathforge new --unit ", "in mm")]
    [InlineData("toolpathforge cut porch.toml --", "--help --json --out --replace --timings")]
    [InlineData("toolpathforge list ", "bits dialects figures lumber machines materials panels shapes")]
    [InlineData("toolpathforge lits ", "")]
    [InlineData("", "")]
    public void A_line_is_completed_with_what_may_stand_there(string line, string expected)
    {
        Command.Ran ran = Command.Run(FormattableString.Invariant($"[suggest:{line.Length}]"), line);
        string[] words = ran.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Equal(expected, string.Join(' ', words.Where(w => expected.Contains(w, StringComparison.Ordinal) || !w.StartsWith('-'))));
    }
}
