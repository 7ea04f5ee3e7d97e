using System.Collections.Immutable;
using CsCheck;
using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;
using ToolpathForge.Posting;
using ToolpathForge.Proof;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Posting;

public class ProgramWriterTests
{
    private static readonly Dialect s_inchRadius = TestJobs.Metric with
    {
        Unit = LengthUnit.Inch,
        Decimals = 4,
        ArcDecimals = 5,
        FeedDecimals = 1,
        Arcs = ArcForm.Radius,
        LineNumberStep = 10,
        Header = ["G20 G90 G17 G94"],
        BitChange = BitChange.Pause,
        BitChangeLines = [],
        LineEnding = "\r\n",
    };

    private static Move Up(double z) => new(MoveKind.Rapid, new Point3(0, 0, z), 0, 0, Purpose.Retract, -1);

    private static Move Over(double x, double y) => new(MoveKind.Rapid, new Point3(x, y, 10), 0, 0, Purpose.Travel, -1);

    private static Move Line(double x, double y, double z) => new(MoveKind.Line, new Point3(x, y, z), 0, 1000, Purpose.Finish, -1);

    private static Move Arc(double x, double y, double z, double bulge) => new(MoveKind.Arc, new Point3(x, y, z), bulge, 1000, Purpose.Finish, -1);

    private static string[] Written(Dialect dialect, params ImmutableArray<Move> moves) =>
        new DialectPostProcessor(dialect).Write(new ProgramInput("test", [], [new Toolpath(TestJobs.Bit(), 16000, moves, [])], 0.01))
            .TrimEnd().Split(dialect.LineEnding);

    [Fact]
    public void The_first_move_is_straight_up_and_names_no_other_axis()
    {
        string[] lines = Written(TestJobs.Metric, Up(10), Line(1, 2, 10));
        Assert.Equal("G0 Z10", lines.First(l => l.StartsWith("G0", StringComparison.Ordinal)));
    }

    [Fact]
    public void Nothing_is_written_as_minus_nought_and_no_zeros_trail()
    {
        string[] lines = Written(TestJobs.Metric, Up(10), Line(-0.0004, 12.5, 10), Line(-0.0375, -0.00001, 9.9996));
        Assert.Contains("G1 X0 Y12.5 F1000", lines);
        Assert.Contains("X-0.038 Y0", lines);
        Assert.DoesNotContain(lines, l => l.Contains("-0 ", StringComparison.Ordinal) || l.EndsWith("-0", StringComparison.Ordinal));
    }

    // In centre form an arc whose written end is its start would be a full circle (NISTIR 6556, 3.5.3).
    [Fact]
    public void An_arc_that_rounds_to_nothing_is_not_written_as_a_circle()
    {
        string[] lines = Written(TestJobs.Metric, Up(10), Line(10, 10, 5), Arc(10.00001, 10, 5, 0.5), Arc(10.00001, 10.00001, 4, 0.5), Line(20, 10, 4));
        Assert.DoesNotContain(lines, l => l.Contains('I', StringComparison.Ordinal));
        Assert.Contains("Z4", lines);
    }

    [Fact]
    public void Radius_arcs_are_at_most_a_quarter_turn_and_lines_are_numbered()
    {
        string[] lines = Written(s_inchRadius, Up(10), Line(0, 0, 5), Arc(0, 50.8, 5, 1));
        string[] arcs = [.. lines.Where(l => l.Contains('R', StringComparison.Ordinal))];
        Assert.Equal(2, arcs.Length);
        Assert.All(arcs, l => Assert.Contains("R1", l, StringComparison.Ordinal));
        string[] numbers = [.. lines.Where(l => l[0] == 'N').Select(l => l.Split(' ')[0])];
        Assert.Equal(Enumerable.Range(1, numbers.Length).Select(i => $"N{i * 10}"), numbers);
        Assert.All(lines, l => Assert.True(l[0] is 'N' or '('));
    }

    // NISTIR 6556, 3.3.1: N and one to five digits.
    [Fact]
    public void Line_numbers_of_long_programs_begin_again_before_they_grow_too_long()
    {
        string[] lines = Written(s_inchRadius, [Up(10), .. Enumerable.Range(0, 12000).Select(i => Line(i % 200, i % 7, 5))]);
        int[] numbers = [.. lines.Where(l => l[0] == 'N').Select(l => int.Parse(l.Split(' ')[0][1..], System.Globalization.CultureInfo.InvariantCulture))];
        Assert.True(numbers.Length > 10000);
        Assert.InRange(numbers.Max(), 1, 99999);
        Assert.Equal([99990, 10], numbers[9998..10000]);
    }

