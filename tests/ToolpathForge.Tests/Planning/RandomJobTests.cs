using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Planning;

/// <summary>Jobs of every kind, made from numbers: each is proven whole, or refused with a reason.</summary>
public class RandomJobTests
{
    [Fact]
    public void Every_random_job_is_proven_or_refused()
    {
        int count = LongRun.Iterations(150, 3_000);
        int proven = 0;
        int refused = 0;
        var faults = new List<string>();
        var reasons = new SortedDictionary<string, int>(StringComparer.Ordinal);
        for (int number = 0; number < count; number++)
        {
            string text = RandomJobs.Write(number);
            JobReading reading = JobReader.Read(text, "random.toml", _ => null);
            IEnumerable<Finding> findings = reading.Findings;
            if (reading.Job is { } job)
            {
                Plan plan = Planner.Plan(job, cancel: CancellationToken.None);
                faults.AddRange(plan.FailedProofs.Select(p =>
                    $"job {number}, {p.FileName}: {string.Join("; ", p.Proof.Faults.Select(f => FormattableString.Invariant($"{f.Code} line {f.Line} {f.Found} > {f.Allowed} {f.Place}")))}"));
                findings = plan.Findings;
                proven += plan.Programs.IsEmpty ? 0 : 1;
                if (!plan.IsStopped && plan.Programs.Length < job.Makes.Length)
                {
                    faults.Add($"job {number}: neither proven nor refused");
                }
            }

            Finding[] stops = [.. findings.Where(f => f.Kind.Severity == Severity.Stop || f.Kind.Unusable)];
            refused += stops.Length > 0 ? 1 : 0;
            foreach (string code in stops.Select(s => s.Kind.Code).Distinct())
            {
                reasons[code] = reasons.GetValueOrDefault(code) + 1;
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{proven} proven, {refused} refused of {count}: {string.Join(", ", reasons.Select(r => $"{r.Key} {r.Value}"))}");
        Assert.Empty(faults);
        Assert.True(proven >= count / 4, $"Only {proven} of {count} jobs were cut: {string.Join(", ", reasons.Select(r => $"{r.Key} {r.Value}"))}");
        Assert.True(refused >= count / 20);
    }
}
