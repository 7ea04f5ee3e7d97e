using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Jobs;

/// <summary>
/// Job files damaged at random, with catalogue files that are damaged too: never an exception, never a hang, and no file asked for that the text does not name.
/// What still reads as a job is planned and proven.
/// </summary>
public partial class JobMutationTests
{
    /// <summary>Of jobs that are usable, one in so many is planned: planning takes a hundred times as long as reading.</summary>
    private static readonly int s_planned = LongRun.IsOn ? 10 : 3;

    /// <summary>Far more than any job of the samples' size takes, on a machine that does ten other things.</summary>
    private static readonly TimeSpan s_longest = TimeSpan.FromSeconds(60);

    private static readonly string[] s_words =
    [
        "0", "-1", "1", "1e308", "-1e-300", "nan", "inf", "-inf", "9223372036854775807", "99999999999999999999", "0.1", "1/0", "\"1/0\"", "\"12 in\"", "\"1e9 mm\"", "\"-3/8 in\"", "\"\"", "\"\"\"",
        "true", "[]", "{}", "[[make]]", "[[make]]\n", "[", "]", "=", "\"my.toml\"", "[\"my.toml\", \"../my.toml\"]", "catalogues = [\"my.toml\", \"/etc/hosts\", \"\\u002e\\u002e\"]", "kind = \"pattern\"",
        "kind = \"board-end\"", "1979-05-27", "0x7f", "\u0000", "'a'", "\"\\uD800\"", "ö", "#", "pattern", "count = 100000", "count = 12",
    ];

    private static string[] Seeds { get; } =
    [
        .. Directory.EnumerateFiles(Repo.Path("samples"), "*.toml", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(File.ReadAllText).SelectMany(t => new[] { t, "catalogues = [\"my.toml\"]\n" + t }),
    ];

    private static string[] Rows { get; } = [.. Directory.EnumerateFiles(Repo.Path("shared"), "*.toml").Order(StringComparer.Ordinal).Select(File.ReadAllText)];

    [Fact]
    public void Damaged_jobs_are_answered()
    {
        int seed = Random.Shared.Next();
        int most = LongRun.Iterations(20_000, 100_000);
        var clock = Stopwatch.StartNew();
        int usable = 0;
        for (int i = 0; i < most && (LongRun.IsOn || clock.Elapsed < TimeSpan.FromSeconds(5)); i++)
        {
            // Each case has its own numbers, so that one can be run again alone.
            usable += Answered(seed, i) ? 1 : 0;
        }

        // Were none usable any more, planning would never be tried.
        Assert.NotEqual(0, usable);
    }

    // Found by the test above: the parser passes over a stroke that escapes nothing.
    [Fact]
    public void A_name_that_is_not_written_right_is_asked_for_under_no_other()
    {
        const string Text = "format = 1\nname = 'x'\nunit = 'mm'\ntolerance = 0.1\nmachine = 'desktop-400'\ndialect = 'metric-centre'\ncatalogues = [\"my\\_rows.toml\"]\n[[make]]\nid = 'x'\nkind = 'outline'\ndrawing = \"frame\\dxf\"\n";
        var asked = new List<string>();
        JobReading reading = JobReader.Read(
            Text,
            "job.toml",
            name =>
            {
                asked.Add(name);
                return null;
            },
            new OnePlate(asked));
        Assert.Null(reading.Job);
        Assert.Empty(asked);
        Assert.All(reading.Findings, f => Assert.Equal("toml-syntax", f.Kind.Code));
    }

    private static bool Answered(int seed, int i)
    {
        var random = new Random(HashCode(seed, i));

        // What comes from a file has no half of a pair of surrogates.
        string text = Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(Damaged(random, Seeds[random.Next(Seeds.Length)])));
        string rows = random.Next(3) == 0 ? Damaged(random, Rows[random.Next(Rows.Length)]) : Rows[random.Next(Rows.Length)];
        string about = $"seed {seed}, case {i}";
        var asked = new List<string>();
        var clock = Stopwatch.StartNew();
        using var late = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        late.CancelAfter(s_longest);
        try
        {
            JobReading reading = JobReader.Read(text, "job.toml", name =>
            {
                asked.Add(name);
                return name.StartsWith("my", StringComparison.Ordinal) ? rows : null;
            }, new OnePlate(asked));
            Assert.True(reading.Job is not null || reading.Findings.Any(f => f.Kind.Severity == Severity.Stop), $"{about}: no job, and no stop that says why");
            foreach (string name in asked)
            {
                // With escapes taken out, which the text may write a name with.
                Assert.True(Unescaped(text).Contains(name, StringComparison.Ordinal), $"{about}: '{name}' is asked for and named nowhere");
            }

            if (reading.Job is { } job && random.Next(s_planned) == 0 && reading.Findings.All(f => f.Kind.Severity != Severity.Stop))
            {
                Plan plan = Planner.Plan(job, cancel: late.Token);
                Assert.True(plan.Programs.Length > 0 || plan.Findings.Any(f => f.Kind.Severity == Severity.Stop), $"{about}: no program, and no stop that says why");
            }

            Assert.True(clock.Elapsed < s_longest, $"{about} took {clock.Elapsed.TotalSeconds:0} s");
            return reading.Job is not null;
        }
        catch (Exception e) when (e is not Xunit.Sdk.XunitException)
        {
            Assert.Fail($"{about}: {e}\n{text}");
            return false;
        }
    }

