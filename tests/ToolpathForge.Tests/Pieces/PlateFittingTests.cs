using ToolpathForge.Drawings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.MarkingOut;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Pieces;

/// <summary>What a plate has besides its edge: where it lies, that it is cut and proven, and what is refused.</summary>
public class PlateFittingTests
{
    private static readonly Lazy<Plan> s_guide = new(() =>
        Planner.Plan(SamplePlan.Read(File.ReadAllText(Repo.Path("samples", "boathouse", "guide.toml"))), cancel: CancellationToken.None));

    private static ProfilePiece Guide => (ProfilePiece)Assert.Single(s_guide.Value.Pieces);

    private static (Plan? Plan, Finding[] Findings) Of(string plate, string shape = "form = \"scoop\", run = 5, depth = \"2 3/4\"", string more = "")
    {
        JobReading reading = JobReader.Read(
            $$"""
            format = 1
            name = "Boathouse porch"
            unit = "in"
            tolerance = "0.1 mm"
            machine = "desktop-400"
            dialect = "metric-centre"

            [[make]]
            id = "plate"
            kind = "pattern"
            board = "2x6"
            stock = { panel = "hardboard-1/4", thickness = "5.6 mm" }
            bit = "downcut-1/4"
            shape = { kind = "quarter-ellipse", {{shape}} }
            {{more}}
            [make.plate]
            {{plate}}
            """,
            "plate.toml",
            _ => null);
        if (reading.Job is not { } job || reading.Findings.Any(f => f.Kind.Severity == Severity.Stop))
        {
            return (null, [.. reading.Findings]);
        }

        Plan plan = Planner.Plan(job, cancel: CancellationToken.None);
        return (plan, [.. reading.Findings, .. plan.Findings]);
    }

