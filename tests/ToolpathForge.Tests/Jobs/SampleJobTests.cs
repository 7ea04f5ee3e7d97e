using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Tests.Support;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Jobs;

public class SampleJobTests
{
    internal static JobReading Boathouse() => JobReader.Read(
        File.ReadAllText(Repo.Path("samples", "boathouse", "boathouse.toml")), "boathouse.toml", _ => null);

    [Fact]
    public void The_boathouse_reads_without_a_finding()
    {
        JobReading reading = Boathouse();
        Assert.Equal("", string.Join('\n', reading.Findings.Select(f => FindingText.Word(f, LengthUnit.Inch))));
        Assert.True(reading.IsSound);
        Job job = reading.Job!;
        Assert.Equal(0.1, job.Tolerance);
        Assert.Equal("rafter-tail beam-end purlin-end bracket", string.Join(' ', job.Makes.Select(m => m.Id)));
        Assert.Equal([184.15, 285.75, 88.9, 139.7], job.Makes.Select(m => m.DesignWidth));
        Assert.All(job.Makes.OfType<PatternMake>(), m => Assert.Equal(5.6, m.Thickness));
    }
}
