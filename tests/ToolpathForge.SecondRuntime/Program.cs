using ToolpathForge.Plugin;
using ToolpathForge.Plugin.Conformance;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.SecondRuntime;

/// <summary>
/// <c>second-runtime CORE FOLDER</c>: makes the checks for adapters, has a plate with a hole cut by the core, and says on which runtime. Exit code 0 when all of it went well.
/// </summary>
internal static class Program
{
    private const double Inch = 25.4;

    internal static int Main(string[] args)
    {
        using var host = new MemoryHost();
        Console.WriteLine("runtime: " + (Type.GetType("Mono.Runtime") is null ? "another" : "Mono") + " " + Environment.Version);
        ConformanceReport report = HostConformance.Run(host, host);
        Console.Write(report.ToString());

        // A rounded plate of 6 by 4 in with a round hole, drawn in inches.
        host.DrawAndSelect(new WireEntity[]
        {
            new() { Kind = "polyline", Layer = "plate", Closed = true, Points = Rounded(6, 4, 0.5), Bulges = new[] { 0, Math.Tan(Math.PI / 8), 0, Math.Tan(Math.PI / 8), 0, Math.Tan(Math.PI / 8), 0, Math.Tan(Math.PI / 8) } },
            new() { Kind = "circle", Layer = "holes", Centre = new[] { 1.5, 2.0 }, Radius = 0.5 },
        });
        int before = host.Told().Count;
        using var session = new PluginSession(host, args[1], args[0]);
        SessionResult result = session.FulfilAsync(new SessionWish { Job = new SelectionJob { Name = "Plate" }.Text(), Folder = "plate" }).GetAwaiter().GetResult();
        foreach (string told in host.Told().Skip(before))
        {
            Console.WriteLine(told);
        }

        Console.WriteLine(FormattableString.Invariant($"{result.End}, {result.Drawn} lines and arcs drawn, {result.Files.Count} files, {result.Programs.Count(p => p.Proof.Passed)} of {result.Programs.Count} proven"));
        double right = host.Preview().SelectMany(e => new[] { e.From, e.To }).OfType<double[]>().Select(p => p[0]).DefaultIfEmpty().Max();
        Console.WriteLine(FormattableString.Invariant($"rightmost end of a line: {right * Inch:0.000} mm"));
        return report.Passed && result.End == SessionEnd.Done ? 0 : 1;
    }

    // Counter-clockwise from the lower left; every second segment is a quarter circle.
    private static double[][] Rounded(double length, double width, double radius) => new[]
    {
        new[] { radius, 0 }, new[] { length - radius, 0 }, new[] { length, radius }, new[] { length, width - radius },
        new[] { length - radius, width }, new[] { radius, width }, new[] { 0, width - radius }, new[] { 0, radius },
    };
}
