using System.Diagnostics;

namespace ToolpathForge.Tests.Support;

/// <summary>
/// Runs reference libraries from outside the project. A missing one fails the test in CI and names what to install elsewhere; it never passes silently.
/// </summary>
internal static class OutsideTool
{
    /// <summary>Runs tests/outside/NAME with Debian's own python3 (the packages live there), feeds it text and hands back what it printed.</summary>
    internal static string Python(string script, string input, params string[] modules)
    {
        const string Interpreter = "/usr/bin/python3";
        Need(File.Exists(Interpreter), "python3");
        (int exit, string output, string error, string? missing) = PythonProcesses.Ask(Interpreter, Repo.Path("tests", "outside", script), input, modules);
        Need(missing is null, $"python3-{missing}");
        Assert.True(exit == 0, $"{script} ended with {exit}: {error}");
        return output;
    }

    /// <summary>Runs a program of the system and hands back exit code and output.</summary>
    internal static (int Exit, string Output, string Error) Program(string name, string package, params string[] arguments)
    {
        string? path = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists);
        Need(path is not null, package);
        return Run(path!, arguments, "");
    }

    private static void Need(bool found, string package)
    {
        if (found)
        {
            return;
        }

        string message = $"An outside reference is missing: install the Debian package {package} (bash tests/run.sh does so where it may).";
        if (Environment.GetEnvironmentVariable("CI") == "true")
        {
            Assert.Fail(message);
        }

        Assert.Skip(message);
    }

    private static (int Exit, string Output, string Error) Run(string path, string[] arguments, string input)
    {
        var start = new ProcessStartInfo(path)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (string argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        process.WaitForExit();
        return (process.ExitCode, output.Result, error.Result);
    }
}
