using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Planning;
using ToolpathForge.Tests.Checks.Jobs;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Posting;

/// <summary>
/// What a program says where it starts, stops and ends, read line by line from its text. The words are those of NISTIR 6556 (2000): M0 and M6 stop it, M5 stops the spindle, G4 waits.
/// That a hand may have moved every axis at a stop is what any controller lets it do.
/// </summary>
public partial class StopTests
{
    private static readonly string[] s_modes = ["G17", "G90", "G94", "G54"];

    public static TheoryData<string, string> Cases
    {
        get
        {
            var cases = new TheoryData<string, string>();
            foreach (Dialect dialect in Catalogues.Shipped.Dialects.All)
            {
                foreach (string what in (string[])["bits", "bits, changed by the machine", "boards, waiting", "boards, one by one", "the sample", "the sample's boards, waiting"])
                {
                    cases.Add(dialect.Id, what);
                }
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void After_a_start_or_a_stop_everything_is_said_again_and_the_bit_goes_up_first(string dialect, string what)
    {
        foreach ((Plan plan, PlannedProgram program) in Programs(dialect, what))
        {
            double unit = plan.Job.Dialect.Unit == LengthUnit.Inch ? 25.4 : 1;
            double travel = program.Cut.Clamping.Stock.Top + program.Cut.Clamping.Rise(plan.Job);
            string[][] lines = Words(program.Text);
            int[] stops = [-1, .. Stops(lines)];
            foreach (int stop in stops)
            {
                // Modes are said after the stop, before the axes' first move.
                int first = Array.FindIndex(lines, stop + 1, HasAxes);
                string[] said = [.. lines[(stop + 1)..first].SelectMany(w => w)];
                Assert.All(s_modes, mode => Assert.Contains(mode, said));
                Assert.Contains(unit == 1 ? "G21" : "G20", said);

                // Straight up, with its own motion word, to the height of travel; then to a place.
                Assert.Equal(["G0", "Z"], lines[first].Where(w => w[0] != 'N').Select(w => w[0] == 'Z' ? "Z" : w));
                Assert.Equal(travel, Value(lines[first], 'Z') * unit, 0.02);
                int next = Array.FindIndex(lines, first + 1, HasAxes);
                Assert.Contains(lines[next], w => w[0] == 'X');
                Assert.Contains(lines[next], w => w[0] == 'Y');
                Assert.True(Value(lines[next], 'Z') is double.NaN || plan.Job.Dialect.Modal == false);

                // The first move at a feed has a feed of its own.
                int cut = Array.FindIndex(lines, first, w => w.Contains("G1") || w.Contains("G2") || w.Contains("G3"));
                Assert.Contains(lines[cut], w => w[0] == 'F');
                if (plan.Job.Dialect.RunsSpindle)
                {
                    Assert.Contains("M3", said);
                    Assert.Contains(said, w => w.StartsWith("G4", StringComparison.Ordinal));
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Before_a_stop_and_at_the_end_the_bit_is_up_and_stands_still_or_the_hand_is_told(string dialect, string what)
    {
        int stopped = 0;
        foreach ((Plan plan, PlannedProgram program) in Programs(dialect, what))
        {
            Dialect d = plan.Job.Dialect;
            double unit = d.Unit == LengthUnit.Inch ? 25.4 : 1;
            string[] texts = program.Text.ReplaceLineEndings("\n").TrimEnd().Split('\n');
            string[][] lines = Words(program.Text);
            double travel = program.Cut.Clamping.Stock.Top + program.Cut.Clamping.Rise(plan.Job);
            int end = Array.FindIndex(lines, w => w.Contains("M2") || w.Contains("M30"));
            int[] all = Stops(lines);
            stopped += all.Length;
            foreach (int stop in (int[])[.. all, end])
            {
                // A changer fetches the first bit: nothing has turned yet.
                int before = Array.FindLastIndex(lines, stop, HasAxes);
                if (before < 0)
                {
                    continue;
                }

                double height = Value(lines[Array.FindLastIndex(lines, stop, w => w.Any(x => x[0] == 'Z'))], 'Z') * unit;
                Assert.True(height >= travel - 0.02, $"stops at {height}");
                if (d.RunsSpindle)
                {
                    int off = Array.FindIndex(lines, before, w => w.Contains("M5"));
                    Assert.InRange(off, before + 1, stop - 1);
                    Assert.Equal(10, Value(lines[off + 1], 'P'));
                }

                if (d.IsSwitchedByHand(plan.Job.Machine))
                {
                    Assert.Contains(texts[before..stop], t => t.Contains("Switch the spindle off", StringComparison.Ordinal) && t[0] is '(' or ';');
                }
            }
        }

        if (what.EndsWith("boards, waiting", StringComparison.Ordinal) || (what == "bits" && dialect != "metric-hand-switched"))
        {
            Assert.True(stopped > 0);
        }
    }

    // Between boards and at the end the axis stands off all boards, as high as at a stop: nothing that a hand lays lies under the bit.
    [Theory]
    [InlineData("boards, waiting")]
    [InlineData("boards, one by one")]
    [InlineData("the sample's boards, waiting")]
    public void Where_boards_are_laid_the_bit_stands_past_their_ends(string what)
    {
        foreach ((Plan plan, PlannedProgram program) in Programs("metric-centre", what).Where(p => p.Program.Cut.Clamping.Make is BoardEndMake))
        {
            string[][] lines = Words(program.Text);
            foreach (int stop in (int[])[.. Stops(lines), lines.Length - 1])
            {
                int parked = Array.FindLastIndex(lines, stop, w => w.Any(x => x[0] == 'X'));
                Assert.DoesNotContain(lines[parked..stop], w => w.Any(x => x[0] == 'Z'));
                Box2 boards = program.Cut.Clamping.Stock.Box;
                double past = Value(lines[parked], 'X') - boards.MaxX;
                Assert.True(past > program.Cut.Path.Bit.Radius && Value(lines[parked], 'Y') > boards.MaxY + program.Cut.Path.Bit.Radius);

                // Half the body of a router and a hand, where the travel has it.
                double room = plan.Job.Machine.TravelX - ((BoardEndMake)program.Cut.Clamping.Make).OnBed;
                Assert.True(past >= Math.Min(40, room / 2), $"{past} past the ends");
            }
        }
    }

    [Fact]
    public void A_machine_that_does_not_change_bits_itself_is_never_told_to()
    {
        foreach (string dialect in (string[])["metric-centre", "inch-centre"])
        {
            Assert.All(Programs(dialect, "bits"), p => Assert.DoesNotContain("M6", Words(p.Program.Text).SelectMany(w => w)));
            Assert.All(Programs(dialect, "bits, changed by the machine"), p => Assert.DoesNotContain("M0", Words(p.Program.Text).SelectMany(w => w)));
        }
    }

    // Planned once for all tests that look at them.
    private static readonly ConcurrentDictionary<(string, string), Lazy<List<(Plan Plan, PlannedProgram Program)>>> s_programs = new();

    private static List<(Plan Plan, PlannedProgram Program)> Programs(string dialect, string what) =>
        s_programs.GetOrAdd((dialect, what), _ => new(() => Planned(dialect, what))).Value;

    private static List<(Plan Plan, PlannedProgram Program)> Planned(string dialect, string what)
    {
        string board = what switch
        {
            "boards, waiting" => SetUpJobs.With(SetUpJobs.Board, ("metric-centre", dialect), ("waste = \"screwed\"", "waste = \"screwed\", runs = \"waiting\" }\nends = \"both\"\ncount = 2 #")),
            _ => SetUpJobs.With(SetUpJobs.Board, ("metric-centre", dialect)),
        };
        Plan? plan = null;
        Finding[] findings = [];
        if (what.StartsWith("boards", StringComparison.Ordinal))
        {
            (plan, findings) = SetUpJobs.Plan(board);
        }
        else if (what == "the sample")
        {
            plan = Planner.Plan(SamplePlan.In(dialect), cancel: CancellationToken.None);
        }
        else if (what == "the sample's boards, waiting")
        {
            string text = File.ReadAllText(Repo.Path("samples", "boathouse", "boards.toml"))
                .Replace("metric-centre", dialect, StringComparison.Ordinal).Replace("end = { ", "end = { runs = \"waiting\", ", StringComparison.Ordinal);
            plan = Planner.Plan(JobReader.Read(text, "boards.toml", _ => null).Job!, cancel: CancellationToken.None);
            findings = [.. plan.Findings];
        }
        else
        {
            Job job = MarkedPattern.Job(dialect);
            plan = Planner.Plan(job with { Machine = job.Machine with { ChangesBits = what != "bits" } }, cancel: CancellationToken.None);
            findings = [.. plan.Findings];
        }

        Assert.Empty(findings.Where(f => f.Kind.Severity == Severity.Stop).Select(f => f.Kind.Code));
        Assert.NotEmpty(plan!.Programs);
        return [.. plan.Programs.Select(p => (plan, p))];
    }

    private static int[] Stops(string[][] lines) => [.. Enumerable.Range(0, lines.Length).Where(i => lines[i].Contains("M0") || lines[i].Contains("M6"))];

    private static bool HasAxes(string[] words) => words.Any(w => w[0] is 'X' or 'Y' or 'Z');

    private static double Value(string[] words, char letter) =>
        words.FirstOrDefault(w => w[0] == letter) is { } word ? double.Parse(word[1..], CultureInfo.InvariantCulture) : double.NaN;

    private static string[][] Words(string text) =>
        [.. text.ReplaceLineEndings("\n").TrimEnd().Split('\n').Select(line => Word().Matches(Comment().Replace(line, "")).Select(m => m.Value).ToArray())];

    [GeneratedRegex(@"\([^)]*\)|;.*")]
    private static partial Regex Comment();

    [GeneratedRegex("[A-Z][0-9.+-]+")]
    private static partial Regex Word();
}
