using ToolpathForge.Proof;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Proof;

/// <summary>The reader against NISTIR 6556, The NIST RS274NGC Interpreter - Version 3: its examples, its sample program, its rules.</summary>
public class GcodeReaderTests
{
    private static Motion[] Motions(string text)
    {
        GcodeProgram program = GcodeReader.Read(text);
        Assert.Null(program.Refusal);
        return [.. program.Steps.OfType<Motion>()];
    }

    /// <summary>Figures computed from the listing of appendix C.1.</summary>
    [Fact]
    public void The_sample_program_of_appendix_C_1_has_its_figures()
    {
        GcodeProgram program = GcodeReader.Read(File.ReadAllText(Repo.Path("tests", "data", "reference", "nistir-6556-c1.ngc")));
        Assert.Null(program.Refusal);
        Motion[] motions = [.. program.Steps.OfType<Motion>()];
        Motion[] arcs = [.. motions.Where(m => m.Kind == MotionKind.Arc)];
        MotionFigures figures = FigureCounter.Count(program);

        Assert.Equal(29, figures.StraightFeeds);
        Assert.Equal(5, figures.Arcs);
        double[] sweeps = [270, 360, 360, 77.364, 180];
        Assert.All(arcs.Zip(sweeps), a => Assert.Equal(a.Second, Math.Abs(a.First.Sweep) * 180 / Math.PI, 3));
        bool[] clockwise = [false, true, true, true, true];
        Assert.Equal(clockwise, arcs.Select(a => a.Sweep < 0));
        Assert.Equal(66.5, arcs[3].Center.X, 9);
        Assert.Equal(0.8775, arcs[3].Center.Y, 4);
        Assert.Equal(183.4305, figures.FeedLength, 4);
        Assert.Equal(30.0, figures.PlungeLength, 9);
        Assert.Equal(202.0528, figures.RapidLength, 4);
        Assert.Equal(9.1715, figures.FeedSeconds / 60, 4);
        Assert.Equal(new SpacePoint(0, 0, -0.5), figures.Min);
        Assert.Equal(81, figures.Max.X, 9);
        Assert.Equal(10, figures.Max.Y, 9);
        Assert.Equal(61, program.Lines); // numbered n0010 to n0620, n0180 left out
        Assert.IsType<ProgramEnd>(program.Steps[^1]);
        Assert.Equal(StatedModes.Distance, program.Unstated[0].Mode);
        Assert.Contains(new SpindleChange(2, true, 4000), program.Steps);
        Assert.Contains(new ToolChange(2, 1), program.Steps);
    }

    /// <summary>NISTIR 6556 section 3.5.3.2: from (7, 7) the centre is (10, 11) and the radius 5.</summary>
    [Fact]
    public void Worked_arc_by_centre()
    {
        Motion arc = Motions("g21 g17 g90 g0 x7 y7 z0\nf100 g2 x10 y16 i3 j4\n")[1];
        Assert.Equal(new PlanePoint(10, 11), arc.Center);
        Assert.Equal(5, arc.Radius, 12);
        Assert.Equal(0, arc.RadiusError, 12);
        Assert.True(arc.Sweep < 0);
        Assert.Equal(Math.Atan2(5, 0) - Math.Atan2(-4, -3) - Math.Tau, arc.Sweep, 12);
    }

    /// <summary>NISTIR 6556 table 10.</summary>
    [Fact]
    public void Worked_arc_by_radius_with_an_expression_and_a_helix()
    {
        Motion arc = Motions("g21 g0 x0 y0 z0\ng1 x3 y1 f20\ng2 x[6-[4*3/2]] r7.01 z0.5\n")[2];
        Assert.Equal(new SpacePoint(0, 1, 0.5), arc.End);
        Assert.Equal(1.5, arc.Center.X, 9);
        Assert.Equal(7.8476, arc.Center.Y, 4);
        Assert.Equal(20, arc.Feed);
        Assert.Equal(Math.Sqrt(Math.Pow(7.01 * arc.Sweep, 2) + 0.25), arc.Length, 12);
    }

