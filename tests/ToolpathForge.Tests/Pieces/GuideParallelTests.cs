using System.Globalization;
using System.Text.Json;
using CsCheck;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Pieces;

/// <summary>A plate for a bearing of another size than the cutter, or for a bushing: built again from circles, formulas and another library.</summary>
public class GuideParallelTests
{
    // The arcs that stand for the curve, and the last digits of the offset engine, mm.
    private const double Fit = 0.001 + 1e-6;

    private static readonly Places s_nowhere = TestJobs.Pattern(TestJobs.Scoop()).At;

    private static PatternMake Make(ShapeSpec shape, double guide, double cutter) => TestJobs.Pattern(shape) with
    {
        Hand = new HandWork(Catalogues.Shipped.Bits.Find("straight-1/2")! with { Diameter = cutter }, 38.1, s_nowhere) { Bushing = guide },
    };

    private static ProfilePiece Plate(PatternMake make, List<Finding>? findings = null)
    {
        Profile profile = make.Shape.Shape.Scale(make.Shape, make.DesignWidth, [])!;
        return PatternPlate.From(make, profile, 0.1, findings ?? [])!;
    }

    // DLMF and any text on parallel curves: x = cos t (a + d b/g), y = sin t (b + d a/g), g² = a² sin² t + b² cos² t.
    [Fact]
    public void The_working_edge_is_the_parallel_of_the_ellipse() => Gen.Select(Gen.Double[100, 200], Gen.Double[40, 120], Gen.Double[0.1, 9], Gen.Double[0.02, 0.9]).Sample((run, depth, inset, share) =>
    {
        ProfilePiece plate = Plate(Make(TestJobs.Scoop(run, depth), 12.7 + (2 * inset), 12.7));
        var ellipse = Assert.IsType<EllipseCurve>(plate.Profile.Exact.Curves[0]);
        (double a, double b) = (ellipse.Major.Length, ellipse.Minor.Length);
        double t = ellipse.StartParameter + (ellipse.Sweep * share);
        double g = Math.Sqrt((a * a * Math.Sin(t) * Math.Sin(t)) + (b * b * Math.Cos(t) * Math.Cos(t)));

        // The wood of a hollow lies outside the ellipse.
        Point2 parallel = ellipse.Center
            + (ellipse.Major / a * (Math.Cos(t) * (a + (inset * b / g))))
            + (ellipse.Minor / b * (Math.Sin(t) * (b + (inset * a / g))));

        // Near the nose the parallel of the end cut takes over.
        var endCut = (LineCurve)plate.Profile.Exact.Curves[^1];
        double fromEnd = (parallel - endCut.From).Dot((endCut.To - endCut.From).Unit().Left);
        if (fromEnd > inset + 0.01)
        {
            Assert.InRange(ArcFit.Fit(plate.Exact, 1e-6).Contour.Distance(parallel), 0, Fit);
        }
    });

    // A hollow of radius R about a centre: the pattern's is R + e about the same one, with e half of what the guide is larger; the guide's axis then
    // runs at R + e - guide/2, and the cutter's far edge at that and cutter/2, which is R again.
    [Theory]
    [InlineData(40, 12.7, 12.7)]
    [InlineData(40, 15.875, 12.7)]
    [InlineData(25, 30, 12.7)]
    [InlineData(30, 19.05, 6.35)]
    public void Round_a_circle_the_cutter_comes_back_to_the_finished_radius(double radius, double guide, double cutter)
    {
        var make = Make(TestJobs.Scoop(radius, radius, 0), guide, cutter);
        ProfilePiece plate = Plate(make);
        var center = new Point2(0, make.DesignWidth);
        Contour edge = ArcFit.Fit(plate.Exact, 1e-6).Contour;
        double pattern = radius + ((guide - cutter) / 2);
        double axis = pattern - (guide / 2);
        Assert.Equal(radius, axis + (cutter / 2), 9);
        for (double turn = 290; turn < 350; turn += 5)
        {
            Point2 towards = Point2.Direction(turn * Math.PI / 180);
            Assert.InRange(edge.Distance(center + (towards * pattern)), 0, Fit);

            // The guide touches the plate there, and nowhere else is it nearer.
            Assert.Equal(guide / 2, edge.Distance(center + (towards * axis)), Fit);
        }
    }

    [Fact]
    public void Every_point_of_the_plate_keeps_the_inset_and_margins_stay_as_asked() => Gen.Select(Gen.Bool, Gen.Double[60, 180], Gen.Double[30, 120], Gen.Double[0, 20], Gen.Double[0.2, 6]).Sample((belly, run, depth, angle, inset) =>
    {
        ShapeSpec shape = belly ? TestJobs.Belly(run, depth, angle) : TestJobs.Scoop(run, depth, angle);
        PatternMake make = Make(shape, 12.7 + (2 * inset), 12.7);
        ProfilePiece plate = Plate(make);
        ProfilePiece whole = Plate(make with { Hand = null });
        Box2 box = ArcFit.Fit(plate.Exact, 1e-3).Contour.Box;
        Assert.Equal(-make.Seat, box.MinY, 1e-6);
        Assert.Equal(plate.Profile.Start.X + make.Hold, box.MaxX, 1e-6);
        Contour finished = ArcFit.Fit(plate.Profile.Exact, 1e-4).Contour;
        foreach ((Curve curve, EdgeRole role) in plate.Exact.Curves.Zip(plate.Roles))
        {
            if (role is EdgeRole.Curve or EdgeRole.EndCut)
            {
                Assert.All(Enumerable.Range(0, 9), i => Assert.InRange(finished.Distance(curve.PointAt(i / 8.0)), inset - Fit - 1e-4, double.PositiveInfinity));
            }
        }

        Assert.Equal(plate.Roles.Count(r => r == EdgeRole.Free), whole.Roles.Count(r => r == EdgeRole.Free));
    });

