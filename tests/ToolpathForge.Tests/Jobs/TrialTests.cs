using System.Collections.Immutable;
using System.Globalization;
using CsCheck;
using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.Proof;
using ToolpathForge.Tests.Checks.Jobs;

namespace ToolpathForge.Tests.Jobs;

/// <summary>A machine that is off by known amounts: what a caliper finds on its trial piece gives these amounts back, and programs make up for them.</summary>
public class TrialTests
{
    private const double Side = 101.6;
    private const double Nominal = 6.35;

    private static readonly Gen<AxisErrors> s_machines =
        from x in Gen.Double[0.9905, 1.0095] from y in Gen.Double[0.9905, 1.0095] from lean in Gen.Double[-0.0086, 0.0086] select new AxisErrors(x, y, lean);

    /// <summary>
    /// The square that a machine leaves: its track is the commanded square of S + D, its true corners come nearer by half the true bit along either side. Measured
    /// with corner points and plain distances, not with the formulas that are tested.
    /// </summary>
    private static TrialReadings Measure(AxisErrors machine, double bit)
    {
        double half = (Side + Nominal) / 2;
        Point2[] track = [.. new Point2[] { new(-half, -half), new(half, -half), new(half, half), new(-half, half) }.Select(machine.True)];
        Point2[] corners = new Point2[4];
        for (int i = 0; i < 4; i++)
        {
            // Where the two sides beside a corner meet once both are moved inwards by half the bit.
            Point2 before = (track[i] - track[(i + 3) % 4]).Unit();
            Point2 after = (track[(i + 1) % 4] - track[i]).Unit();
            Point2 a = track[i] + (before.Left * (bit / 2));
            Point2 b = track[i] + (after.Left * (bit / 2));
            corners[i] = a + (before * ((b - a).Cross(after) / before.Cross(after)));
        }

        double Width(int i) => Math.Abs((corners[(i + 2) % 4] - corners[i]).Cross((corners[(i + 1) % 4] - corners[i]).Unit()));
        return new TrialReadings(Nominal, bit, Side, Width(1), Width(0), corners[0].DistanceTo(corners[2]), corners[3].DistanceTo(corners[1]));
    }

    private static string Trial(TrialReadings r) => string.Create(
        CultureInfo.InvariantCulture,
        $"trial = {{ bit = \"downcut-1/4\", slot = \"{r.Slot:0.000000} mm\", across-x = \"{r.AcrossX:0.000000} mm\", across-y = \"{r.AcrossY:0.000000} mm\", rising = \"{r.Rising:0.000000} mm\", falling = \"{r.Falling:0.000000} mm\" }}\n[[make]]");