    [Fact]
    public void The_guide_of_the_boathouse_is_cut_with_all_its_holes_and_proven()
    {
        PlannedProgram program = Assert.Single(s_guide.Value.Programs);
        Assert.True(program.Proof.Passed);
        string[] names = [.. Guide.Openings.Select(o => o.Name)];
        Assert.Equal(
            ["hanging hole", "guide block screw 1", "guide block screw 2", "guide block screw 3", "end stop screw 1", "end stop screw 2"], names);
        Assert.All(names, n => Assert.Contains(n, program.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Block_and_stop_guide_by_the_edges_of_the_board()
    {
        PlateStrip block = Guide.Strips.Single(s => s.Name == "guide block");
        PlateStrip stop = Guide.Strips.Single(s => s.Name == "end stop");
        Assert.Equal(0, block.Corner.Y, 9);
        Assert.Equal((1, 0, 0, -1), (block.Along.X, block.Along.Y, block.Across.X, block.Across.Y));

        // The stop's edge lies on the line of the sawn end, from the reference edge towards the nose, its wood beyond the board.
        Assert.Equal(0, stop.Corner.DistanceTo(Guide.Profile.End), 9);
        Assert.Equal(0, stop.Along.Cross(Guide.Profile.Nose - Guide.Profile.End), 9);
        Assert.True(stop.Across.X < 0);

        // Both lie under the plate, off the finished edge by what the job says, and apart from each other.
        Contour plate = ArcFit.Fit(Guide.Exact, 0.001).Contour;
        Contour working = ArcFit.Fit(new Outline([.. Guide.Profile.Exact.Curves.SkipLast(1)], false), 0.001).Contour;
        foreach (PlateStrip strip in Guide.Strips)
        {
            for (int i = 0; i < strip.Outline.SegmentCount; i++)
            {
                Point2 corner = strip.Outline[i].Start;
                Assert.True(plate.Contains(corner) || plate.Distance(corner) < 1e-6);
                Assert.True(working.Distance(corner) >= (25.4 * 3 / 4) - 1e-6);
            }

            Assert.All(strip.ScrewPlaces, at => Assert.True(strip.Outline.Contains(at) && strip.Outline.Distance(at) >= 12));
            Assert.Equal(strip.ScrewPlaces, Guide.Openings.Where(o => o.Name.StartsWith(strip.Name, StringComparison.Ordinal)).Select(o => o.From));
        }
    }

    [Fact]
    public void Over_a_sawn_end_the_edge_goes_straight_on()
    {
        (Plan? plan, _) = Of("stop = {}", "form = \"scoop\", run = 5, depth = \"2 3/4\", end-cut = \"10 deg\"");
        var piece = (ProfilePiece)Assert.Single(plan!.Pieces);
        int last = piece.Roles.LastIndexOf(ToolpathForge.Shapes.EdgeRole.Curve);
        Curve over = piece.Exact.Curves[last];
        Assert.Equal(0, over.DirectionAt(0).Cross(piece.Exact.Curves[last - 1].DirectionAt(1)), 9);
        Assert.DoesNotContain(ToolpathForge.Shapes.EdgeRole.EndCut, piece.Roles);

        // As far beyond the line of the end as the stop is wide.
        Point2 end = (piece.Profile.End - piece.Profile.Nose).Unit();
        Assert.Equal(25.4 * 1.5, end.Right.Dot(over.PointAt(1) - piece.Profile.Nose), 6);
        Assert.True(Assert.Single(plan.Programs).Proof.Passed);
    }

    [Fact]
    public void Brads_go_into_board_and_plate_off_the_finished_edge_and_apart()
    {
        (Plan? plan, _) = Of("brads = { count = 5, off = \"1 1/4\" }\nhold = 6");
        var piece = (ProfilePiece)Assert.Single(plan!.Pieces);
        Contour plate = ArcFit.Fit(piece.Exact, 0.001).Contour;
        Contour finished = ArcFit.Fit(piece.Profile.Exact, 0.001).Contour;
        Assert.Equal(5, piece.Brads.Length);
        Assert.All(piece.Brads, at =>
        {
            Assert.True(plate.Contains(at) && plate.Distance(at) >= 10 - 1e-9);
            Assert.True(finished.Distance(at) >= (25.4 * 1.25) - 1e-9);
            Assert.InRange(at.Y, 10, piece.Profile.Width - 10);
            Assert.All(piece.Brads, other => Assert.True(other == at || other.DistanceTo(at) >= 25));
        });
    }

    [Fact]
    public void A_plate_is_never_short_of_the_widest_board_nor_of_the_routers_base()
    {
        // 1/16 in past the widest, 5 13/16 in, measured from the design width.
        (Plan? plan, _) = Of("hold = 5", more: "measured = [{ width = \"5 13/16\" }]\nmarks = { bit = \"v-60\", height = \"3/16\" }");
        double low = ArcFit.Fit(Assert.Single(plan!.Pieces).Exact, 0.001).Contour.Box.MaxY;
        Assert.True(low >= 25.4 * (5.8125 + 0.0625) - 1e-6);

        (plan, _) = Of("base = 7");
        Box2 box = ArcFit.Fit(Assert.Single(plan!.Pieces).Exact, 0.001).Contour.Box;
        Assert.True(box.MaxY >= (25.4 * (5.5 + 3.5)) - 1e-6 && box.MinY <= -(25.4 * 3.5) + 1e-6);

        Assert.Contains(Of("reach = \"1/4\"", more: "measured = [{ width = \"5 13/16\" }]").Findings, f => f.Kind.Code == "plate-reach-short");
        Assert.Contains(Of("base = 7\nseat = 2").Findings, f => f.Kind.Code == "plate-base-tips");
    }

    [Theory]
    [InlineData("stop = {}", "form = \"belly\", run = 5, depth = \"2 3/4\"", "plate-stop-in-way")]
    [InlineData("block = { width = 2 }", null, "plate-block-wide")]
    [InlineData("block = { set-back = 9 }", null, "plate-strip-short")]
    [InlineData("block = { thickness = \"1 5/8\" }", null, "plate-strip-thick")]
    [InlineData("brads = { count = 30 }", null, "plate-brads-no-room")]
    [InlineData("block = { hole = \"1/8\" }", null, "opening-too-narrow")]
    public void What_cannot_be_is_told(string plate, string? shape, string code) =>
        Assert.Contains((shape is null ? Of(plate) : Of(plate, shape)).Findings, f => f.Kind.Code == code);

    [Fact]
    public void A_plate_for_both_hands_says_which_face_is_which()
    {
        string sheet = ToolpathForge.RunSheets.RunSheetPage.Write(s_guide.Value);
        Assert.Contains("For left-hand ends turn it over", sheet, StringComparison.Ordinal);
        Assert.Contains("Guide block: saw a strip 5/8 in thick, 1 1/2 in wide", sheet, StringComparison.Ordinal);

        // What is engraved differs between a plate for one hand and one for both.
        (Plan? right, _) = Of("hold = 6", more: "marks = { bit = \"v-60\", height = \"3/16\" }");
        (Plan? both, _) = Of("hold = 6\nhands = \"both\"", more: "marks = { bit = \"v-60\", height = \"3/16\" }");
        Assert.NotEqual(right!.Pieces[0].Marks[^1].Strokes.Length, both!.Pieces[0].Marks[^1].Strokes.Length);
    }

    [Theory]
    [InlineData("scoop")]
    [InlineData("belly")]
    public void A_left_hand_plate_is_the_mirror_image_cut_and_proven(string form)
    {
        string shape = $"form = \"{form}\", run = 5, depth = \"2 3/4\", end-cut = \"10 deg\"";
        string plate = "hold = 6\nbrads = {}\nblock = {}\nhang = {}\n" + (form == "scoop" ? "stop = {}\n" : "");
        const string More = "marks = { bit = \"v-60\", height = \"3/16\" }\nlead = { x = 4, y = \"-1 1/2\" }\nopening = [{ name = \"dowel\", x = 6, y = 3, width = \"3/8\" }]";
        (Plan? right, _) = Of(plate, shape, More);
        (Plan? left, Finding[] found) = Of(plate + "hands = \"left\"\n", shape, More);
        var one = (ProfilePiece)Assert.Single(right!.Pieces);
        var other = (ProfilePiece)Assert.Single(left!.Pieces);
        Assert.True(found.All(f => f.Kind.Severity != Severity.Stop), string.Join("; ", found.Select(f => f.Kind.Code)));
        Assert.True(Assert.Single(left.Programs).Proof.Passed);

        static Point2 Mirror(Point2 p) => new(-p.X, p.Y);
        int n = one.Exact.Curves.Length;
        for (int i = 0; i < n; i++)
        {
            Curve here = other.Exact.Curves[i];
            Curve there = one.Exact.Curves[n - 1 - i];
            Assert.Equal(one.Roles[n - 1 - i], other.Roles[i]);
            foreach (double share in (double[])[0, 0.3, 1])
            {
                Assert.Equal(0, here.PointAt(share).DistanceTo(Mirror(there.PointAt(1 - share))), 9);
            }
        }

        // The material is still on the left: the area is positive.
        Assert.True(ArcFit.Fit(other.Exact, 0.001).Contour.SignedArea > 0);
        Assert.Equal(one.Brads.Select(Mirror), other.Brads);
        Assert.Equal(one.Openings.Select(o => Mirror(o.From)), other.Openings.Select(o => o.From));
        Assert.Equal(one.Strips.SelectMany(s => s.ScrewPlaces).Select(Mirror), other.Strips.SelectMany(s => s.ScrewPlaces));

        // The labels lie on the plate and are read as those of the other are: they are not mirrored. Only the hand differs, by a letter.
        Contour edge = ArcFit.Fit(other.Exact, 0.001).Contour;
        Assert.All(other.Marks.SelectMany(m => m.Strokes), stroke => Assert.True(edge.Contains(stroke[0].Start)));
        Assert.Equal(one.Marks.Select(m => m.Name), other.Marks.Select(m => m.Name));

        // The arrow points the way that the router goes with the plate on its left: from the tip back, which is the way of the outline.
        Contour shaft = other.Marks.Single(m => m.Name == "way to feed").Strokes[0];
        Point2 along = (shaft[0].End - shaft[0].Start).Unit();
        Curve working = other.Exact.Curves.MinBy(c => c.PointAt(0.5).DistanceTo(shaft[0].PointAt(0.5)))!;
        Assert.True(along.Dot(working.DirectionAt(0.5)) > 0.5);
        Assert.True(along.X < 0);
        Assert.Contains("left-hand piece", ToolpathForge.RunSheets.RunSheetPage.Write(left), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_with_an_opening_of_a_left_hand_plate_is_told_where_the_job_has_it()
    {
        const string Shape = "form = \"scoop\", run = 5, depth = \"2 3/4\"";
        const string More = "opening = [{ name = \"low\", x = 6, y = \"-1 1/4\", width = 1 }, { name = \"thin\", x = 7, y = 2, width = \"1/8\" }]";
        Finding[] right = [.. Of("hold = 6", Shape, More).Findings.Where(f => f.Place.Point is not null)];
        Finding[] left = [.. Of("hold = 6\nhands = \"left\"", Shape, More).Findings.Where(f => f.Place.Point is not null)];
        Assert.Equal(["opening-at-edge", "opening-too-narrow"], left.Select(f => f.Kind.Code).Order(StringComparer.Ordinal));
        Assert.All(left, f => Assert.True(f.Place.Point!.Value.X > 0));
        Assert.Equal(right.Select(f => (f.Kind.Code, f.Place.Point!.Value)).Order(), left.Select(f => (f.Kind.Code, f.Place.Point!.Value)).Order());
    }

    [Theory]
    [InlineData(1)]
    [InlineData(0.25)]
    public void Paper_patterns_of_left_hand_ends_are_mirrored_and_read_as_ever(double scale)
    {
        const string Shape = "form = \"scoop\", run = 5, depth = \"2 3/4\", end-cut = \"10 deg\"";
        ProfilePiece PieceOf(string hands) => (ProfilePiece)Assert.Single(Of($"hold = 6\nhands = \"{hands}\"", Shape).Plan!.Pieces);
        Drawing Paper(ProfilePiece piece) => PaperPattern.Of(piece, HandLayout.Of(piece.Profile, LengthUnit.Inch), LengthUnit.Inch, scale);
        Mark[] right = [.. Draughting.Marks(Paper(PieceOf("right")), scale)];
        Mark[] left = [.. Draughting.Marks(Paper(PieceOf("left")), scale)];
        Assert.Contains("end at your left", Paper(PieceOf("left")).Description, StringComparison.Ordinal);

        // Every exact line and every saw line is the mirror image, point by point.
        (ExactStroke One, ExactStroke Other)[] edges = [.. right.OfType<ExactStroke>().Zip(left.OfType<ExactStroke>())];
        Assert.NotEmpty(edges);
        Assert.All(edges, e => Assert.All(e.One.Path.Curves.Zip(e.Other.Path.Curves), c => Assert.All(
            (double[])[0, 0.4, 1], t => Assert.Equal(0, c.First.PointAt(t).DistanceTo(LeftHand.Mirror.Apply(c.Second.PointAt(t))), 9))));
        Box2 all = Draughting.BoxOf([.. left]);
        Box2 was = Draughting.BoxOf([.. right]);

        // Words are as many, the same, as upright or level as before, where their mirror images would be; none lies on another at full size.
        Lettered[] one = [.. right.OfType<Lettered>().OrderBy(l => l.Written.Text, StringComparer.Ordinal).ThenBy(l => l.Written.Box.MinX)];
        Lettered[] other = [.. left.OfType<Lettered>().OrderBy(l => l.Written.Text, StringComparer.Ordinal).ThenByDescending(l => l.Written.Box.MinX)];
        Assert.Equal(one.Select(l => l.Written.Text), other.Select(l => l.Written.Text));
        Assert.All(one.Zip(other), p =>
        {
            Assert.Equal(p.First.Written.Box.Width, p.Second.Written.Box.Width, 6);

            // Figures of an upright dimension stand on the left of its line, in the mirror image as well: their height and a gap on either side of the line.
            bool upright = p.First.Role == LineRole.Dimension && p.First.Written.Box.Height > p.First.Written.Box.Width;
            Assert.InRange(Math.Abs(p.First.Written.Box.Center.X + p.Second.Written.Box.Center.X), 0, (upright ? 6.5 : 1.5) / scale);
            Assert.Equal(p.First.Written.Box.Center.Y, p.Second.Written.Box.Center.Y, 6);
        });
        Assert.Equal(was.Height, all.Height, 6);
        if (scale == 1)
        {
            Assert.All(other, a => Assert.DoesNotContain(other, b => b != a && b.Written.Box.Meets(a.Written.Box)));
        }
    }

    [Fact]
    public void The_line_to_saw_outside_of_is_told_from_the_edge_of_a_plate_made_smaller()
    {
        // 1/16 in of bite and 1/8 in by which the plate lies inside the finished edge.
        string sheet = ToolpathForge.RunSheets.RunSheetPage.Write(s_guide.Value);
        Assert.Contains("saw 3/16 in outside the line: the finished edge lies 1/8 in outside it", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_for_the_date_is_left_where_one_is_asked_for()
    {
        const string Marks = "marks = { bit = \"v-60\", height = \"3/16\", labels = false, text = [\"A\"]";
        (Plan? without, _) = Of("hold = 6", more: Marks + " }");
        (Plan? with, _) = Of("hold = 6", more: Marks + ", date = true }");
        Assert.True(with!.Pieces[0].Marks[^1].Strokes.Length >= without!.Pieces[0].Marks[^1].Strokes.Length + 12);
    }
}