    /// <summary>Section 3.5.3.1: a positive radius turns through at most half a turn, a negative one through more.</summary>
    [Theory]
    [InlineData("g2 x10 y0 r8", -1, -6.244998, false)]
    [InlineData("g3 x10 y0 r8", 1, 6.244998, false)]
    [InlineData("g2 x10 y0 r-8", -1, 6.244998, true)]
    [InlineData("g3 x10 y0 r-8", 1, -6.244998, true)]
    [InlineData("g2 x10 y0 r5", -1, 0, false)]
    [InlineData("g2 x10.003 y0 r5", -1, 0, false)]
    public void Radius_form_picks_centre_and_turn(string line, int sign, double centerY, bool isLong)
    {
        Motion arc = Motions($"g21 g0 x0 y0 z0\nf100 {line}\n")[1];
        Assert.Equal(centerY, arc.Center.Y, 5);
        Assert.Equal(sign, Math.Sign(arc.Sweep));
        Assert.Equal(isLong, Math.Abs(arc.Sweep) > Math.PI + 1e-6);
    }

    [Fact]
    public void Case_and_spaces_do_not_matter_outside_comments()
    {
        // Section 3.3.1: "g0x +0. 12 34y 7" is "g0 x+0.1234 y7".
        Motion a = Motions("g21\ng0x +0. 12 34y 7\n")[0];
        Motion b = Motions("G21\n\tG 0 X +0.1234 Y7\n")[0];
        Assert.Equal(a, b);
        Assert.Equal(0.1234, a.End.X);
        Assert.Equal(7, a.End.Y);
        Assert.True(double.IsNaN(a.End.Z));
    }

    [Theory]
    [InlineData("G21 (first) G0 (second; not a comment of the other kind) X1 ( ) Y2 ; (open")]
    [InlineData("N99999 G21 G0 X1 Y2")]
    [InlineData("N1 (note) Y2 X1 G0 G21")]
    [InlineData("G21 G0 X[1] Y[4/2]")]
    public void Comments_numbers_and_order_leave_the_motion_as_it_is(string line)
    {
        SpacePoint end = Motions(line)[0].End;
        Assert.Equal((1, 2), (end.X, end.Y));
    }

    [Theory]
    [InlineData("2.0 / 3 * 1.5 - 5.5 / 11.0", 0.5)] // section 3.3.2.3
    [InlineData("1+2*3**2", 19)]
    [InlineData("2**3**2", 64)] // powers, too, from left to right
    [InlineData("10-3-2", 5)]
    [InlineData("7 mod 4", 3)]
    [InlineData("-7 mod 4", 1)]
    [InlineData("1 and 0 or 1", 1)]
    [InlineData("1 xor 1", 0)]
    [InlineData("3 or 0", 1)]
    [InlineData("acos[0]", 90)]
    [InlineData("asin[1]", 90)]
    [InlineData("atan[1]/[1]", 45)]
    [InlineData("atan[1]/[-1]", 135)]
    [InlineData("cos[60]", 0.5)]
    [InlineData("sin[30]", 0.5)]
    [InlineData("tan[45]", 1)]
    [InlineData("exp[0]", 1)]
    [InlineData("ln[exp[2]]", 2)]
    [InlineData("fix[2.8]", 2)]
    [InlineData("fix[-2.8]", -3)] // section 3.3.2.4
    [InlineData("fup[2.8]", 3)]
    [InlineData("fup[-2.8]", -2)]
    [InlineData("round[2.5]", 3)]
    [InlineData("sqrt[16]", 4)]
    [InlineData("abs[-3]", 3)]
    [InlineData("[1+1]*[2+2]", 8)]
    public void Expressions_have_their_value(string expression, double value) =>
        Assert.Equal(value, Motions($"g21 g0 x[{expression}]\n")[0].End.X, 12);

    [Fact]
    public void A_function_may_stand_without_outer_brackets() =>
        Assert.Equal(3, Motions("g21 g0 xsqrt[9] y1\n")[0].End.X, 12);

    [Fact]
    public void Inches_become_millimetres_and_feeds_with_them()
    {
        Motion[] m = Motions("g20 g90\ng0 x1 y0.5 z0\ng1 x2 f10\n");
        Assert.Equal(25.4, m[0].End.X, 12);
        Assert.Equal(50.8, m[1].End.X, 12);
        Assert.Equal(254, m[1].Feed, 12);
    }

