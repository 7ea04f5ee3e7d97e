using System.Text;
using System.Text.Json.Nodes;
using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Planning;
using ToolpathForge.Service.Files;
using ToolpathForge.Service.Host;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Shapes;
using ToolpathForge.Tests.Support;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>A board's end that follows the open line of a drawing.</summary>
public sealed class DrawingShapeTests
{
    private const double Inch = 25.4;

    private const string Svg = """<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100"><path id="tail" d="M 50 80 A 40 30 0 0 1 90 50"/></svg>""";

    private static readonly Contour s_rise = Contour.Polyline(new(0, 0), new(30, 10), new(60, 40));

    private static Profile Profile(JobReading reading)
    {
        Assert.Empty(reading.Findings.Select(f => FindingText.Word(f, LengthUnit.Inch).ToString()));
        var make = (ProfileMake)reading.Job!.Makes[0];
        var findings = new List<Finding>();
        Profile? profile = make.Shape.Shape.Scale(make.Shape, make.DesignWidth, findings);
        Assert.Empty(findings.Select(f => FindingText.Word(f, LengthUnit.Inch).ToString()));
        return profile!;
    }

    /// <summary>What stops the job, when it is read or when its shape is made.</summary>
    private static Finding Stop(JobReading reading)
    {
        Finding[] stops = [.. reading.Findings.Where(f => f.Kind.Severity == Severity.Stop)];
        if (stops.Length == 0)
        {
            Plan plan = Planner.Plan(reading.Job!, cancel: CancellationToken.None);
            Assert.Empty(plan.Programs);
            stops = [.. plan.Findings.Where(f => f.Kind.Severity == Severity.Stop)];
        }

        Finding stop = Assert.Single(stops);
        Assert.DoesNotContain("{", FindingText.Word(stop, LengthUnit.Inch).ToString(), StringComparison.Ordinal);

        // The shape is the last line of the job.
        Assert.Equal(("tail.toml", 14), (stop.Place.File, stop.Place.Line));
        return stop;
    }

    private static ReadDrawing Quarter(string from) => from switch
    {
        "ezdxf" => TailDrawing.Read(OutsideTool.Python("tail_quarter.py", "", "ezdxf"), "quarter.dxf"),
        "dxf" => TailDrawing.Read(DxfWriter.Write([new DxfLayer("tail", LineRole.Edge, [new([new EllipseCurve(new(40, 0), new(-40, 0), new(0, 30), 0, Math.PI / 2)], false)], [])]), "quarter.dxf"),
        "backwards" => TailDrawing.Read(DxfWriter.Write([new DxfLayer("tail", LineRole.Edge, [new([new EllipseCurve(new(40, 0), new(0, 30), new(-40, 0), 0, Math.PI / 2)], false)], [])]), "quarter.dxf"),
        _ => TailDrawing.Read(Svg, "quarter.svg"),
    };

    // The points of the quarter that is drawn lie on the ellipse of the shape of that name, x²/a² + y²/b² = 1, and begin and end where it does.
    [Theory]
    [InlineData("ezdxf", "layer = 'tail', run = '4', depth = '3'")]
    [InlineData("ezdxf", "layer = 'tail', run = '4'")]
    [InlineData("dxf", "depth = '3'")]
    [InlineData("backwards", "run = '4'")]
    [InlineData("svg", "run = '4'")]
    [InlineData("svg", "run = '4', depth = '3', unit = 'in'")]
    public void A_quarter_in_a_drawing_is_the_quarter_ellipse(string from, string answers)
    {
        Profile drawn = Profile(TailDrawing.Job("file = '@tail', " + answers, Quarter(from)));
        Profile known = ShapeJobs.Made("kind = 'quarter-ellipse', form = 'scoop', run = '4', depth = '3'");
        Assert.Equal(known.Run, drawn.Run, 1e-9);
        Assert.Equal(known.Depth, drawn.Depth, 1e-9);
        Curve curve = Assert.Single(drawn.Exact.Curves.SkipLast(1));
        var ellipse = (EllipseCurve)known.Exact.Curves[0];
        Assert.Equal(0, curve.Start.DistanceTo(ellipse.Start), 1e-6);
        Assert.Equal(0, curve.End.DistanceTo(ellipse.End), 1e-6);
        Assert.Equal(ellipse.Length, curve.Length, 1e-6);
        for (double t = 0; t <= 1; t += 0.0625)
        {
            Point2 p = curve.PointAt(t) - ellipse.Center;
            Assert.Equal(1, Math.Pow(p.X / (4 * Inch), 2) + Math.Pow(p.Y / (3 * Inch), 2), 1e-8);
        }
    }