    [Fact]
    public void Chords_stay_within_their_tolerance_where_a_dialect_has_no_arcs()
    {
        string[] lines = Written(TestJobs.Metric with { Arcs = ArcForm.Lines }, Up(10), Line(0, 0, 5), Arc(0, 40, 5, 1));
        string[] chords = [.. lines.Where(l => l.StartsWith('X') || l.StartsWith("G1 X", StringComparison.Ordinal)).Skip(1)];

        // Half a circle of radius 20 with chords that rise 0.01: 2 acos(1 - 0.01/20) each.
        Assert.Equal((int)Math.Ceiling(Math.PI / (2 * Math.Acos(1 - (0.01 / 20)))), chords.Length);
    }

    // NISTIR 6556, 3.5.3: radii at start and end may differ by 0.002 mm, or 0.0002 in. Every arc that is written obeys it with room to spare.
    [Fact]
    public void Every_arc_obeys_the_radius_rule()
    {
        Gen<Move> arc = Gen.Select(Gen.Double[-400, 400], Gen.Double[-400, 400], Gen.Double[-1, 1]).Select((x, y, bulge) => Arc(x, y, 5, bulge));
        Gen.Select(arc.Array[1, 12], Gen.Bool).Sample((arcs, inch) =>
        {
            Dialect dialect = inch ? s_inchRadius with { Arcs = ArcForm.Centre } : TestJobs.Metric;
            string text = string.Join('\n', Written(dialect, [Up(10), Over(0, 0), Line(0, 0, 5), .. arcs])) + "\n";
            GcodeProgram program = GcodeReader.Read(text);
            Assert.Null(program.Refusal);
            Assert.All(program.Steps.OfType<Motion>().Where(m => m.Kind == MotionKind.Arc), m => Assert.InRange(Math.Abs(m.RadiusError), 0, inch ? 0.0002 * 25.4 : 0.002));
        }, iter: 300);
    }

    // Read back, an arc passes within a few increments of where it was meant to.
    [Theory]
    [InlineData(ArcForm.Centre)]
    [InlineData(ArcForm.Radius)]
    public void Arcs_read_back_pass_where_they_were_meant_to(ArcForm form)
    {
        Dialect dialect = TestJobs.Metric with { Arcs = form };
        Gen.Select(Gen.Double[5, 200], Gen.Double[-3, 3], Gen.Double[0.02, 1]).Sample((chord, turn, bulge) =>
        {
            var meant = new Segment(new Point2(1, 2), new Point2(1, 2) + (Point2.Direction(turn) * chord), bulge);
            string text = string.Join('\n', Written(dialect, Up(10), Over(1, 2), Line(1, 2, 5), Arc(meant.End.X, meant.End.Y, 5, bulge))) + "\n";
            Motion[] arcs = [.. GcodeReader.Read(text).Steps.OfType<Motion>().Where(m => m.Kind == MotionKind.Arc)];
            Assert.Equal(meant.Length, arcs.Sum(m => m.Length), 0.01);
            foreach (Motion m in arcs)
            {
                for (double share = 0; share <= 1; share += 0.1)
                {
                    double angle = Math.Atan2(m.Start.Y - m.Center.Y, m.Start.X - m.Center.X) + (m.Sweep * share);
                    var at = new Point2(m.Center.X + (m.Radius * Math.Cos(angle)), m.Center.Y + (m.Radius * Math.Sin(angle)));
                    Assert.InRange(meant.Distance(at), 0, 0.001);
                }
            }
        }, iter: 300);
    }

    [Fact]
    public void Long_comments_are_broken_and_brackets_do_not_nest()
    {
        Dialect dialect = TestJobs.Metric with { LongestLine = 40 };
        string note = "Stock: hardboard (tempered), measured at 5.6 mm; lies face up — profile edge towards you";
        string text = new DialectPostProcessor(dialect).Write(new ProgramInput("test", [note], [new Toolpath(TestJobs.Bit(), 16000, [Up(10)], [])], 0.01));
        Assert.All(text.TrimEnd().Split('\n'), l => Assert.InRange(l.Length, 0, 40));
        Assert.All(text.Split('\n').Where(l => l.StartsWith('(')), l => Assert.Equal(l.Length - 1, l.IndexOf(')', StringComparison.Ordinal)));
        Assert.All(text, c => Assert.InRange(c, '\n', '~'));
    }
}
