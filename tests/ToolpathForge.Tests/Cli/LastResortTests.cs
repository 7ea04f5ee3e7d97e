using System.Text;
using ToolpathForge.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

public class LastResortTests
{
    /// <summary>Fails like a fault in the program would: with an exception that nobody expects.</summary>
    private sealed class Faulty(Exception fault) : TextWriter
    {
        public override Encoding Encoding => Encoding.UTF8;

        public override void Write(char value) => throw fault;
    }

    [Fact]
    public void A_fault_of_our_own_is_told_without_a_stack_trace()
    {
        using var error = new StringWriter { NewLine = "\n" };
        int code = CommandLine.Run(["--help"], new Terminal(new Faulty(new InvalidOperationException("A wheel came off.")), error, false, false), CancellationToken.None);
        Assert.Equal(70, code);
        string text = error.ToString();
        Assert.Contains("fault of its own", text, StringComparison.Ordinal);
        Assert.Contains("A wheel came off.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
        Assert.Equal(2, text.Count(c => c == '\n'));
    }

    [Fact]
    public void Even_when_nothing_can_be_printed_the_exit_code_tells()
    {
        var broken = new Faulty(new IOException("Broken pipe"));
        Assert.Equal(70, CommandLine.Run(["--help"], new Terminal(broken, broken, false, false), CancellationToken.None));
    }

    [Fact]
    public void A_full_disk_under_the_standard_output_is_told()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "This system has no device that is always full.");
        using var scratch = new Scratch();
        using var process = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo("/bin/sh")
        {
            ArgumentList = { "-c", $"dotnet exec '{Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll")}' --help > /dev/full" },
            RedirectStandardError = true,
            WorkingDirectory = scratch.Root,
        })!;
        string error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(70, process.ExitCode);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }
}
