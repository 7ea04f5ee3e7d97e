using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.Service.Files;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>What a job makes of a drawing, and what it says of one that it can make nothing of.</summary>
public sealed class OutlineReaderTests
{
    private const string Drawing = "drawing = '@part'\n";

    private static readonly Contour s_square = Contour.Rectangle(new Box2(0, 0, 120, 100));

    private static Finding Only(JobReading reading) => Assert.Single(reading.Findings);

    [Fact]
    public void A_piece_lies_as_it_was_drawn_with_its_holes()
    {
        var make = (OutlineMake)OutlineJobs.Read(Drawing + OutlineJobs.Usual, BraceDrawing.Brace, BraceDrawing.Slot, BraceDrawing.Screws[0], BraceDrawing.CutOut).Job!.Makes.Single();
        var upright = new Placement(Math.PI, default, false);
        Box2 box = CurveExtent.Box(make.Edge.Placed(upright));
        Assert.Equal((0, 0, 220, 220), (Math.Round(box.MinX, 9), Math.Round(box.MinY, 9), Math.Round(box.MaxX, 9), Math.Round(box.MaxY, 9)));
        Assert.Equal(3, make.Openings.Length);
        Opening screw = make.Openings.Single(o => o.IsHole);
        Assert.Equal(8, screw.Width, 9);
        Assert.True(make.InDrawing(screw.From).DistanceTo(new Point2(18, 200)) < 1e-9);
        Opening slot = make.Openings.Single(o => !o.IsHole && o.Edge is null);
        Assert.Equal(9, slot.Width, 9);
        Assert.Equal(40, slot.From.DistanceTo(slot.To), 9);
        Assert.Single(make.Openings, o => o.Edge is not null);
    }

    [Fact]
    public void Scale_mirror_and_turn_follow_each_other_in_this_order()
    {
        Contour drawn = Contour.Polygon(new(0, 0), new(60, 0), new(60, 20), new(0, 50));
        var make = (OutlineMake)OutlineJobs.Read(Drawing + "scale = 2\nmirrored = true\nturn = 90\n" + OutlineJobs.Usual, drawn).Job!.Makes.Single();

        // (60, 20) twice as large, left and right changed over, a quarter turn to the left.
        var there = new Point2(-40, -120);
        Assert.Contains(make.Edge.Placed(new Placement(Math.PI, default, false)).Curves, c => c.Start.DistanceTo(there) < 1e-9);
        Assert.All(make.Edge.Curves, c => Assert.IsType<LineCurve>(c));
        Assert.True(ArcFit.Fit(make.Edge, 0.01).Contour.IsCounterClockwise);
    }

    [Fact]
    public void Several_outlines_are_makes_of_their_own_and_share_a_blank()
    {
        Contour second = Contour.Rectangle(new Box2(200, 0, 300, 100));
        JobReading reading = OutlineJobs.Read(Drawing + "count = 2\n" + OutlineJobs.Usual, s_square, second);
        Assert.Equal(["part-1", "part-2"], reading.Job!.Makes.Select(m => m.Id));
        Plan plan = Planner.Plan(reading.Job, cancel: CancellationToken.None);
        Assert.Equal(4, Assert.Single(plan.Programs).Cut.Clamping.Pieces.Length);
    }

    [Fact]
    public void A_place_for_a_tab_is_one_of_the_drawing()
    {
        JobReading reading = OutlineJobs.Read(
            Drawing + "turn = 30\ntab = [ { x = 60, y = 0 }, { x = 60, y = 100 }, { x = 0, y = 50 }, { x = 120, y = 50 } ]\n"
            + OutlineJobs.Usual.Replace("tabs = 4, ", "", StringComparison.Ordinal), s_square);
        Plan plan = Planner.Plan(reading.Job!, cancel: CancellationToken.None);
        PlannedProgram program = Assert.Single(plan.Programs);
        Assert.Equal(4, program.Cut.Tabs.Length);
    }

    [Fact]
    public void A_drawing_that_is_not_there_is_told_where_it_is_named()
    {
        Finding finding = Only(OutlineJobs.Read("drawing = '@prat'\n" + OutlineJobs.Usual, s_square));
        Assert.Equal(("drawing-missing", 10), (finding.Kind.Code, finding.Place.Line));
    }

    [Fact]
    public void A_layer_that_is_not_there_is_told_with_the_nearest()
    {
        Finding finding = Only(OutlineJobs.Read(Drawing + "layer = 'outlin'\n" + OutlineJobs.Usual, s_square));
        Assert.Equal(("drawing-layer-unknown-near", 11), (finding.Kind.Code, finding.Place.Line));
        Assert.Contains(finding.Args, a => a.Name == "near" && a.Text == "outline");
    }