    /// <summary>Notes which drawings are asked for; each DXF is a plate of 120 by 60 mm with a hole.</summary>
    private sealed class OnePlate(List<string> asked) : IDrawings
    {
        private static readonly Region s_plate = Region.Of([new Contour([new Vertex(0, 0, 0), new Vertex(120, 0, 0), new Vertex(120, 60, 0), new Vertex(0, 60, 0)], true), Contour.Circle(new(40, 30), 10)]);

        public DrawingAnswer Find(DrawingRequest request)
        {
            asked.Add(request.Name);
            return request.Name.EndsWith(".dxf", StringComparison.Ordinal) ? new DrawingAnswer(new DrawingContents(true, ["0"], [s_plate], []), []) : DrawingAnswer.None;
        }
    }

    private static int HashCode(int seed, int i) => unchecked((seed * 486187739) + i);

    private static string Damaged(Random random, string from)
    {
        var lines = from.Split('\n').ToList();
        for (int n = random.Next(1, 5); n > 0; n--)
        {
            int at = random.Next(lines.Count);
            switch (random.Next(8))
            {
                case 0:
                    lines.RemoveAt(at);
                    break;
                case 1:
                    lines.Insert(random.Next(lines.Count), lines[at]);
                    break;
                case 2:
                    lines.Insert(at, s_words[random.Next(s_words.Length)]);
                    break;
                case 3 or 4:
                    // The value becomes another; its key stays.
                    int sign = lines[at].IndexOf('=', StringComparison.Ordinal);
                    lines[at] = sign < 0 ? lines[at] : lines[at][..(sign + 1)] + " " + s_words[random.Next(s_words.Length)];
                    break;
                case 5:
                    MatchCollection numbers = Number().Matches(lines[at]);
                    if (numbers.Count > 0)
                    {
                        Match number = numbers[random.Next(numbers.Count)];
                        string other = random.Next(4) switch { 0 => "-" + number.Value, 1 => number.Value + "0", 2 => number.Value + "e3", _ => (random.NextDouble() * 20).ToString("0.###") };
                        lines[at] = lines[at][..number.Index] + other + lines[at][(number.Index + number.Length)..];
                    }

                    break;
                case 6:
                    var characters = new StringBuilder(lines[at]);
                    if (characters.Length > 0)
                    {
                        characters[random.Next(characters.Length)] = (char)random.Next(random.Next(2) == 0 ? 128 : 0x10000);
                    }

                    lines[at] = characters.ToString();
                    break;
                default:
                    if (random.Next(10) == 0)
                    {
                        lines.RemoveRange(at, lines.Count - at);
                    }

                    break;
            }

            if (lines.Count == 0)
            {
                lines.Add("");
            }
        }

        return string.Join('\n', lines);
    }

    private static string Unescaped(string text)
    {
        string plain = Escape().Replace(text, m => ((char)Convert.ToInt32(m.Groups[1].Value, 16)).ToString());
        return plain.Replace("\\\\", "\\", StringComparison.Ordinal).Replace("\\\"", "\"", StringComparison.Ordinal)
            .Replace("\\t", "\t", StringComparison.Ordinal).Replace("\\n", "\n", StringComparison.Ordinal)
            .Replace("\\r", "\r", StringComparison.Ordinal).Replace("\\b", "\b", StringComparison.Ordinal)
            .Replace("\\f", "\f", StringComparison.Ordinal).Replace("\\e", "\e", StringComparison.Ordinal);
    }

    [GeneratedRegex(@"\d+(\.\d+)?")]
    private static partial Regex Number();

    [GeneratedRegex(@"\\u([0-9a-fA-F]{4})")]
    private static partial Regex Escape();
}
