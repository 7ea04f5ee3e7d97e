using System.Diagnostics;
using System.Text.Json;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;

namespace ToolpathForge.Benchmarks.Ratios;

/// <summary>The service for plugins, warm: what its messages and its other process add to a plan.</summary>
internal static class HostFigures
{
    /// <summary>The first request.</summary>
    internal const string Hello = """{"jsonrpc":"2.0","id":0,"method":"initialize","params":{"protocol":"1"}}""";

    private const int Warm = 40;

    internal static IEnumerable<Func<Figure>> All()
    {
        yield return Plan;
    }

    private static Figure Plan()
    {
        string text = File.ReadAllText(PlanFigures.Sample());
        Job job = JobReader.Read(text, "job", _ => null).Job!;
        var start = new ProcessStartInfo(Environment.ProcessPath!, [.. Itself(), ServeAlone]) { RedirectStandardInput = true, RedirectStandardOutput = true };
        using Process process = Process.Start(start)!;
        try
        {
            string Ask(string message, int id)
            {
                process.StandardInput.Write(message + "\n");
                process.StandardInput.Flush();
                while (process.StandardOutput.ReadLine() is { } line)
                {
                    if (line.EndsWith(FormattableString.Invariant($"\"id\":{id}}}"), StringComparison.Ordinal))
                    {
                        return line;
                    }
                }

                throw new InvalidOperationException("The service ended.");
            }

            string plan = JsonSerializer.Serialize(new { jsonrpc = "2.0", id = 1, method = "plan", @params = new { job = text } });
            int made = 0;
            object Served()
            {
                string reply = Ask(plan, 1);
                made++;
                Ask(FormattableString.Invariant($$$"""{"jsonrpc":"2.0","id":2,"method":"release","params":{"plan":"p{{{made}}}"}}"""), 2);
                return reply.Contains(FormattableString.Invariant($"\"plan\":\"p{made}\""), StringComparison.Ordinal) ? reply : throw new InvalidOperationException(reply);
            }

            Ask(Hello, 0);
            object Here() => Planner.Plan(JobReader.Read(text, "job", _ => null).Job ?? job, cancel: CancellationToken.None);
            for (int i = 0; i < Warm; i++)
            {
                Served();
                Here();
            }

            // Reading the job is part of both.
            Figure figure = Pairs.Ratio("warm plan of the sample by the service", "", 1, Served, Here);
            return figure with { Value = 1 / figure.Value, Baseline = "the same in process", Goal = 1.2, AtLeast = false };
        }
        finally
        {
            process.Kill();
        }
    }

    /// <summary>The word by which this program is called to serve, so that both sides of the comparison are the same build.</summary>
    internal const string ServeAlone = "serve-alone";

    private static string[] Itself() =>
        Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet" ? [typeof(HostFigures).Assembly.Location] : [];
}