    [Fact]
    public void Lines_that_close_nothing_stop_the_job_and_beside_an_outline_they_are_told()
    {
        Contour open = Contour.Polyline(new(0, 0), new(50, 0), new(50, 40));
        JobReading nothing = OutlineJobs.Read(Drawing + OutlineJobs.Usual, open);
        Assert.Null(nothing.Job);
        Assert.Equal("drawing-nothing-closed", Only(nothing).Kind.Code);
        JobReading beside = OutlineJobs.Read(Drawing + OutlineJobs.Usual, s_square, open.Placed(Placement.At(300, 0)));
        Assert.Equal("drawing-open-lines-left", Only(beside).Kind.Code);
        Assert.NotNull(beside.Job);
    }

    [Fact]
    public void Outlines_that_cross_stop_the_job_with_the_place_in_the_drawing()
    {
        JobReading reading = OutlineJobs.Read(Drawing + OutlineJobs.Usual, s_square, Contour.Rectangle(new Box2(60, 50, 200, 150)));
        Finding finding = reading.Findings.Single(f => f.Kind.Severity == Severity.Stop);
        Assert.Equal("outlines-cross", finding.Kind.Code);
        Assert.NotNull(finding.Place.Point);
        Assert.Null(reading.Job);
    }

    [Theory]
    [InlineData(2.5, null)]
    [InlineData(1.5, "hole-at-edge")]
    [InlineData(0, "hole-at-edge")]
    public void A_hole_near_the_edge_is_refused(double left, string? code) => Refused(code, s_square, Contour.Rectangle(new Box2(left, 40, left + 30, 70)), radius: 4);

    [Fact]
    public void Holes_near_each_other_are_refused() =>
        Refused("holes-crowded", s_square, Contour.Circle(new Point2(40, 50), 8), Contour.Circle(new Point2(57, 50), 8));

    [Fact]
    public void A_corner_that_the_bit_does_not_get_into_is_told_where_it_is()
    {
        Finding finding = Refused("hole-too-tight", s_square, Contour.Rectangle(new Box2(40, 30, 80, 70)))!;
        (double x, double y) = finding.Place.Point!.Value;
        Assert.True(new[] { 40.0, 80 }.Any(v => Math.Abs(v - x) < 4) && new[] { 30.0, 70 }.Any(v => Math.Abs(v - y) < 4), $"{x}, {y}");
    }

    [Fact]
    public void A_hole_with_a_neck_is_refused() => Refused(
        "hole-too-narrow", s_square, new Contour([new(30, 40, 0), new(45, 40, 0), new(45, 48, 0), new(70, 48, 0), new(70, 40, 0), new(85, 40, 0), new(85, 60, 0), new(70, 60, 0), new(70, 52, 0), new(45, 52, 0), new(45, 60, 0), new(30, 60, 0)], true));

    [Fact]
    public void A_hollow_of_the_outline_is_refused_in_the_drawings_own_terms() => Refused(
        "outline-too-tight", Contour.Polygon(new(0, 0), new(150, 0), new(150, 100), new(90, 100), new(75, 60), new(60, 100), new(0, 100)));

    [Theory]
    [InlineData("brace.dxf", true)]
    [InlineData("below/brace.dxf", true)]
    [InlineData("../brace.dxf", false)]
    [InlineData("below/../../brace.dxf", false)]
    [InlineData("/etc/passwd", false)]
    [InlineData("C:\\brace.dxf", false)]
    [InlineData("below\\brace.dxf", false)]
    [InlineData("./brace.dxf", false)]
    [InlineData("link/brace.dxf", false)]
    [InlineData("link.dxf", false)]
    [InlineData("inner.dxf", true)]
    public void Only_names_that_stay_in_the_folder_are_opened(string name, bool stays)
    {
        using var scratch = new Scratch();
        string folder = scratch.Path("job");
        Directory.CreateDirectory(Path.Combine(folder, "below"));
        Directory.CreateDirectory(scratch.Path("elsewhere"));
        File.WriteAllText(scratch.Path("brace.dxf"), "");
        File.WriteAllText(Path.Combine(folder, "brace.dxf"), "");
        Directory.CreateSymbolicLink(Path.Combine(folder, "link"), scratch.Path("elsewhere"));
        File.CreateSymbolicLink(Path.Combine(folder, "link.dxf"), scratch.Path("brace.dxf"));
        File.CreateSymbolicLink(Path.Combine(folder, "inner.dxf"), Path.Combine(folder, "brace.dxf"));
        Assert.Equal(stays, JobDrawings.Within(folder, name) is not null);
    }

    private static Finding? Refused(string? code, Contour outline, Contour hole, double radius) =>
        Refused(code, outline, BraceDrawing.Rounded([.. hole.Vertices.ToArray().Select(v => v.Point)], radius));

    private static Finding? Refused(string? code, params Contour[] drawn)
    {
        JobReading reading = OutlineJobs.Read(Drawing + OutlineJobs.Usual, drawn);
        Assert.NotNull(reading.Job);
        Plan plan = Planner.Plan(reading.Job, cancel: CancellationToken.None);
        Finding? stop = plan.Findings.FirstOrDefault(f => f.Kind.Severity == Severity.Stop);
        Assert.Equal(code, stop?.Kind.Code);
        Assert.Equal(code is null, plan.Programs.Length == 1);
        return stop;
    }
}