    [Fact]
    public void Without_run_and_depth_it_is_as_large_as_drawn_in_the_unit_that_is_known()
    {
        Profile mm = Profile(TailDrawing.Job("file = '@tail'", Quarter("dxf")));
        Assert.Equal((40, 30), (Math.Round(mm.Run, 9), Math.Round(mm.Depth, 9)));
    }

    [Theory]
    [InlineData("file = 'tail.svg'", "drawn-line-unit-needed")]
    [InlineData("file = 'tail.svg', unit = 'mm'", null)]
    [InlineData("file = 'tail.svg', depth = '0.3 w'", null)]
    public void A_drawing_without_a_unit_needs_one_or_a_size(string answers, string? code)
    {
        using var scratch = new Scratch();
        scratch.Write("tail.svg", Svg.Replace("mm", "", StringComparison.Ordinal));
        JobReading reading = TailDrawing.Job(answers, null, scratch.Root);
        if (code is not null)
        {
            Assert.Equal(code, Stop(reading).Kind.Code);
            return;
        }

        Profile profile = Profile(reading);
        Assert.Equal(4.0 / 3, profile.Run / profile.Depth, 1e-9);
        Assert.Equal(answers.Contains("unit", StringComparison.Ordinal) ? 30 : 0.3 * 5.5 * Inch, profile.Depth, 1e-9);
    }

    [Fact]
    public void Sizes_are_rounded_and_keep_their_proportion_as_those_of_any_shape()
    {
        Profile profile = Profile(TailDrawing.Job("file = '@tail', run = '0.58 w', depth = '0.40 w', round = '1/8'", Quarter("dxf")));
        Profile known = ShapeJobs.Made("kind = 'quarter-ellipse', form = 'scoop', run = '0.58 w', depth = '0.40 w', round = '1/8'");
        Assert.Equal(known.Run, profile.Run, 1e-9);
        Assert.Equal(known.Depth, profile.Depth, 1e-9);
        Assert.Equal((3.25, 2.25), (Math.Round(profile.Run / Inch, 9), Math.Round(profile.Depth / Inch, 9)));
    }

    [Fact]
    public void What_is_drawn_as_a_left_hand_piece_is_mirrored()
    {
        Profile right = Profile(TailDrawing.Job("file = '@tail', depth = '2'", TailDrawing.Read(s_rise)));
        ReadDrawing left = TailDrawing.Read(s_rise.Placed(new Placement(0, new Point2(70, 3), true)));
        Assert.Equal("drawn-line-not-up-right", Stop(TailDrawing.Job("file = '@tail', depth = '2'", left)).Kind.Code);
        Profile mirrored = Profile(TailDrawing.Job("file = '@tail', depth = '2', mirrored = true", left));
        Assert.Equal(right.Exact.Curves.Length, mirrored.Exact.Curves.Length);
        Assert.All(right.Exact.Curves.Zip(mirrored.Exact.Curves), p => Assert.Equal(0, p.First.End.DistanceTo(p.Second.End), 1e-9));
    }

    // Ends of curves that a drawing leaves 8 thousandths apart go to their middle, and the curves stay the kinds they are; wider gaps are bridged.
    [Theory]
    [InlineData(0.008, 0.01, 2)]
    [InlineData(0.5, 1, 3)]
    public void Parts_that_nearly_meet_are_joined_and_stay_exact(double apart, double gap, int parts)
    {
        var hollow = new EllipseCurve(new(60, 14 + apart), new(-60, 0), new(0, 40), 0, Math.PI / 2);
        ReadDrawing drawing = TailDrawing.Read(
            DxfWriter.Write([new DxfLayer("tail", LineRole.Edge, [new([hollow], false), new([new LineCurve(new(0, 14), new(0, 0))], false)], [])]), "gap.dxf");
        Outline line = Assert.Single(OpenLines.Of(DrawingTrace.Of(drawing, "gap.dxf", gap: gap), null, gap));
        Assert.Equal(parts, line.Curves.Length);
        Assert.Single(line.Curves, c => c is EllipseCurve);
        for (int i = 0; i + 1 < line.Curves.Length; i++)
        {
            Assert.Equal(0, line.Curves[i].End.DistanceTo(line.Curves[i + 1].Start), 1e-9);
        }

        Curve ellipse = line.Curves.Single(c => c is EllipseCurve);
        Assert.All(Enumerable.Range(0, 9), i => Assert.InRange(Math.Min(ellipse.PointAt(i / 8.0).DistanceTo(hollow.PointAt(i / 8.0)), ellipse.PointAt(1 - (i / 8.0)).DistanceTo(hollow.PointAt(i / 8.0))), 0, 0.01));
    }

