using System.Diagnostics;
using System.Text;
using ToolpathForge.Tests.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Host;

/// <summary>The service as a process of its own: its streams, its end, its parent.</summary>
public class HostProcessTests
{
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(30);

    private static Process Start(Scratch scratch) => Command.StartServing(scratch.Root);

    [Fact]
    public void It_ends_when_its_input_ends_after_the_last_reply()
    {
        using var scratch = new Scratch();
        using Process process = Start(scratch);
        process.StandardInput.Write("""{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"protocol":"1"}}""" + "\n");
        process.StandardInput.Close();
        string said = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(Soon));
        Assert.Equal((0, ""), (process.ExitCode, process.StandardError.ReadToEnd()));
        Assert.Contains("\"methods\":[", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Headers_are_answered_with_headers()
    {
        using var scratch = new Scratch();
        using Process process = Start(scratch);
        const string Message = """{"jsonrpc":"2.0","id":"é","method":"initialize","params":{"protocol":"1"}}""";
        byte[] bytes = Encoding.UTF8.GetBytes(Message);
        Stream to = process.StandardInput.BaseStream;
        to.Write(Encoding.ASCII.GetBytes(FormattableString.Invariant($"Content-Length: {bytes.Length}\r\n\r\n")));
        to.Write(bytes);
        to.Flush();
        process.StandardInput.Close();
        using var said = new MemoryStream();
        process.StandardOutput.BaseStream.CopyTo(said);
        string text = Encoding.UTF8.GetString(said.ToArray());
        int body = text.IndexOf("\r\n\r\n", StringComparison.Ordinal) + 4;
        Assert.Equal(FormattableString.Invariant($"Content-Length: {Encoding.UTF8.GetByteCount(text[body..])}\r\n\r\n"), text[..body]);
        Assert.EndsWith("\"id\":\"é\"}", text, StringComparison.Ordinal);
    }

    // The parent's end is seen although the service's own streams stay open.
    [Fact]
    public void It_ends_when_the_process_it_was_told_of_has_ended()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The stand-in for a parent is a Unix shell.");
        using var scratch = new Scratch();
        using Process parent = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", "read line"]) { RedirectStandardInput = true })!;
        using Process process = Start(scratch);
        process.StandardInput.Write("""{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"protocol":"1","parent":ID}}""".Replace("ID", parent.Id.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal) + "\n");
        process.StandardInput.Flush();
        Assert.Contains("\"result\"", process.StandardOutput.ReadLine(), StringComparison.Ordinal);
        Assert.False(process.HasExited);
        parent.StandardInput.Close();
        parent.WaitForExit();
        Assert.True(process.WaitForExit(Soon), "The service outlived the process it was told of.");
        Assert.Equal(0, process.ExitCode);
    }

    [Fact]
    public void Words_after_host_are_refused_in_words()
    {
        Command.Ran ran = Command.Run("host", "porch.toml");
        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains("host takes no name", ran.Error, StringComparison.Ordinal);
    }
}
