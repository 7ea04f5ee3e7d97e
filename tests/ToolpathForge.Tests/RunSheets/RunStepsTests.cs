using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.RunSheets;
using ToolpathForge.Tests.Checks.Jobs;
using ToolpathForge.Tests.Planning;

namespace ToolpathForge.Tests.RunSheets;

/// <summary>What the sheet says about start, stops and end, held against the text of the programs; and the cautions that belong there.</summary>
public class RunStepsTests
{
    // In mm, so that the sheet's tenths can be compared with the program.
    private static Plan Pattern(string dialect) => Planner.Plan(
        MarkedPattern.Read(MarkedPattern.Text.Replace("unit = \"in\"", "unit = \"mm\"", StringComparison.Ordinal)
            .Replace("metric-centre", dialect, StringComparison.Ordinal)
            .Replace("\"10 1/2\"", "\"10 1/2 in\"", StringComparison.Ordinal).Replace("\"7 1/2\"", "\"7 1/2 in\"", StringComparison.Ordinal)
            .Replace("\"4 1/4\"", "\"4 1/4 in\"", StringComparison.Ordinal).Replace("hold = \"4\", seat = \"1 1/2\", reach = \"1/2\"", "hold = \"4 in\", seat = \"1 1/2 in\", reach = \"1/2 in\"", StringComparison.Ordinal)
            .Replace("height = \"1/4\"", "height = \"1/4 in\"", StringComparison.Ordinal).Replace("y = \"5\"", "y = \"5 in\"", StringComparison.Ordinal)
            .Replace("\"-3/4\"", "\"-3/4 in\"", StringComparison.Ordinal).Replace("\"5/8\"", "\"5/8 in\"", StringComparison.Ordinal)
            .Replace("width = \"1/4\"", "width = \"1/4 in\"", StringComparison.Ordinal).Replace("x = \"2\"", "x = \"2 in\"", StringComparison.Ordinal)
            .Replace("x = \"6\"", "x = \"6 in\"", StringComparison.Ordinal).Replace("to-x = \"8\"", "to-x = \"8 in\"", StringComparison.Ordinal)
            .Replace("\"3/8\"", "\"3/8 in\"", StringComparison.Ordinal).Replace("x = \"10\"", "x = \"10 in\"", StringComparison.Ordinal)
            .Replace("\"1/8\"", "\"1/8 in\"", StringComparison.Ordinal)),
        cancel: TestContext.Current.CancellationToken);

    private static string[] Sections(Plan plan) => WebUtility.HtmlDecode(RunSheetPage.Write(plan)).Split("<section>");

    private static double Figure(string section, string pattern)
    {
        Match found = Regex.Match(section, pattern);
        Assert.True(found.Success, pattern);
        return double.Parse(found.Groups[1].Value, CultureInfo.InvariantCulture);
    }