    [Fact]
    public void What_is_drawn_twice_is_walked_once()
    {
        Outline Part(Curve curve) => new([curve], false);
        Curve[] parts = [.. TailDrawing.Line.Curves];
        ReadDrawing drawing = TailDrawing.Read(
            DxfWriter.Write([new DxfLayer("tail", LineRole.Edge, [Part(parts[2]), Part(parts[0]), Part(parts[1].Reversed()), Part(parts[1]), Part(parts[0])], [])]), "twice.dxf");
        Outline line = Assert.Single(OpenLines.Of(DrawingTrace.Of(drawing, "twice.dxf"), null, null));
        Assert.Equal(3, line.Curves.Length);
        Assert.Equal(2, line.Curves.Count(c => c is EllipseCurve));
        Assert.Equal(parts.Sum(c => c.Length), line.Curves.Sum(c => c.Length), 1e-9);
    }

    // An ellipse but for a hundredth of its way round, whose ends would be moved by as much as they are apart: the cleaned arcs stand for it, and still meet.
    [Fact]
    public void What_cannot_be_moved_without_harm_is_taken_as_cleaned()
    {
        var nearly = new EllipseCurve(new(40, 20), new(-40, 0), new(0, 20), 0, (2 * Math.PI) - 0.0006);
        Point2 end = nearly.End + new Point2(0, -0.006);
        ReadDrawing drawing = TailDrawing.Read(
            DxfWriter.Write([new DxfLayer("tail", LineRole.Edge, [new([nearly], false), new([new LineCurve(end, end + new Point2(-30, -5))], false)], [])]), "nearly.dxf");
        Outline line = Assert.Single(OpenLines.Of(DrawingTrace.Of(drawing, "nearly.dxf"), null, null));
        Assert.True(line.Curves.Length > 4);
        Assert.DoesNotContain(line.Curves, c => c is EllipseCurve);
        Assert.All(line.Curves.Zip(line.Curves.Skip(1)), p => Assert.Equal(0, p.First.End.DistanceTo(p.Second.Start), 1e-9));
    }

    // In metres a fit to 0.0001 of a unit, enlarged a thousand times, would be a tenth of a millimetre off: the curves themselves are scaled.
    [Fact]
    public void However_small_it_is_drawn_its_curves_are_scaled_exactly()
    {
        string small = Svg.Replace("mm", "", StringComparison.Ordinal).Replace("M 50 80 A 40 30 0 0 1 90 50", "M 0.5 0.8 A 0.4 0.3 0 0 1 0.9 0.5", StringComparison.Ordinal);
        Profile profile = Profile(TailDrawing.Job("file = '@tail', depth = '3'", TailDrawing.Read(small, "small.svg")));
        Curve curve = profile.Exact.Curves[0];
        Point2 center = profile.Nose + new Point2(0, 3 * Inch);
        for (double t = 0; t <= 1; t += 0.125)
        {
            Point2 p = curve.PointAt(t) - center;
            Assert.Equal(1, Math.Pow(p.X / (4 * Inch), 2) + Math.Pow(p.Y / (3 * Inch), 2), 1e-9);
        }
    }

    [Fact]
    public void A_drawing_without_an_open_line_is_refused()
    {
        Finding finding = Stop(TailDrawing.Job("file = '@tail', depth = '2'", TailDrawing.Read(Contour.Rectangle(new Box2(0, 0, 50, 40)), Contour.Circle(new Point2(20, 20), 5))));
        Assert.Equal(("drawing-nothing-open", 2), (finding.Kind.Code, finding.Found!.Value.Value));
    }

