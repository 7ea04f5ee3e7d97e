using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Cleaning;

public class ContourCleanerTests
{
    private static LoosePiece Line(double x0, double y0, double x1, double y1, int source = 0) => LoosePiece.Of(new Segment(new(x0, y0), new(x1, y1)), source);

    private static LoosePiece Arc(double x0, double y0, double x1, double y1, double bulge, int source = 0) =>
        LoosePiece.Of(new Segment(new(x0, y0), new(x1, y1), bulge), source);

    private static string[] Codes(CleanOutlines outlines) => [.. outlines.Findings.Select(f => f.Kind.Code)];

    [Fact]
    public void Four_loose_lines_in_any_order_and_direction_are_a_square()
    {
        CleanOutlines made = ContourCleaner.Clean([Line(10, 10, 10, 0, 7), Line(0, 0, 10, 0, 3), Line(0, 10, 0, 0, 5), Line(0, 10, 10, 10, 1)]);
        CleanContour square = Assert.Single(made.Closed);
        Assert.Equal([new(0, 0), new(10, 0), new(10, 10), new(0, 10)], square.Contour.Vertices.ToArray().Select(v => v.Point));
        Assert.Equal([1, 3, 5, 7], square.Sources);
        Assert.Equal(100, Assert.Single(made.Regions).Area, 1e-12);
        Assert.Empty(made.Open);
        Assert.Empty(made.Repairs);
        Assert.Empty(made.Findings);
    }

    [Fact]
    public void Ends_a_little_apart_move_to_their_middle_and_arcs_stay_arcs()
    {
        // A slot of 30 between centres, 10 wide; the arcs were written 0.004 too high.
        CleanOutlines made = ContourCleaner.Clean([Line(0, 0, 30, 0, 1), Arc(30, 0.004, 30, 10.004, 1, 2), Line(30, 10, 0, 10, 3), Arc(0, 10.004, 0, 0.004, 1, 4)]);
        Contour slot = Assert.Single(made.Closed).Contour;
        Assert.Equal(4, slot.SegmentCount);
        Assert.Equal(2, slot.Vertices.ToArray().Count(v => v.Bulge == 1));
        Assert.Equal(300 + (25 * Math.PI), slot.SignedArea, 0.2);
        Assert.Equal(4, made.Repairs.Length);
        Assert.All(made.Repairs, r => Assert.Equal((RepairKind.EndsMoved, 0.004), (r.Kind, Math.Round(r.Size, 9))));
        Assert.Contains(made.Repairs, r => r.At.DistanceTo(new Point2(30, 10.002)) < 1e-9 && r.Sources.SequenceEqual([2, 3]));
        Assert.Equal(["ends-moved-together"], Codes(made));
    }

    [Fact]
    public void A_wider_gap_is_closed_by_a_line_when_it_is_allowed_and_stays_open_when_not()
    {
        LoosePiece[] pieces = [Line(0, 0, 10, 0, 1), Line(10, 0, 10, 10, 2), Line(10, 10, 0, 10, 3), Line(0, 10, 0, 0.5, 4)];
        CleanOutlines open = ContourCleaner.Clean(pieces);
        Assert.Empty(open.Closed);
        Assert.Equal(new Point2(0, 0), Assert.Single(open.Open).Contour.Start);
        Finding says = Assert.Single(open.Findings);
        Assert.Equal(("outlines-open", 0.5), (says.Kind.Code, says.Found!.Value.Value));

        CleanOutlines closed = ContourCleaner.Clean(pieces, new CleaningOptions { Gap = 0.6 });
        Assert.Equal(5, Assert.Single(closed.Closed).Contour.SegmentCount);
        Assert.Equal(100, closed.Regions[0].Area, 1e-12);
        Repair repair = Assert.Single(closed.Repairs);
        Assert.Equal((RepairKind.GapBridged, new Point2(0, 0.25), 0.5), (repair.Kind, repair.At, repair.Size));
    }

    [Fact]
    public void A_gap_is_closed_from_the_nearest_end_and_no_short_line_is_closed_on_itself()
    {
        // Three dashes: 0.3 apart, 0.2 long.
        CleanOutlines made = ContourCleaner.Clean([Line(0, 0, 0.2, 0), Line(0.5, 0, 0.7, 0), Line(1, 0, 1.2, 0)], new CleaningOptions { Gap = 0.35 });
        Assert.Equal(1.2, Assert.Single(made.Open).Contour.Length, 1e-12);
        Assert.Equal(2, made.Repairs.Count(r => r.Kind == RepairKind.GapBridged));
    }

    [Fact]
    public void What_is_drawn_twice_is_left_out_once()
    {
        CleanOutlines made = ContourCleaner.Clean(
            [Line(0, 0, 10, 0, 1), Line(10, 0, 0, 0, 2), Arc(10, 0, 0, 0, 1, 3), Arc(0, 0, 10, 0, -1, 4), Arc(10, 0, 0, 0, 1, 5)]);
        Assert.Equal(2, Assert.Single(made.Closed).Contour.SegmentCount);
        Assert.Equal(3, made.Repairs.Count(r => r.Kind == RepairKind.DoubledDropped));
        Assert.Equal(12.5 * Math.PI, made.Regions[0].Area, 1e-9);
    }

