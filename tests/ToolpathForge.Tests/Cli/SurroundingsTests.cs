using System.Diagnostics;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>Surroundings that fail the command: each ends in a clear line, never in a stack trace.</summary>
public class SurroundingsTests
{
    private static readonly string s_command = $"dotnet exec '{Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll")}'";

    // The shell's convention: a reader that has had enough is no fault, whether it has read or not.
    [Theory]
    [InlineData("list lumber --json | head -c 1 >/dev/null; echo ${PIPESTATUS[0]}")]
    [InlineData("list bits | head -n 1 >/dev/null; echo ${PIPESTATUS[0]}")]
    [InlineData("list bits | true; echo ${PIPESTATUS[0]}")]
    public void A_closed_pipe_is_no_fault(string words) => Assert.Equal((0, "0\n", ""), Shell($"{s_command} {words}"));

    [Theory]
    [InlineData("/dev/full", "No space left on device")]
    [InlineData("&-", "")]
    public void Output_that_cannot_be_written_is_one_clear_finding(string to, string says)
    {
        (int code, string output, string error) = Shell($"{s_command} list bits >{to}");
        Assert.Equal((70, ""), (code, output));
        Assert.StartsWith("problem: What is printed cannot be written: " + says, error, StringComparison.Ordinal);
        Assert.Equal(2, error.TrimEnd('\n').Split('\n').Length);
    }

    // Nothing is kept in the home, nothing put into the folder of temporary files.
    [Theory]
    [InlineData("HOME=/proc/none")]
    [InlineData("HOME=")]
    [InlineData("TMPDIR=/nowhere")]
    public void It_needs_neither_home_nor_temporary_folder(string setting)
    {
        using var scratch = new Scratch();
        (int code, string output, string error) = Shell($"{setting} {s_command} cut '{Command.Sample}' --out '{scratch.Path("out")}'");
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("Written to", output, StringComparison.Ordinal);
        Assert.True(File.Exists(scratch.Path("out", "run-sheet.html")));
    }

    [Fact]
    public void A_place_where_nothing_can_be_made_is_named()
    {
        (int code, _, string error) = Shell($"{s_command} cut '{Command.Sample}' --out /proc/out");
        Assert.Equal(2, code);
        Assert.StartsWith("problem: The folder /proc/out cannot be written", error, StringComparison.Ordinal);
    }

    private static (int Code, string Out, string Error) Shell(string line)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Its streams are bent with a shell of Linux.");
        using Process process = Process.Start(new ProcessStartInfo("/bin/bash", ["-c", line]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }
}