    private static (Plan? Plan, Finding[] Findings) PlanOn(TrialReadings readings) => SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Plate, ("[[make]]", Trial(readings))));

    // The readings are exact here, so what comes back differs by rounding alone: 1e-9 of lengths of 150 mm is far above it.
    [Fact]
    public void What_is_measured_gives_back_the_machine() => Gen.Select(s_machines, Gen.Double[5.96, 6.74]).Sample((machine, bit) =>
    {
        TrialReadings readings = Measure(machine, bit);
        AxisErrors found = readings.Axes;
        Assert.Equal(machine.ScaleX, found.ScaleX, 1e-9);
        Assert.Equal(machine.ScaleY, found.ScaleY, 1e-9);
        Assert.Equal(machine.Skew, found.Skew, 1e-9);
        Assert.True(readings.Contradiction < 1e-9);
    });

    [Fact]
    public void What_is_commanded_comes_to_lie_where_it_is_meant() => Gen.Select(s_machines, Gen.Double[-800, 800], Gen.Double[-800, 800]).Sample((machine, x, y) =>
    {
        var meant = new Point2(x, y);
        Assert.True(machine.True(machine.Commanded(meant)).DistanceTo(meant) < 1e-9);
    });

    // An arc of any size and sweep, sent corrected through the machine: every point of it lies on the arc that was meant, within the departure given, and it is
    // run from end to end. A hundredth more is allowed for the terms of higher order that the bound leaves out (relative 1 %, the errors' own size).
    [Fact]
    public void A_corrected_arc_comes_to_lie_on_the_arc_meant() => Gen.Select(s_machines, Gen.Double[2, 400], Gen.Double[-3.1, 3.1], Gen.Double[-3, 3]).Sample((machine, radius, sweep, start) =>
    {
        const double Departure = 0.001;
        var center = new Point2(120, -60);
        Point2 from = center + (Point2.Direction(start) * radius);
        Point2 to = center + (Point2.Direction(start + sweep) * radius);
        var path = new Toolpath(
            Catalogues.Shipped.Bits.Find("downcut-1/4")!,
            16000,
            [new Move(MoveKind.Rapid, new Point3(from, 5), 0, 0, Purpose.Travel, -1), new Move(MoveKind.Arc, new Point3(to, 3), Math.Tan(sweep / 4), 900, Purpose.Finish, -1)],
            []);
        ImmutableArray<Move> moves = AxisCorrection.Apply(path, machine, Departure).Moves;
        Point2 at = moves[0].End.Flat;
        Assert.True(machine.True(at).DistanceTo(from) < 1e-9 && machine.True(moves[^1].End.Flat).DistanceTo(to) < 1e-9 && moves[^1].End.Z == 3);
        foreach (Move move in moves.Skip(1))
        {
            var part = new Segment(at, move.End.Flat, move.Bulge);
            for (int i = 0; i <= 8; i++)
            {
                double off = machine.True(part.PointAt(i / 8.0)).DistanceTo(center) - radius;
                Assert.True(Math.Abs(off) <= Departure * 1.01, $"{off} of an arc of {radius} through {sweep}");
            }

            at = move.End.Flat;
        }
    });

    // The whole way: measured, planned, written, and proven on the machine as it is; the same program without the correction fails that proof.
    [Fact]
    public void A_corrected_program_is_proven_on_the_machine_as_it_is_and_an_uncorrected_one_is_not()
    {
        var machine = new AxisErrors(1.004, 0.9965, 0.004);
        TrialReadings readings = Measure(machine, 6.29);
        (Plan? plan, Finding[] findings) = PlanOn(readings);
        Assert.DoesNotContain(findings, f => f.Kind.Severity == Severity.Stop);
        Assert.Contains(findings, f => f.Kind.Code == "trial-corrected");
        PlannedProgram program = Assert.Single(plan!.Programs);
        Assert.Equal((6.29, true), (Math.Round(program.Cut.Works[0].Path.Bit.Diameter, 9), program.Proof.Passed));
        Assert.True(program.Proof.WorstGouge <= plan.Job.Tolerance && program.Proof.WorstLeftover <= plan.Job.Tolerance);

        (Plan? trusting, _) = PlanOn(Measure(AxisErrors.None, 6.29));
        ProofReport report = Prover.Prove(Assert.Single(trusting!.Programs).Text, program.Target);
        Assert.False(report.Passed);
        Assert.True(Math.Max(report.WorstGouge, report.WorstLeftover) > 0.3);
    }

    public static TheoryData<string, string, string> Wrong => new()
    {
        { "slot", "6.8 mm", "trial-bit-far" },
        { "across-x", "103.5 mm", "trial-scale-far" },
        { "across-y", "99 mm", "trial-scale-far" },
        { "rising", "146 mm", "trial-skew-far" },
        { "rising", "144.2 mm", "trial-contradicts" },
        { "bit", "downcut-1/44", "unknown-id-near" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_reading_that_cannot_be_is_refused(string key, string value, string code)
    {
        // Both diagonals alike for a contradiction, one alone for a lean.
        var readings = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["bit"] = "downcut-1/4",
            ["slot"] = "6.35 mm",
            ["across-x"] = "101.6 mm",
            ["across-y"] = "101.6 mm",
            ["rising"] = "143.68 mm",
            ["falling"] = code == "trial-contradicts" ? value : "143.68 mm",
        };
        readings[key] = value;
        string table = string.Join(", ", readings.Select(r => $"{r.Key} = \"{r.Value}\""));
        (Plan? plan, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Plate, ("[[make]]", $"trial = {{ {table} }}\n[[make]]")));
        Assert.Equal([code], findings.Where(f => f.Kind.Severity == Severity.Stop).Select(f => f.Kind.Code).Distinct());
        Assert.True(plan is null);
    }

    [Theory]
    [InlineData("hole-x = \"38.2 mm\"", "trial-corrected")]
    [InlineData("hole-x = \"38.4 mm\"", "trial-corrected trial-play")]
    public void Play_shows_where_hole_and_slot_disagree(string hole, string codes)
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Plate, ("[[make]]",
            $"trial = {{ bit = \"downcut-1/4\", slot = \"6.35 mm\", across-x = \"101.6 mm\", across-y = \"101.6 mm\", rising = \"143.68 mm\", falling = \"143.68 mm\", {hole} }}\n[[make]]")));
        Assert.Equal(codes, string.Join(' ', findings.Select(f => f.Kind.Code).Where(c => c.StartsWith("trial", StringComparison.Ordinal)).Order(StringComparer.Ordinal)));
    }

    [Fact]
    public void A_square_is_measured_whole_or_not_at_all()
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Plate, ("[[make]]", "trial = { bit = \"downcut-1/4\", slot = \"6.3 mm\", across-x = \"101 mm\" }\n[[make]]")));
        Assert.Equal(["missing-key"], findings.Where(f => f.Kind.Severity == Severity.Stop).Select(f => f.Kind.Code));
        Assert.DoesNotContain(SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Plate, ("[[make]]", "trial = { bit = \"downcut-1/4\", slot = \"6.3 mm\" }\n[[make]]"))).Findings, f => f.Kind.Severity == Severity.Stop);
    }
}