    [Fact]
    public void A_line_on_the_edge_of_an_outline_is_left_out_whatever_its_share()
    {
        LoosePiece square = LoosePiece.Of(Contour.Polygon(new(0, 0), new(10, 0), new(10, 10), new(0, 10)), 1);
        CleanOutlines made = ContourCleaner.Clean([square, Line(10, 0, 0, 0, 2), Line(10, 2, 10, 7, 3), LoosePiece.Of(Contour.Polyline(new(5, 10), new(10, 10), new(10, 6)), 4)]);
        Assert.Single(made.Closed);
        Assert.Empty(made.Open);
        Assert.Equal(3, made.Repairs.Count(r => r.Kind == RepairKind.DoubledDropped));
        Assert.Equal(["doubled-lines-dropped"], Codes(made));
    }

    [Fact]
    public void Two_outlines_that_share_an_edge_both_keep_it_and_it_is_told()
    {
        LoosePiece a = LoosePiece.Of(Contour.Polygon(new(0, 0), new(10, 0), new(10, 10), new(0, 10)), 1);
        LoosePiece b = LoosePiece.Of(Contour.Polygon(new(10, 4), new(20, 4), new(20, 12), new(10, 12)), 2);
        CleanOutlines made = ContourCleaner.Clean([a, b]);
        Assert.Equal([100, 80], made.Regions.Select(r => r.Area));
        Finding shared = Assert.Single(made.Findings, f => f.Kind.Code == "outlines-share-a-stretch");
        Assert.Equal(6, shared.Found!.Value.Value, 1e-9);
    }

    [Fact]
    public void A_tail_does_not_tear_a_loop_open_and_a_divider_goes_to_neither_side()
    {
        // The tail goes straight on from the lower edge: it turns less than the edge that closes the square.
        LoosePiece[] square = [Line(0, 0, 10, 0, 1), Line(10, 0, 10, 10, 2), Line(10, 10, 0, 10, 3), Line(0, 10, 0, 0, 4)];
        CleanOutlines tailed = ContourCleaner.Clean([.. square, Line(10, 0, 15, 0, 5)]);
        Assert.Equal(100, Assert.Single(tailed.Regions).Area, 1e-12);
        Assert.Equal(5, Assert.Single(tailed.Open).Contour.Length, 1e-12);
        Assert.Contains("ends-meet-in-a-fork", Codes(tailed));

        CleanOutlines divided = ContourCleaner.Clean(
            [Line(0, 0, 4, 0), Line(4, 0, 10, 0), Line(10, 0, 10, 10), Line(10, 10, 4, 10), Line(4, 10, 0, 10), Line(0, 10, 0, 0), Line(4, 0, 4, 10)]);
        Assert.Equal(100, Assert.Single(divided.Regions).Area, 1e-12);
        Assert.Equal(10, Assert.Single(divided.Open).Contour.Length, 1e-12);
        Assert.Equal(2, divided.Repairs.Count(r => r.Kind == RepairKind.JunctionDecided));
    }

    [Fact]
    public void Two_squares_that_share_a_corner_are_two_that_touch()
    {
        CleanOutlines made = ContourCleaner.Clean(
            [Line(0, 0, 10, 0), Line(10, 0, 10, 10), Line(10, 10, 0, 10), Line(0, 10, 0, 0), Line(10, 10, 20, 10), Line(20, 10, 20, 20), Line(20, 20, 10, 20), Line(10, 20, 10, 10)]);
        Assert.Equal([100, 100], made.Regions.Select(r => r.Area));
        Assert.Contains("outlines-touch", Codes(made));
        Assert.DoesNotContain("outlines-cross", Codes(made));
    }

    [Fact]
    public void A_loop_that_crosses_itself_is_told_from_one_that_touches_itself()
    {
        CleanOutlines bow = ContourCleaner.Clean([LoosePiece.Of(Contour.Polygon(new(0, 0), new(10, 10), new(10, 0), new(0, 10)), 1)]);
        Assert.False(Assert.Single(bow.Closed).IsSound);
        Assert.Empty(bow.Regions);
        Finding crossing = Assert.Single(bow.Findings);
        Assert.Equal(("outline-crosses-itself", (5.0, 5.0)), (crossing.Kind.Code, crossing.Place.Point!.Value));

        // The same through a vertex at the crossing, and then turned back there.
        CleanOutlines through = ContourCleaner.Clean([LoosePiece.Of(Contour.Polygon(new(0, 0), new(5, 5), new(10, 10), new(10, 0), new(5, 5), new(0, 10)), 1)]);
        Assert.Equal(["outline-crosses-itself"], Codes(through));
        CleanOutlines pinched = ContourCleaner.Clean([LoosePiece.Of(Contour.Polygon(new(0, 0), new(5, 5), new(10, 0), new(10, 10), new(5, 5), new(0, 10)), 1)]);
        Assert.Equal(["outline-touches-itself"], Codes(pinched));
        Assert.Equal(50, Assert.Single(pinched.Regions).Area, 1e-12);
    }

