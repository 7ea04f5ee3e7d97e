using System.Diagnostics;
using ToolpathForge.Cli;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>What only shows in a process of its own: real streams, real signals, a real kill.</summary>
public class ProcessTests
{
    private static void Signal(Process process, string signal)
    {
        using var kill = Process.Start("/bin/sh", ["-c", FormattableString.Invariant($"kill -{signal} {process.Id}")]);
        kill.WaitForExit();
    }

    /// <summary>The sample with nothing but rafter tails.</summary>
    private static string Tails(int count)
    {
        int first = SamplePlan.Text.IndexOf("[[make]]", StringComparison.Ordinal);
        string make = SamplePlan.Text[first..SamplePlan.Text.IndexOf("# Beam ends", StringComparison.Ordinal)];
        return SamplePlan.Text[..first] + string.Concat(Enumerable.Range(0, count).Select(i => make.Replace("rafter-tail", FormattableString.Invariant($"tail-{i}"), StringComparison.Ordinal)));
    }

    private static bool WaitFor(Func<bool> seen, Process process)
    {
        while (!seen())
        {
            if (process.HasExited)
            {
                return seen();
            }

            Thread.Sleep(1);
        }

        return true;
    }

    [Fact]
    public void Killed_while_it_writes_it_leaves_old_or_new_and_the_next_run_clears_up()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Signals are sent by a Unix shell.");
        using var scratch = new Scratch();
        string before = scratch.Write("before.toml", Tails(1));
        string job = scratch.Write("porch.toml", Tails(1).Replace("depth = \"4 1/4\"", "depth = \"4\"", StringComparison.Ordinal));
        string folder = scratch.Path("out");
        Assert.Equal(0, Command.Run("cut", before, "--out", folder).Code);
        SortedDictionary<string, string?> old = Scratch.Snapshot(folder);
        Assert.Equal(0, Command.Run("cut", job, "--out", scratch.Path("expected")).Code);
        SortedDictionary<string, string?> fresh = Scratch.Snapshot(scratch.Path("expected"));
        int inTheMiddle = 0;
        foreach (string sign in (string[])[".out.toolpathforge-new", ".out.toolpathforge-new/run-sheet.html", ".out.toolpathforge-old"])
        {
            using Process process = Command.Start(scratch.Root, "cut", "porch.toml", "--out", "out", "--replace");
            string path = scratch.Path(sign);
            if (WaitFor(() => Directory.Exists(path) || File.Exists(path), process))
            {
                process.Kill();
            }

            process.WaitForExit();
            string where = Directory.Exists(folder) ? folder : scratch.Path(".out.toolpathforge-old");
            SortedDictionary<string, string?> now = Scratch.Snapshot(where);
            Assert.True(now.SequenceEqual(old) || now.SequenceEqual(fresh), $"killed at {sign}: {string.Join(", ", now.Keys)}");
            inTheMiddle += Directory.Exists(scratch.Path(".out.toolpathforge-new")) || Directory.Exists(scratch.Path(".out.toolpathforge-old")) ? 1 : 0;

            // The next run, of the job as it was, finds its way from there.
            Assert.Equal(0, Command.Run("cut", before, "--out", folder, "--replace").Code);
            Assert.Equal(old, Scratch.Snapshot(folder));
            Assert.Equal("before.toml expected out porch.toml", Scratch.Names(scratch.Root));
        }

        Assert.True(inTheMiddle > 0, "No kill hit the middle of the writing.");
    }

    [Theory]
    [InlineData("INT")]
    [InlineData("TERM")]
    public void Interrupted_it_ends_with_130_and_leaves_no_folder(string signal)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Signals are sent by a Unix shell.");
        using var scratch = new Scratch();

        // Hundreds of tails keep it at work for seconds; by the time it has used half a second of the processor it is past its start.
        scratch.Write("porch.toml", Tails(400));
        using Process process = Command.Start(scratch.Root, "cut", "porch.toml", "--out", "out", "--replace");
        Assert.True(WaitFor(() => !process.HasExited && process.TotalProcessorTime.TotalSeconds > 0.5, process));
        Signal(process, signal);
        string error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(130, process.ExitCode);
        Assert.Equal("Interrupted. Nothing was half written.\n", error);
        Assert.Equal("porch.toml", Scratch.Names(scratch.Root));
    }

    [Fact]
    public void Piped_it_prints_plain_text_in_utf_8_and_no_progress()
    {
        using var scratch = new Scratch();
        scratch.Write("porch.toml", SamplePlan.Text.Replace("Boathouse porch\"", "Bootshäuschen ½\"", StringComparison.Ordinal).Replace("run = \"9\"", "run = \"nine\"", StringComparison.Ordinal));
        Command.Ran ran = Command.RunApart(scratch.Root, "check", "porch.toml");
        Assert.Equal(2, ran.Code);
        Assert.StartsWith("problem: porch.toml:", ran.Error, StringComparison.Ordinal);
        Assert.DoesNotContain('\e', ran.Error);
        Assert.DoesNotContain('\r', ran.Error);
        scratch.Write("porch.toml", SamplePlan.Text.Replace("Boathouse porch\"", "Bootshäuschen ½\"", StringComparison.Ordinal));
        ran = Command.RunApart(scratch.Root, "check", "porch.toml");
        Assert.Equal("", ran.Error);
        Assert.StartsWith("Bootshäuschen ½: on ", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_folder_one_stands_in_is_not_pulled_away()
    {
        using var scratch = new Scratch();
        scratch.Write("porch.toml", Tails(1));
        Directory.CreateDirectory(scratch.Path("out"));
        Command.Ran ran = Command.RunApart(scratch.Path("out"), "cut", "../porch.toml", "--out", ".");
        Assert.Equal(2, ran.Code);
        Assert.Contains(". is the folder you are in", ran.Error, StringComparison.Ordinal);
        Assert.Equal("", Scratch.Names(scratch.Path("out")));
    }

    [Fact]
    public void On_a_screen_work_of_over_a_second_shows_its_stage_and_takes_it_off_again()
    {
        using var error = new StringWriter { NewLine = "\n" };
        using (var stages = new Stages(new Terminal(TextWriter.Null, error, ErrorIsScreen: true, Colour: false)))
        {
            stages.Begin("toolpaths");

            // A second on an idle machine; on a busy one the timer comes later, and tells of more seconds.
            for (int i = 0; i < 600 && error.GetStringBuilder().Length == 0; i++)
            {
                Thread.Sleep(100);
            }

            stages.Begin("proof");
        }

        string shown = error.ToString();
        Assert.Matches("^\rtoolpaths … [1-9][0-9]? s\e\\[K", shown);
        Assert.EndsWith("\r\e[K", shown, StringComparison.Ordinal);

        using var quiet = new StringWriter();
        using (var stages = new Stages(new Terminal(TextWriter.Null, quiet, ErrorIsScreen: true, Colour: false)))
        {
            stages.Begin("toolpaths");
        }

        Assert.Equal("", quiet.ToString());
    }
}