    [Theory]
    [InlineData("scoop", 15.875)]
    [InlineData("scoop", 30)]
    [InlineData("belly", 15.875)]
    [InlineData("belly", 19.05)]
    public void Shapely_rolls_the_guide_round_the_plate_and_gets_the_finished_edge(string form, double guide)
    {
        ProfilePiece plate = Plate(Make(form == "scoop" ? TestJobs.Scoop() : TestJobs.Belly(160, 120), guide, 12.7));
        double inset = (guide - 12.7) / 2;
        var ring = plate.Exact.Curves.SelectMany(c => Enumerable.Range(0, c is LineCurve ? 1 : 200).Select(i => c.PointAt(i / 200.0)).Select(Pair));
        Profile p = plate.Profile;

        // The corner at the nose comes out rounded, which is told; within its reach nothing is looked at.
        var finished = p.Exact.Curves.SelectMany(c => Enumerable.Range(1, 199).Select(i => c.PointAt(i / 200.0))).Where(q => q.DistanceTo(p.Nose) > 4 * inset).Select(Pair).ToArray();
        Assert.True(finished.Length > 100);
        string said = OutsideTool.Python(
            "guide_roll.py", JsonSerializer.Serialize(new { pattern = ring.ToArray(), guide, cutter = 12.7, finished }), "shapely");

        // Shapely's circles are polygons of 2048 chords: sagitta r(1 - cos(π/2048)) below 2e-5 mm.
        Assert.InRange(double.Parse(said, CultureInfo.InvariantCulture), 0, 0.002);

        static double[] Pair(Point2 q) => [q.X, q.Y];
    }

    [Fact]
    public void It_is_told_what_the_plate_is_for_and_that_its_nose_comes_out_round()
    {
        var findings = new List<Finding>();
        Plate(Make(TestJobs.Scoop(), 15.875, 12.7), findings);
        Assert.Equal(["plate-made-for-guide", "plate-corners-round"], findings.Select(f => f.Kind.Code));
        Assert.Equal(1.5875, findings[1].Found!.Value.Value, 9);
        findings.Clear();
        Plate(Make(TestJobs.Scoop(), 12.7, 12.7), findings);
        Assert.Empty(findings);
    }

    [Fact]
    public void A_plate_for_a_bushing_is_cut_and_proven_and_says_so()
    {
        Plan plan = Planner.Plan(SamplePlate("hand = { bit = \"straight-1/2\", bushing = \"5/8\" }"), cancel: CancellationToken.None);
        Assert.False(plan.IsStopped);
        PlannedProgram program = Assert.Single(plan.Programs);
        Assert.True(program.Proof.Passed);
        Assert.DoesNotContain(plan.Findings, f => f.Kind.Code == "hand-guide-large");
        Assert.Contains(plan.Findings, f => f.Kind.Code == "plate-made-for-guide");
    }

    // Half of 3/4 in against a hollow of 5/16 in, to which the pattern of this guide adds 1/8 in: 7/16 in is enough; without, it is not. Half of 1/2 in of cutter never fits into 3/16 in.
    [Theory]
    [InlineData("5/16", "")]
    [InlineData("3/16", "hand-curve-tight")]
    public void A_hollow_of_the_pattern_is_never_smaller_than_its_guide(string hollow, string stop)
    {
        Plan plan = Planner.Plan(
            SamplePlate("hand = { bit = \"straight-1/2\", bushing = \"3/4\" }", $"{{ kind = \"quarter-ellipse\", form = \"scoop\", run = \"{hollow}\", depth = \"{hollow}\" }}"),
            cancel: CancellationToken.None);
        Assert.Equal(stop, string.Join(' ', plan.Findings.Where(f => f.Kind.Severity == Severity.Stop).Select(f => f.Kind.Code)));
    }

    private static Job SamplePlate(string hand, string shape = "{ kind = \"quarter-ellipse\", form = \"scoop\", run = \"7 1/2\", depth = \"4 1/4\", end-cut = \"10 deg\", long-side = \"top\" }")
    {
        JobReading reading = JobReader.Read(
            $$"""
            format = 1
            name = "Bushing"
            unit = "in"
            machine = "desktop-400"
            dialect = "metric-centre"
            [[make]]
            id = "tail"
            kind = "pattern"
            board = "2x8"
            stock = { panel = "mdf-1/2", thickness = "12.7 mm" }
            bit = "downcut-1/4"
            shape = {{shape}}
            plate = { hold = "6", seat = "1 1/2", reach = "1/2" }
            cut = { tabs = 3 }
            {{hand}}
            """,
            "bushing.toml",
            _ => null);
        Assert.Empty(reading.Findings);
        return reading.Job!;
    }
}
