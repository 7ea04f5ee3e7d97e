using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.Proof;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Cutting;

public class OpeningCutTests
{
    private static readonly Places s_nowhere = new(Place.None, ImmutableDictionary<string, Place>.Empty);
    private static readonly StockOnBed s_sheet = new(new Box2(-100, -100, 100, 100), 0, 5.6);

    private static Opening Hole(double width, Bit? bit = null) => new("1", new Point2(3, 4), new Point2(3, 4), width, bit ?? TestJobs.Bit(), s_nowhere);

    private static Opening Slot(double width, double length) => new("1", new Point2(3, 4), new Point2(3 + length, 4), width, TestJobs.Bit(), s_nowhere);

    private static ImmutableArray<Move> Cut(Opening opening, bool climb = true)
    {
        CutSettings s = CutSettings.ForOpenings(TestJobs.Pattern(TestJobs.Scoop()), opening.Bit, TestJobs.Machine);
        var moves = new MoveList(s_sheet.Top + 5) { Plunge = s.Plunge };
        OpeningCut.Add(moves, [], opening, Placement.Identity, "a plate", s, s_sheet, climb);
        return moves.ToMoves();
    }

    // The pitch of a helix is π·Dh·tan α a turn, Dh the diameter of the axis' circle (any machining handbook): Dh 5 at 5° sinks 1.3743 mm.
    [Fact]
    public void A_helix_sinks_by_its_circumference_times_the_ramps_tangent()
    {
        ImmutableArray<Move> moves = Cut(Hole(6.35 + 5 + (2 * 0.5)));
        double sunk = 0;
        double along = 0;
        var at = default(Point3);
        foreach (Move move in moves)
        {
            if (move.Purpose == Purpose.Ramp)
            {
                sunk += at.Z - move.End.Z;
                along += new Segment(at.Flat, move.End.Flat, move.Bulge).Length;
            }

            at = move.End;
        }

        Assert.Equal(Math.Tan(5 * Math.PI / 180), sunk / along, 9);
        Assert.Equal(1.3743, Math.PI * 5 * (sunk / along), 4);
    }

    // No core may be left to come loose: every point of the opening lies within the bit's radius of its way at full depth.
    [Theory]
    [InlineData(7, 0)]
    [InlineData(9, 0)]
    [InlineData(13, 0)]
    [InlineData(25, 0)]
    [InlineData(60, 0)]
    [InlineData(10, 30)]
    [InlineData(30, 12)]
    public void The_whole_opening_is_cut_to_chips(double width, double length)
    {
        Opening opening = length > 0 ? Slot(width, length) : Hole(width);
        var way = new List<Segment>();
        var at = default(Point3);
        foreach (Move move in Cut(opening))
        {
            if (move.Kind != MoveKind.Rapid && move.End.Z <= at.Z + 1e-9 && Math.Abs(move.End.Z - (0 - 0.3)) < 1e-9 && at.Flat != move.End.Flat)
            {
                way.Add(new Segment(at.Flat, move.End.Flat, move.Bulge));
            }

            at = move.End;
        }

        var middle = new Segment(opening.From, opening.To);
        for (double x = opening.From.X - (width / 2); x <= opening.To.X + (width / 2); x += 0.37)
        {
            for (double y = opening.From.Y - (width / 2); y <= opening.From.Y + (width / 2); y += 0.37)
            {
                var p = new Point2(x, y);
                double off = length > 0 ? middle.Distance(p) : p.DistanceTo(opening.From);
                if (off < (width / 2) - 0.001)
                {
                    Assert.True(way.Min(s => s.Distance(p)) <= opening.Bit.Radius + 1e-6, $"A core is left at {p}.");
                }
            }
        }

        Assert.All(way, s => Assert.True(Math.Max(Off(s.Start), Math.Max(Off(s.End), Off(s.PointAt(0.5)))) <= ((width - opening.Bit.Diameter) / 2) + 1e-6));
        double Off(Point2 p) => length > 0 ? middle.Distance(p) : p.DistanceTo(opening.From);
    }

    [Fact]
    public void A_hole_as_wide_as_its_bit_is_drilled_in_pecks_as_deep_as_the_passes_that_the_sheet_tells()
    {
        var thick = new StockOnBed(s_sheet.Box, 0, 20);
        CutSettings s = CutSettings.ForOpenings(TestJobs.Pattern(TestJobs.Scoop()) with { Thickness = 20 }, TestJobs.Bit(), TestJobs.Machine);
        var moves = new MoveList(25);
        OpeningCut.Add(moves, [], Hole(6.35), Placement.Identity, "a plate", s, thick, true);
        double[] depths = [.. moves.ToMoves().Where(m => m.Purpose == Purpose.Descend && m.Kind == MoveKind.Line).Select(m => m.End.Z)];

        // 20.3 mm in passes of at most half the bit's 6.35 mm: seven (the share of this machine; common practice).
        Assert.Equal(7, depths.Length);
        Assert.Equal(s.Steps.Length, depths.Length);
        Assert.Equal(-0.3, depths[^1], 9);
        Assert.All(depths.Zip(depths.Prepend(20)), d => Assert.True(d.Second - d.First <= Math.Min(6.35, s.PassLimit) + 1e-9));
    }

    // Inside an opening the outermost edge runs (r + R)/r times as fast as the axis: R 3.175 on a ring of 4.5 is fed 0.5863 of the feed.
    [Fact]
    public void Round_the_inside_the_axis_is_fed_slower()
    {
        Move finish = Cut(Hole(6.35 + 9)).Last(m => m.Purpose == Purpose.Finish);
        CutSettings s = CutSettings.ForOpenings(TestJobs.Pattern(TestJobs.Scoop()), TestJobs.Bit(), TestJobs.Machine);
        Assert.Equal(0.5863, finish.Feed / s.Feed, 4);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_last_round_goes_the_way_it_is_told(bool climb)
    {
        // Climbing inside an opening is counter-clockwise: the material is on the right.
        Assert.All(Cut(Hole(20), climb).Where(m => m.Purpose == Purpose.Finish), m => Assert.Equal(climb, m.Bulge > 0));
    }

    [Theory]
    [InlineData("metric-centre")]
    [InlineData("inch-radius-paused")]
    [InlineData("metric-lines")]
    [InlineData("metric-hand-switched")]
    [InlineData("inch-centre")]
    public void Openings_and_marks_are_proven_in_every_dialect(string dialect)
    {
        Plan plan = Planner.Plan(MarkedPattern.Job(dialect), cancel: CancellationToken.None);
        Assert.DoesNotContain(plan.Findings, f => f.Kind.Severity == Severity.Stop);
        Assert.NotEmpty(plan.Programs);
        bool separate = dialect == "metric-hand-switched";
        Assert.Equal(separate ? ["plate-1", "plate-2", "plate-3"] : ["plate"], plan.Programs.Select(p => p.Name));
        Assert.All(plan.Programs, p => Assert.True(p.Proof.Passed));
        MarkProof[] marks = [.. plan.Programs.SelectMany(p => p.Proof.Pieces).SelectMany(p => p.Marks)];
        Assert.Equal(["guide-block line", "lower edge of the board", "way to feed", "grain", "text"], marks.Select(m => m.Name));
        Assert.All(marks, m => Assert.InRange(m.Missed, 0, plan.Job.Tolerance));
    }
}
