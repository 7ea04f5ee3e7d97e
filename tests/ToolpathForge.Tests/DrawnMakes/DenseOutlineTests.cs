using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Planning;
using ToolpathForge.Posting;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>Outlines drawn with many short lines: a step of a ramp over one of them rounds to next to nothing, in any dialect's decimals.</summary>
public class DenseOutlineTests
{
    [Fact]
    public void Outlines_of_short_lines_are_proven_in_every_dialect()
    {
        Dialect[] dialects = [.. Catalogues.Shipped.Dialects.All];
        int proven = 0;
        int count = LongRun.Iterations(5, 300);
        for (int seed = 0; seed < count; seed++)
        {
            var read = OutlineJobs.Read("drawing = '@part'\n" + OutlineJobs.Usual, Blob(seed));
            Assert.NotNull(read.Job);
            Dialect dialect = dialects[seed % dialects.Length];
            Plan plan = Planner.Plan(read.Job, new DialectPostProcessor(dialect), cancel: TestContext.Current.CancellationToken);
            Assert.True(plan.FailedProofs.IsEmpty, $"seed {seed}, {dialect.Id}: {string.Join("; ", plan.FailedProofs.SelectMany(p => p.Proof.Faults).Take(3))}");
            Assert.All(plan.Findings.Where(f => f.Kind.Severity == Severity.Stop), f => Assert.Equal("outline-too-tight", f.Kind.Code));
            proven += plan.Programs.Length;
        }

        // Few of them fold in tighter than the bit.
        Assert.True(proven >= count * 0.7, $"{proven} of {count} proven.");
    }

    // A round that swells and shrinks smoothly, in lines of 0.06 to 0.6 mm, with a side of straight lines to carry tabs.
    private static Contour Blob(int seed)
    {
        var random = new Random(seed);
        double step = Math.Pow(10, random.NextDouble() - 1.22);
        int waves = random.Next(1, 5);
        double phase = random.NextDouble() * 6;
        double swell = 0.04 + (random.NextDouble() * 0.08);
        var points = new List<Point2> { new(0, -140), new(160, -140) };
        int count = (int)(Math.PI * 80 / step);
        for (int i = 0; i <= count; i++)
        {
            double angle = Math.PI * i / count;
            double sine = Math.Sin(angle);
            points.Add(new Point2(80, 0) + (Point2.Direction(angle) * (80 * (1 + (swell * sine * sine * Math.Sin((waves * angle) + phase))))));
        }

        return Contour.Polygon([.. points]);
    }
}
