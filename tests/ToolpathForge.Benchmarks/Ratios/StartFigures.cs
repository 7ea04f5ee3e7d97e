using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;

namespace ToolpathForge.Benchmarks.Ratios;

/// <summary>
/// The command as a person meets it: a whole process from its start to its end, against the smallest program there is. Both are published
/// compiled ahead, into a folder of their own, so that nothing of the checkout changes.
/// </summary>
internal static class StartFigures
{
    private const int Runs = 15;

    private const string HelloProject = """
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <OutputType>Exe</OutputType>
            <TargetFramework>net10.0</TargetFramework>
            <PublishReadyToRun>true</PublishReadyToRun>
            <InvariantGlobalization>true</InvariantGlobalization>
            <TieredPGO>false</TieredPGO>
          </PropertyGroup>
        </Project>
        """;

    internal static IEnumerable<Func<Figure>> All()
    {
        yield return () => With((ours, baseline) => Compared("check of the sample, whole process", 4, () => Run(ours, "check", PlanFigures.Sample()), () => Run(baseline)));
        yield return () => With((ours, baseline) => Compared("service, from its start to the first reply", 5, () => FirstReply(ours), () => Run(baseline)));
    }

    private static Figure With(Func<string, string, Figure> measure)
    {
        string root = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(PlanFigures.Sample())!, "..", ".."));
        DirectoryInfo work = Directory.CreateTempSubdirectory("toolpathforge-ratios-");
        try
        {
            string hello = Path.Combine(work.FullName, "hello-source");
            Directory.CreateDirectory(hello);
            File.WriteAllText(Path.Combine(hello, "hello.csproj"), HelloProject);
            File.WriteAllText(Path.Combine(hello, "Hello.cs"), "System.Console.WriteLine(\"Hello\");\n");
            string baseline = Publish(Path.Combine(hello, "hello.csproj"), work.FullName, "hello");
            string ours = Publish(Path.Combine(root, "src", "ToolpathForge.Cli", "ToolpathForge.Cli.csproj"), work.FullName, "toolpathforge");
            return measure(ours, baseline);
        }
        finally
        {
            work.Delete(recursive: true);
        }
    }

    private static double FirstReply(string file)
    {
        var start = new ProcessStartInfo(file, ["host"]) { RedirectStandardInput = true, RedirectStandardOutput = true };
        long from = Stopwatch.GetTimestamp();
        using Process process = Process.Start(start)!;
        process.StandardInput.Write(HostFigures.Hello + "\n");
        process.StandardInput.Flush();
        string? reply = process.StandardOutput.ReadLine();
        double time = Stopwatch.GetElapsedTime(from).TotalMilliseconds;
        process.StandardInput.Close();
        process.WaitForExit();
        return reply?.Contains("\"result\"", StringComparison.Ordinal) == true ? time : throw new InvalidOperationException("The service did not answer: " + reply);
    }

    // In turns, so that whatever else the machine does burdens both; the first runs fetch the files from the disk.
    private static Figure Compared(string name, double goal, Func<double> ours, Func<double> baseline)
    {
        (_, _) = (ours(), baseline());
        double[] times = new double[Runs], least = new double[Runs], ratios = new double[Runs];
        for (int i = 0; i < Runs; i++)
        {
            (times[i], least[i]) = (ours(), baseline());
            ratios[i] = times[i] / least[i];
        }

        Array.Sort(times);
        Array.Sort(least);
        Array.Sort(ratios);
        return new Figure(
            name, ratios[Runs / 2], "x", "hello world, both compiled ahead", goal, false,
            string.Create(CultureInfo.InvariantCulture, $"{times[Runs / 2]:0} ms against {least[Runs / 2]:0} ms"));
    }

    private static string Publish(string project, string work, string name)
    {
        string system = OperatingSystem.IsWindows() ? "win" : OperatingSystem.IsMacOS() ? "osx" : "linux";
        string target = system + "-" + RuntimeInformation.OSArchitecture.ToString().ToLowerInvariant();
        string output = Path.Combine(work, name);

        // Lock files hold no packages of a named system; the switch leaves them as they are.
        Run(
            "dotnet", "publish", project, "-c", "Release", "-r", target, "--self-contained", "false", "-o", output, "--artifacts-path", Path.Combine(work, name + "-built"),
            "-p:RestorePackagesWithLockFile=false", "-p:NuGetLockFilePath=none.lock.json", "-nologo", "-v", "quiet", "-m:1", "-nodeReuse:false");
        return Path.Combine(output, OperatingSystem.IsWindows() ? name + ".exe" : name);
    }

    private static double Run(string file, params string[] arguments)
    {
        var start = new ProcessStartInfo(file, arguments) { RedirectStandardOutput = true };
        long from = Stopwatch.GetTimestamp();
        using Process process = Process.Start(start)!;
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        double time = Stopwatch.GetElapsedTime(from).TotalMilliseconds;
        return process.ExitCode == 0 ? time : throw new InvalidOperationException($"{file} ended with {process.ExitCode}: {said}");
    }
}