    [Fact]
    public void Two_open_lines_are_refused_with_their_places()
    {
        Finding finding = Stop(TailDrawing.Job("file = '@tail', depth = '2'", TailDrawing.Read(s_rise, s_rise.Placed(Placement.At(100, 5.5)))));
        Assert.Equal("drawing-several-open", finding.Kind.Code);
        Assert.Contains("2 open lines, where 1 is wanted: from 0, 0 to 60, 40; 100, 5.5 to 160, 45.5.", FindingText.Word(finding, LengthUnit.Millimetre).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_crosses_itself_is_refused() => Assert.Equal(
        "shape-crosses-itself",
        Stop(TailDrawing.Job("file = '@tail', depth = '2'", TailDrawing.Read(Contour.Polyline(new(0, 0), new(60, 30), new(20, 30), new(60, 10), new(70, 40))))).Kind.Code);

    [Fact]
    public void A_line_of_very_many_parts_is_refused()
    {
        Contour fine = Contour.Polyline([.. Enumerable.Range(0, 2002).Select(i => new Point2(i * 0.05, i * i * 1e-5))]);
        Assert.Equal("drawing-line-too-fine", Stop(TailDrawing.Job("file = '@tail', depth = '2'", TailDrawing.Read(fine))).Kind.Code);
    }

    [Theory]
    [InlineData("file = '@tial'", "drawing-missing")]
    [InlineData("file = 'tail.dxf'", "drawing-missing")]
    [InlineData("file = '../tail.dxf'", "drawing-outside-folder")]
    [InlineData("file = '/etc/passwd'", "drawing-outside-folder")]
    [InlineData("file = '@tail', layer = 'tial'", "drawing-layer-unknown-near")]
    [InlineData("file = '@tail', drawing = 'x'", "unknown-key")]
    public void A_drawing_that_cannot_be_had_is_told_where_it_is_named(string answers, string code)
    {
        using var scratch = new Scratch();
        scratch.Write("tail.dxf", TailDrawing.Dxf);
        Directory.CreateDirectory(scratch.Path("job"));
        JobReading reading = TailDrawing.Job(answers, TailDrawing.Read(s_rise), scratch.Path("job"));
        Assert.Null(reading.Job);
        Assert.StartsWith(code, Stop(reading).Kind.Code, StringComparison.Ordinal);
    }

    [Fact]
    public void Closed_lines_beside_it_are_told_and_not_used()
    {
        JobReading reading = TailDrawing.Job("file = '@tail', depth = '2'", TailDrawing.Read(s_rise, Contour.Circle(new Point2(-40, 20), 5)));
        Finding note = Assert.Single(reading.Findings);
        Assert.Equal(("drawing-outlines-left", Severity.Note), (note.Kind.Code, note.Kind.Severity));
        Assert.NotNull(reading.Job);
    }

    [Fact]
    public void The_drawing_of_the_sample_is_ours() =>
        Golden.SameFile(Repo.Path("samples", "boathouse", "tail.dxf"), Encoding.UTF8.GetBytes(TailDrawing.Dxf));

    // The dressed widths are 3 1/2, 5 1/2 and 7 1/4 in; 0.75 of them to the eighth is 2 5/8, 4 1/8 and 5 1/2 (0.75 · 7.25 = 5.4375 lies half way, and goes up).
    [Fact]
    public void The_sample_makes_a_family_of_one_drawing_and_every_program_is_proven()
    {
        Loaded loaded = JobFile.Load(Repo.Path("samples", "boathouse", "tail.toml"), CancellationToken.None);
        Assert.Empty(loaded.Findings.Select(f => FindingText.Word(f, LengthUnit.Inch).ToString()));
        Plan plan = Planner.Plan(loaded.Job!, cancel: CancellationToken.None);
        Assert.Empty(plan.Findings.Where(f => f.Kind.Severity == Severity.Stop).Select(f => FindingText.Word(f, LengthUnit.Inch).ToString()));
        Assert.All(plan.Programs, p => Assert.True(p.Proof.Passed));
        Assert.Equal([2.625, 4.125, 5.5], plan.Pieces.Select(p => Math.Round(p.Profile.Run / Inch, 9)));
        Assert.All(plan.Pieces, p => Assert.Equal(80.0 / 110, p.Profile.Depth / p.Profile.Run, 1e-9));
    }

    [Fact]
    public void A_line_that_comes_with_a_request_to_the_service_is_cut()
    {
        JsonObject Request(int id, string method, JsonObject parameters) => new() { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method, ["params"] = parameters };
        JsonNode entities = JsonNode.Parse("""[{"kind":"line","from":[0,0],"to":[0,10]},{"kind":"ellipse","centre":[40,10],"major":[-40,0],"ratio":0.75,"start":0,"sweep":-90}]""")!;
        JsonObject plan = new()
        {
            ["job"] = ShapeJobs.Text("kind = 'drawing', file = '@sketch', depth = '0.5 w'"),
            ["outlines"] = new JsonArray(new JsonObject { ["name"] = "sketch", ["entities"] = entities }),
        };
        string messages = string.Join('\n', [Request(0, "initialize", new() { ["protocol"] = "1" }).ToJsonString(), Request(1, "plan", plan).ToJsonString(), Request(2, "programs", new() { ["plan"] = "p1" }).ToJsonString(), ""]);
        using var input = new MemoryStream(Encoding.UTF8.GetBytes(messages));
        using var output = new MemoryStream();
        Assert.Equal(0, HostServer.Run(input, output, TestContext.Current.CancellationToken));
        string all = Encoding.UTF8.GetString(output.ToArray());
        JsonNode programs = all.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!).Single(n => n["id"]?.GetValue<int>() == 2);
        Assert.True(programs["result"]?["programs"]?[0]?["program"]?["proof"]?["passed"]?.GetValue<bool>(), all);
    }
}
