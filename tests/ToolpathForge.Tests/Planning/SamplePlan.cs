using ToolpathForge.Catalogue;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Planning;

/// <summary>The repository's sample, read and planned once for all tests that look at it.</summary>
internal static class SamplePlan
{
    private static readonly Lazy<Plan> s_plan = new(() => Planner.Plan(Job, cancel: CancellationToken.None));

    internal static string Text { get; } = File.ReadAllText(Repo.Path("samples", "boathouse", "boathouse.toml"));

    internal static Job Job => Read(Text);

    internal static Plan Plan => s_plan.Value;

    internal static Job Read(string text)
    {
        JobReading reading = JobReader.Read(text, "boathouse.toml", _ => null);
        Assert.Empty(reading.Findings);
        return reading.Job!;
    }

    /// <summary>The sample's job with another dialect.</summary>
    internal static Job In(string dialect) => Read(Text.Replace("dialect = \"metric-centre\"", $"dialect = \"{dialect}\"", StringComparison.Ordinal));

    internal static PlannedProgram Program(string name) => Plan.Programs.Single(p => p.Name == name);

    internal static Dialect Dialect(string id) => In(id).Dialect;
}