    [Theory]
    [InlineData("metric-centre")]
    [InlineData("metric-hand-switched")]
    [InlineData("metric-lines")]
    public void The_sheet_tells_the_first_move_and_where_the_bit_stands_as_the_program_does_it(string dialect)
    {
        Plan plan = Pattern(dialect);
        string[] sections = Sections(plan);
        foreach ((PlannedProgram program, string section) in plan.Programs.Zip(sections.Skip(1)))
        {
            string[] moves = [.. program.Text.Split('\n').Where(l => Regex.IsMatch(l, "^(G0 )?[XYZ]"))];
            double Word(string line, char letter) => double.Parse(Regex.Match(line, letter + "(-?[0-9.]+)").Groups[1].Value, CultureInfo.InvariantCulture);
            Assert.Equal(Word(moves[0], 'Z'), Figure(section, "The first move is straight up to Z ([0-9.]+) mm"), 0.051);
            Assert.Equal(Word(moves[1], 'X'), Figure(section, "straight up to Z [0-9.]+ mm, then across to X ([0-9.]+) mm"), 0.051);
            Assert.Equal(Word(moves[1], 'Y'), Figure(section, "then across to X [0-9.]+ mm, Y ([0-9.]+) mm"), 0.051);
            Assert.Equal(Word(moves.Last(m => m.Contains('Z', StringComparison.Ordinal)), 'Z'), Figure(section, "At the end the bit goes up to Z ([0-9.]+) mm"), 0.051);
            Assert.Equal(Word(program.Text.Split('\n').Last(l => l.Contains('X', StringComparison.Ordinal) && !l.StartsWith(';') && !l.StartsWith('(')), 'X'), Figure(section, "At the end the bit goes up to Z [0-9.]+ mm and across to X ([0-9.]+) mm"), 0.051);

            // Raised like that, the deepest cut of the program goes above everything that may stand on the bed.
            double deepest = moves.Concat(program.Text.Split('\n').Where(l => l.StartsWith("G1", StringComparison.Ordinal))).Where(l => l.Contains('Z', StringComparison.Ordinal)).Min(l => Word(l, 'Z'));
            double free = Figure(section, "nothing on the bed may stand higher than Z ([0-9.]+) mm");
            Assert.True(deepest + Figure(section, "Dry run: set Z0 ([0-9.]+) mm higher") >= free);
            Assert.True(free <= Word(moves[0], 'Z') - 2.9 && free >= program.Cut.Clamping.Stock.Top - 0.051);
        }
    }

