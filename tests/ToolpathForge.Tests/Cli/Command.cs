using System.Diagnostics;
using System.Text;
using ToolpathForge.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cli;

/// <summary>Runs the command and hands back what it printed.</summary>
internal static class Command
{
    internal sealed record Ran(int Code, string Out, string Error);

    /// <summary>In this process, as if both streams were piped.</summary>
    internal static Ran Run(params string[] args) => Run(CancellationToken.None, args);

    internal static Ran Run(CancellationToken cancel, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int code = CommandLine.Run(args, new Terminal(output, error, ErrorIsScreen: false, Colour: false), cancel);
        string all = output.ToString() + error;
        Assert.DoesNotContain("   at ", all, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", all, StringComparison.Ordinal);
        return new Ran(code, output.ToString(), error.ToString());
    }

    /// <summary>In a process of its own, in a folder.</summary>
    internal static Process Start(string folder, params string[] args) => Start(folder, false, args);

    /// <summary>The service in a process of its own, with its input open.</summary>
    internal static Process StartServing(string folder) => Start(folder, true, "host");

    private static Process Start(string folder, bool input, params string[] args)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardInput = input,
            StandardInputEncoding = input ? new UTF8Encoding(false) : null,
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = new UTF8Encoding(false),
            StandardErrorEncoding = new UTF8Encoding(false),
        };
        start.ArgumentList.Add("exec");
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll"));
        foreach (string arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        return Process.Start(start)!;
    }

    internal static Ran RunApart(string folder, params string[] args)
    {
        using Process process = Start(folder, args);
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        process.WaitForExit();
        return new Ran(process.ExitCode, output.Result, error.Result);
    }

    /// <summary>The sample job of the repository.</summary>
    internal static string Sample => Repo.Path("samples", "boathouse", "boathouse.toml");
}
