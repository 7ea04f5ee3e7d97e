using System.Text.RegularExpressions;
using ToolpathForge.Catalogue;
using ToolpathForge.Posting;
using ToolpathForge.Service;
using ToolpathForge.Service.Output;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Service;

public partial class UseCaseTests
{
    [GeneratedRegex(@"Z-0\.3\b", RegexOptions.None, 1000)]
    private static partial Regex LastDepth();

    /// <summary>A post-processor with a fault: it cuts a millimetre into the machine's bed.</summary>
    private sealed class TooDeep : IPostProcessor
    {
        private readonly DialectPostProcessor honest = new(SamplePlan.Job.Dialect);

        public Dialect Dialect => honest.Dialect;

        public string Write(ProgramInput input) => LastDepth().Replace(honest.Write(input), "Z-20");
    }

    private static Report Cut(Scratch scratch, string job, IPostProcessor? post = null) =>
        CutJob.Run(job, scratch.Path("out"), Disk.Real, post, null, CancellationToken.None);

    [Fact]
    public void A_program_that_fails_its_proof_ends_with_3_and_nothing_is_left_behind()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", SamplePlan.Text);
        Report report = Cut(scratch, job, new TooDeep());
        Assert.Equal(ExitCodes.NotProven, report.ExitCode);
        Assert.Equal("porch.toml", Scratch.Names(scratch.Root));
        Assert.Contains(report.Remarks, r => r.Code == "program-not-proven");
        string json = report.Json!();
        Assert.Contains("\"passed\": false", json, StringComparison.Ordinal);
        Assert.Contains("\"code\": \"below-floor\"", json, StringComparison.Ordinal);
        Assert.Contains("\"files\": []", json, StringComparison.Ordinal);
    }

    [Fact]
    public void Whatever_stops_a_job_leaves_the_earlier_result_as_it_was()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", SamplePlan.Text);
        Assert.Equal(ExitCodes.Fine, Cut(scratch, job).ExitCode);
        SortedDictionary<string, string?> before = Scratch.Snapshot(scratch.Path("out"));
        Assert.Equal(ExitCodes.NotProven, Cut(scratch, job, new TooDeep()).ExitCode);
        File.WriteAllText(job, SamplePlan.Text.Replace("depth = \"4 1/4\"", "depth = \"7\"", StringComparison.Ordinal));
        Report stopped = Cut(scratch, job);
        Assert.Equal(ExitCodes.Stopped, stopped.ExitCode);
        Assert.Contains("is from an earlier run", stopped.Sections[^1].Lines[0], StringComparison.Ordinal);
        Assert.Equal(before, Scratch.Snapshot(scratch.Path("out")));
    }

    [Fact]
    public void A_stop_is_no_reason_to_leave_what_a_killed_run_set_aside()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", SamplePlan.Text);
        Cut(scratch, job);
        Directory.Move(scratch.Path("out"), scratch.Path(".out.toolpathforge-old"));
        File.WriteAllText(job, "format = 1\n");
        Assert.Equal(ExitCodes.Unusable, Cut(scratch, job).ExitCode);
        Assert.Equal("out porch.toml", Scratch.Names(scratch.Root));
    }

    [Fact]
    public void The_drawings_the_page_and_the_proof_speak_of_the_same_programs()
    {
        using var scratch = new Scratch();
        Report report = Cut(scratch, scratch.Write("porch.toml", SamplePlan.Text));
        Assert.Equal(ExitCodes.Fine, report.ExitCode);
        string page = File.ReadAllText(scratch.Path("out", "run-sheet.html"));
        string proof = File.ReadAllText(scratch.Path("out", "proof.json"));
        foreach (string id in (string[])["rafter-tail", "beam-end", "purlin-end", "bracket"])
        {
            byte[] program = File.ReadAllBytes(scratch.Path("out", id + ".nc"));
            string hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(program));
            Assert.Contains(hash, proof, StringComparison.Ordinal);
            Assert.Contains(hash[..16], page, StringComparison.Ordinal);
            Assert.True(File.Exists(scratch.Path("out", "drawings", id + ".svg")));
            Assert.StartsWith("0\nSECTION", File.ReadAllText(scratch.Path("out", "drawings", id + ".dxf")).TrimStart(' ').Replace("  0", "0", StringComparison.Ordinal), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("in")]
    [InlineData("mm")]
    public void The_starter_job_is_proven_as_it_stands_in_either_unit(string unit)
    {
        using var scratch = new Scratch();
        string job = scratch.Path("porch.toml");
        Assert.Equal(ExitCodes.Fine, NewJob.Run(job, unit, CancellationToken.None).ExitCode);
        Assert.Equal("porch.toml", Scratch.Names(scratch.Root));
        Report report = CheckJob.Run(job, null, CancellationToken.None);
        Assert.Equal(ExitCodes.Fine, report.ExitCode);
        Assert.Contains($"\"unit\": \"{unit}\"", report.Json!(), StringComparison.Ordinal);
        string[] lines = File.ReadAllLines(job);
        Assert.All(lines, l => Assert.True(l.Length <= 130, l));
    }

    [Fact]
    public void A_starter_job_takes_the_place_of_nothing()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", "mine");
        Directory.CreateSymbolicLink(scratch.Path("nowhere.toml"), scratch.Path("missing"));
        Assert.Equal("file-exists", Assert.Single(NewJob.Run(job, "in", CancellationToken.None).Remarks).Code);
        Assert.Equal("mine", File.ReadAllText(job));
        Assert.Equal("file-is-folder", Assert.Single(NewJob.Run(scratch.Root, "in", CancellationToken.None).Remarks).Code);
        Assert.Equal("file-no-folder", Assert.Single(NewJob.Run(scratch.Path("no", "porch.toml"), "in", CancellationToken.None).Remarks).Code);
        Assert.Equal("nowhere.toml porch.toml", Scratch.Names(scratch.Root));
    }

    [Fact]
    public void Progress_names_each_stage_in_order()
    {
        using var scratch = new Scratch();
        var stages = new List<string>();
        CutJob.Run(scratch.Write("porch.toml", SamplePlan.Text), scratch.Path("out"), stages.Add, CancellationToken.None);
        Assert.Equal("reading shapes toolpaths programs proof writing", string.Join(' ', stages.Distinct()));
    }

    [Fact]
    public void Cancelled_at_any_stage_nothing_is_written()
    {
        using var scratch = new Scratch();
        string job = scratch.Write("porch.toml", SamplePlan.Text);
        foreach (string at in (string[])["reading", "shapes", "toolpaths", "programs", "proof", "writing"])
        {
            using var source = new CancellationTokenSource();
            Assert.Throws<OperationCanceledException>(() => CutJob.Run(
                job,
                scratch.Path("out"),
                stage =>
                {
                    if (stage == at)
                    {
                        source.Cancel();
                    }
                },
                source.Token));
            Assert.Equal("porch.toml", Scratch.Names(scratch.Root));
        }
    }
}