    [Theory]
    [InlineData(0, "outlines-touch")]
    [InlineData(0.01, null)]
    [InlineData(-0.01, "outlines-cross")]
    public void Circles_beside_each_other(double gap, string? code)
    {
        CleanOutlines made = ContourCleaner.Clean([LoosePiece.Of(Contour.Circle(default, 5), 1), LoosePiece.Of(Contour.Circle(Point2.Direction(1) * (8 + gap), 3), 2)]);
        Assert.Equal(code is null ? [] : [code], Codes(made));
    }

    [Fact]
    public void Rings_within_rings_turn_by_their_depth()
    {
        // Radii 10 to 50 about the origin, drawn either way round; a small one between the third and the fourth, one far away.
        LoosePiece[] rings = [.. Enumerable.Range(1, 5).Select(i => LoosePiece.Of(i % 3 == 0 ? Contour.Circle(default, i * 10) : Contour.Circle(default, i * 10).Reversed(), i))];
        CleanOutlines made = ContourCleaner.Clean([.. rings, LoosePiece.Of(Contour.Circle(new(0, 35), 2), 6), LoosePiece.Of(Contour.Circle(new(100, 0), 10), 7)]);
        Assert.Equal([4, 3, 2, 1, 0, 2, 0], made.Closed.OrderBy(c => c.Sources[0]).Select(c => c.Depth));
        Assert.All(made.Closed, c => Assert.Equal((c.Depth & 1) == 0, c.Contour.IsCounterClockwise));
        Assert.Equal(5, made.Regions.Length);
    }

    [Fact]
    public void Holes_belong_to_the_outline_directly_round_them()
    {
        CleanOutlines made = ContourCleaner.Clean(
        [
            LoosePiece.Of(Contour.Circle(default, 50), 1), LoosePiece.Of(Contour.Circle(new(-20, 0), 20), 2), LoosePiece.Of(Contour.Circle(new(-20, 0), 10), 3),
            LoosePiece.Of(Contour.Circle(new(20, 0), 5), 4), LoosePiece.Of(Contour.Circle(new(100, 0), 40), 5), LoosePiece.Of(Contour.Circle(new(120, 0), 15), 6),
        ]);
        double[] areas = [.. made.Regions.Select(r => Math.Round(r.Area / Math.PI, 6))];
        Assert.Equal([2500 - 400 - 25, 100, 1600 - 225], areas);
        Assert.Equal([0, 1, 2, 1, 0, 1], made.Closed.OrderBy(c => c.Sources[0]).Select(c => c.Depth));
        Assert.All(made.Closed, c => Assert.Equal((c.Depth & 1) == 0, c.Contour.IsCounterClockwise));
        Assert.Equal([-1, 1, 2, 1, -1, 5], made.Closed.OrderBy(c => c.Sources[0]).Select(c => c.Parent < 0 ? -1 : made.Closed[c.Parent].Sources[0]));
    }

    [Fact]
    public void What_has_no_numbers_is_refused_and_the_rest_is_made()
    {
        CleanOutlines made = ContourCleaner.Clean(
        [
            new LoosePiece(default, true, 9), new LoosePiece([], false, 8), Line(double.NaN, 0, 1, 1, 7), Line(0, 0, 2e6, 0, 6), Arc(0, 0, 1, 0, double.PositiveInfinity, 5),
            Arc(0, 0, 1, 0, 1e9, 4), Line(3, 3, 3, 3, 3), LoosePiece.Of(Contour.Circle(default, 5), 1),
        ], new CleaningOptions { Gap = double.NaN });
        Assert.Equal([4, 5, 6, 7, 8, 9], made.Findings.Where(f => f.Kind.Code == "piece-unusable").Select(f => (int)f.Args[0].Quantity!.Value.Value));
        Assert.Contains("gap-out-of-range", Codes(made));
        Assert.Equal((RepairKind.ZeroLengthDropped, new Point2(3, 3)), (Assert.Single(made.Repairs).Kind, made.Repairs[0].At));
        Assert.Single(made.Regions);
    }

    [Fact]
    public void An_arc_of_more_than_half_a_turn_is_halved()
    {
        // Three quarters of a circle of 10 about the origin, and the chord that closes it.
        CleanOutlines made = ContourCleaner.Clean([Arc(10, 0, 0, -10, Math.Tan(3 * Math.PI / 8), 1), Line(10, 0, 0, -10, 2)]);
        Contour contour = Assert.Single(made.Closed).Contour;
        Assert.Equal(3, contour.SegmentCount);
        Assert.All(contour.Vertices.ToArray(), v => Assert.Equal(10, v.Point.Length, 1e-12));
        Assert.Equal((75 * Math.PI) + 50, contour.SignedArea, 1e-9);
    }
}