    [Fact]
    public void Codes_of_the_other_standard_only_where_they_are_told()
    {
        Assert.Equal(FaultCodes.CodeRefused, GcodeReader.Read("g70\n").Refusal!.Code);
        GcodeProgram program = GcodeReader.Read("g70\ng0 x1\n", acceptsIsoUnits: true);
        Assert.Null(program.Refusal);
        Assert.Equal(25.4, ((Motion)program.Steps[0]).End.X, 12);
    }

    [Fact]
    public void Incremental_distances_add_up()
    {
        Motion[] m = Motions("g21 g90 g0 x10 y10 z5\ng91 x1\nx1 y-2\ng90 x0\n");
        Assert.Equal(12, m[2].End.X, 12);
        Assert.Equal(8, m[2].End.Y, 12);
        Assert.Equal(new SpacePoint(0, 8, 5), m[3].End);
    }

    /// <summary>Section 3.8 and table 8: feed before tool change, tool change before the spindle, dwell before the motion, stop last.</summary>
    [Fact]
    public void Words_of_a_line_act_in_the_standards_order()
    {
        GcodeProgram program = GcodeReader.Read("g21 g0 x0 y0 z0\nm0 f50 x5 g4 p2 m3 s900 t7 m6 g1\n");
        Assert.Equal(
            [
                new ToolChange(2, 7), new SpindleChange(2, true, 900), new Dwell(2, 2),
                new Motion(2, MotionKind.Line, new(0, 0, 0), new(5, 0, 0), 50), new Pause(2, false, 7),
            ],
            program.Steps[1..]);
    }

    [Fact]
    public void A_full_circle_in_centre_form_goes_round_once_and_the_helix_climbs()
    {
        Motion[] m = Motions("g21 g17 g90\ng0 x5 y0 z0 f100\ng3 x5 y0 i-5 j0 z-1\ng2 x5 i-5\n");
        Assert.Equal(Math.Tau, m[1].Sweep, 12);
        Assert.Equal(-Math.Tau, m[2].Sweep, 12);
        Assert.Equal(-1, m[1].End.Z);
    }

    [Theory]
    [InlineData("%\ng21\nm2\n%\n")]
    [InlineData("\n  \n % \ng21\n%\nthis is not read ( at all\n")]
    [InlineData("g21\nm2\nnor is this (\n%\n")]
    [InlineData("g21\r\nm2\r\n")]
    [InlineData("g21\rm30")]
    [InlineData("")]
    [InlineData("%\n%")]
    public void Percent_lines_and_ends_that_are_in_order(string text) => Assert.Null(GcodeReader.Read(text).Refusal);

    [Fact]
    public void Modes_that_were_not_stated_are_told_with_their_line()
    {
        GcodeProgram program = GcodeReader.Read("g0 x0 y0 z0\nf100\ng2 x1 y1 i1\n");
        Assert.Null(program.Refusal);
        Assert.Equal([(StatedModes.Unit, 1), (StatedModes.Distance, 1), (StatedModes.Feed, 2), (StatedModes.Plane, 3)], program.Unstated);
        Assert.Empty(GcodeReader.Read("g21 g90 g17 g94\ng0 x0 y0 z0\nf100 g21\ng2 x1 y1 i1\n").Unstated);
    }

    [Fact]
    public void Deletable_lines_run_and_are_told()
    {
        GcodeProgram program = GcodeReader.Read("/ (only a comment)\n / g21 g0 x5\n");
        Assert.Null(program.Refusal);
        Assert.Equal([2], program.DeletableLines);
        Assert.Equal(5, ((Motion)program.Steps[0]).End.X);
    }

    [Fact]
    public void Codes_without_effect_on_the_path_are_taken() =>
        Assert.Equal(2, Motions("g21 g90 g17 g94 g40 g49 g80 g54 g64\nm7\nm9\nm8 g61\ng61.1 g54 m9\ng0 x0 y0 z5\ng1 x1 f10\nm1\nm30").Length);
}
