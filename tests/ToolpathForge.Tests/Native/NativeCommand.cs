using System.Diagnostics;
using System.Text;

namespace ToolpathForge.Tests.Native;

/// <summary>The executable compiled natively, which tests/run.sh builds (scripts/native.sh) and names in TOOLPATHFORGE_NATIVE.</summary>
internal static class NativeCommand
{
    internal sealed record Ran(int Code, string Out, string Error);

    /// <summary>Its path. Missing it fails in CI; elsewhere the test is skipped and says what to do.</summary>
    internal static string Executable()
    {
        string? path = Environment.GetEnvironmentVariable("TOOLPATHFORGE_NATIVE");
        if (path is not null && File.Exists(path))
        {
            return path;
        }

        const string Message = "There is no native executable: bash tests/run.sh builds it. It needs clang and zlib1g-dev (Debian), or Xcode's command line tools.";
        Assert.SkipUnless(Environment.GetEnvironmentVariable("CI") == "true", Message);
        throw new InvalidOperationException(Message);
    }

    /// <summary>Runs it in a folder, with both streams piped.</summary>
    internal static Ran Run(string executable, string folder, string? input, params string[] args)
    {
        var start = new ProcessStartInfo(executable, args)
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = new UTF8Encoding(false),
            StandardErrorEncoding = new UTF8Encoding(false),
        };
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        process.WaitForExit();
        return new Ran(process.ExitCode, output.Result, error.Result);
    }
}