    [Fact]
    public void A_later_program_on_the_same_clamping_leaves_the_piece_where_it_is()
    {
        Plan plan = Pattern("metric-hand-switched");
        string[] sections = Sections(plan)[1..];
        Assert.Equal(3, sections.Length);
        Assert.Single(sections, s => s.Contains("Saw a blank", StringComparison.Ordinal));
        Assert.Single(sections, s => s.Contains("Lay it flat", StringComparison.Ordinal));
        Assert.Contains("plate-2 follows on the same clamping with another bit: take nothing off until plate-3 has ended", sections[0], StringComparison.Ordinal);
        Assert.Contains("Leave everything clamped as it lay for plate-1", sections[1], StringComparison.Ordinal);
        Assert.Contains("Leave everything clamped as it lay for plate-2", sections[2], StringComparison.Ordinal);
        Assert.All(sections, s => Assert.Contains("touch", s, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain("follows on the same clamping", sections[2], StringComparison.Ordinal);
    }

    // What each word is there for: common practice in shops and the manuals of machines.
    [Theory]
    [InlineData("whole run")]
    [InlineData("extinguisher")]
    [InlineData("metal bin")]
    [InlineData("Unplug the spindle before a hand touches bit or collet")]
    [InlineData("gantry pinches")]
    [InlineData("stalls")]
    [InlineData("unplug it before you clear the bed")]
    public void Every_sheet_has_its_cautions_once(string words)
    {
        string page = string.Concat(Sections(SamplePlan.Plan));
        Assert.Single(Regex.Matches(page, Regex.Escape(words)));
    }

    [Fact]
    public void What_the_code_says_stands_on_the_sheet_once()
    {
        string[] sections = Sections(SamplePlan.Plan);
        Assert.Single(sections, s => s.Contains("Before it carries anything", StringComparison.Ordinal));
        Assert.Contains("Before it carries anything", sections[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_spindle_that_a_hand_switches_is_told_at_every_stop_and_at_the_end()
    {
        Plan waiting = Board(("metric-centre", "metric-hand-switched"), ("waste = \"screwed\" }", "waste = \"screwed\", runs = \"waiting\" }\ncount = 2")).Plan!;
        string section = Sections(waiting)[1];
        Assert.Equal(2, Regex.Count(section, "Nothing switches the spindle off but you"));
        Assert.Contains("Between boards the bit goes up", section, StringComparison.Ordinal);

        // The dialect says M5, but the machine heeds no program in this.
        Job job = MarkedPattern.Job();
        Plan deaf = Planner.Plan(job with { Machine = job.Machine with { SwitchedByHand = true } }, cancel: TestContext.Current.CancellationToken);
        Assert.Contains("Nothing switches the spindle off but you", Sections(deaf)[1], StringComparison.Ordinal);
        Assert.Contains("Switch the spindle off and wait till it stands; unplug it", Sections(deaf)[1], StringComparison.Ordinal);
        Assert.Equal(3, Regex.Count(deaf.Programs[0].Text, "MSG, Switch the spindle off"));
    }

    [Fact]
    public void No_program_waits_with_the_bit_turning_and_nothing_to_say_so()
    {
        (string, string) waits = ("waste = \"screwed\" }", "waste = \"screwed\", runs = \"waiting\" }\ncount = 2");
        (string, string) byHand = ("\"desktop-400\"", "\"desktop-600\"");
        Assert.Contains(Board(("metric-centre", "inch-centre"), waits, byHand).Findings, f => f.Kind.Code == "waiting-unseen");
        Assert.DoesNotContain(Board(("metric-centre", "inch-centre"), waits).Findings, f => f.Kind.Code == "waiting-unseen");
        Assert.DoesNotContain(Board(waits, byHand).Findings, f => f.Kind.Code == "waiting-unseen");
        Assert.DoesNotContain(Board(("metric-centre", "inch-centre"), byHand).Findings, f => f.Kind.Code == "waiting-unseen");

        // Several bits: no pause either, but a program for each.
        Job job = MarkedPattern.Job("inch-centre");
        Plan plan = Planner.Plan(job with { Machine = job.Machine with { SwitchedByHand = true } }, cancel: TestContext.Current.CancellationToken);
        Assert.Equal(3, plan.Programs.Length);

        // No changer takes hold of a bit that nothing has stopped.
        Job changer = MarkedPattern.Job();
        Plan turning = Planner.Plan(changer with { Machine = changer.Machine with { SwitchedByHand = true, ChangesBits = true } }, cancel: TestContext.Current.CancellationToken);
        Assert.DoesNotContain(" M6", turning.Programs[0].Text, StringComparison.Ordinal);
        Assert.Equal(2, turning.Programs[0].Text.Split('\n').Count(l => l == "M0"));
    }

    // Up-cut flutes fray the upper face, down-cut ones the lower (common practice); turned end over end, the other face lies up.
    [Fact]
    public void The_face_that_shows_is_laid_where_the_bit_leaves_it_clean()
    {
        string one = Sections(Board().Plan!)[1];
        Assert.Contains("the face that will show down", one, StringComparison.Ordinal);
        Assert.Contains("It frays the upper face", one, StringComparison.Ordinal);
        Assert.DoesNotContain("frays the face that shows", one, StringComparison.Ordinal);
        string both = Sections(Board(("waste = \"screwed\" }", "waste = \"screwed\" }\nends = \"both\"")).Plan!)[1];
        Assert.Contains("this bit frays the face that shows", both, StringComparison.Ordinal);
    }

    // Screw heads that lie in the rim as the sheet says stay 3 mm clear of everything the bit does below the upper face.
    [Fact]
    public void The_rim_for_screws_is_clear_of_the_bit()
    {
        foreach (PlannedProgram program in SamplePlan.Plan.Programs.Where(p => p.Cut.Clamping.Make.Sheet is not null))
        {
            Box2 blank = program.Cut.Clamping.Stock.Box;
            const double Rim = 3 / 8.0 * 25.4;
            Assert.Contains("within 3/8 in of its rim", Sections(SamplePlan.Plan).Single(s => s.Contains($"<h2>{program.Name}:", StringComparison.Ordinal)), StringComparison.Ordinal);
            foreach (BitWork work in program.Cut.Works)
            {
                Box2 low = work.Path.WaysBelow(program.Cut.Clamping.Stock.Top).Aggregate(Box2.Empty, (box, way) => box.Union(way.Box)).Grown(work.Path.Bit.Radius + 3 + Rim);
                Assert.True(low.MinX >= blank.MinX && low.MaxX <= blank.MaxX && low.MinY >= blank.MinY && low.MaxY <= blank.MaxY, program.Name);
            }
        }
    }

    private static (Plan? Plan, Finding[] Findings) Board(params (string, string)[] changes) => SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Board, changes));
}
