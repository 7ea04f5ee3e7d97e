using System.Globalization;
using System.Text;
using ToolpathForge.Geometry;
using ToolpathForge.Nesting;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Nesting;

public class NesterTests
{
    private static readonly double[] Quarter = [0, Math.PI / 2, Math.PI, -Math.PI / 2];

    private static NestResult Nest(NestRequest request) => Nester.Nest(request, TestContext.Current.CancellationToken);

    [Fact]
    public void Sixty_pieces_use_the_panel_better_than_the_best_packing_of_their_boxes()
    {
        NestRequest request = NestShapes.Sixty();
        NestResult nest = Nest(request);
        Assert.Empty(nest.Left);
        Assert.Equal(60, nest.Panels.Sum(p => p.Pieces.Length));
        AssertSettled(request, nest);
        double boxes = BoxPacking.BestUsedShare(request);
        double share = nest.UsedShare(request.Room);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"share {share:0.000} boxes {boxes:0.000} ratio {share / boxes:0.000} panels {nest.Panels.Length}"));
        Assert.True(share >= 1.15 * boxes, FormattableString.Invariant($"used share {share:0.000}, boxes {boxes:0.000}, ratio {share / boxes:0.000}"));
    }

    [Fact]
    public void The_same_request_gives_the_same_nest()
    {
        NestRequest request = NestShapes.Sixty() with { Parts = [.. NestShapes.Sixty().Parts.Select(p => p with { Count = 3 })] };
        Assert.Equal(Written(Nest(request)), Written(Nest(request)));
    }

    [Fact]
    public void A_small_piece_lies_in_the_opening_of_a_large_one()
    {
        var request = new NestRequest([new NestPart(NestShapes.Frame(300, 120), 1), new NestPart(NestShapes.Bracket(100, 30), 1)], new Box2(0, 0, 310, 310), 10, [.. Quarter], []);
        NestedPanel panel = Assert.Single(Nest(request).Panels);
        Region frame = panel.Pieces.Single(p => p.Part == 0).Shape;
        Region small = panel.Pieces.Single(p => p.Part == 1).Shape;
        Assert.True(small.Box.MinX > frame.Box.MinX && small.Box.MaxX < frame.Box.MaxX && small.Box.MinY > frame.Box.MinY && small.Box.MaxY < frame.Box.MaxY);
    }

    [Fact]
    public void A_hollow_takes_what_boxes_could_not()
    {
        // Two brackets of 200, back to back about a half turn, need a square of about 200 + 2 x 50; their boxes would need 410 in one direction.
        var request = new NestRequest([new NestPart(NestShapes.Bracket(200, 40), 2)], new Box2(0, 0, 275, 275), 10, [.. Quarter], []);
        NestResult nest = Nest(request);
        Assert.Single(nest.Panels);
        AssertSettled(request, nest);
    }

    [Fact]
    public void What_fits_on_no_panel_is_told_and_the_rest_is_laid()
    {
        var request = new NestRequest(
            [new NestPart(NestShapes.Plate(500, 100, 50, true), 1), new NestPart(NestShapes.Plate(200, 100, 50, true), 3)], new Box2(0, 0, 300, 300), 10, [0, Math.PI], []);
        NestResult nest = Nest(request);
        Assert.Equal([0], nest.Left);
        Assert.Equal(3, nest.Panels.Sum(p => p.Pieces.Length));
    }

    [Fact]
    public void Only_the_turns_that_are_allowed_are_used()
    {
        var request = new NestRequest([new NestPart(NestShapes.Plate(250, 100, 50, true), 2)], new Box2(0, 0, 210, 400), 10, [0, Math.PI], []);
        Assert.Equal([0], Nest(request).Left);
        NestResult turned = Nest(request with { Turns = [.. Quarter] });
        Assert.All(turned.Panels.SelectMany(p => p.Pieces), p => Assert.Equal(1, Math.Abs(Math.Sin(p.Placement.Turn)), 12));
    }

    [Fact]
    public void Clamps_are_kept_clear_of_on_every_panel()
    {
        Region clamp = Region.Of(Contour.Polygon(new Point2(0, 0), new Point2(60, 0), new Point2(60, 60), new Point2(0, 60)));
        var request = new NestRequest([new NestPart(NestShapes.Plate(220, 140, 110, false), 6)], new Box2(0, 0, 400, 400), 12, [.. Quarter], [new NestObstacle(clamp, 20)]);
        NestResult nest = Nest(request);
        Assert.True(nest.Panels.Length > 1);
        AssertSettled(request, nest);
        Assert.All(nest.Panels.SelectMany(p => p.Pieces), p => Assert.True(Spacing.IsKept(p.Shape, clamp, 20)));
    }

    [Fact]
    public void Pieces_lie_where_their_placement_says()
    {
        NestRequest request = NestShapes.Sixty() with { Parts = [.. NestShapes.Sixty().Parts.Select(p => p with { Count = 2 })] };
        foreach (NestedPiece piece in Nest(request).Panels.SelectMany(p => p.Pieces))
        {
            Contour there = request.Parts[piece.Part].Shape.Placed(piece.Placement).Loops[0];
            Assert.True(there.Start.DistanceTo(piece.Shape.Loops[0].Start) < 1e-9);
            Assert.True(there.End.DistanceTo(piece.Shape.Loops[0].End) < 1e-9);
        }
    }

    /// <summary>Outside reference: shapely (GEOS), on outlines of chords that lie 0.002 mm from the arcs at most.</summary>
    [Fact]
    public void Two_hundred_random_sets_are_legal_by_shapely()
    {
        int seed = Environment.TickCount;
        var random = new Random(seed);
        var text = new StringBuilder();
        int sets = 0;
        while (sets < 200)
        {
            NestRequest request = RandomRequest(random);
            NestResult nest = Nest(request);
            AssertSettled(request, nest, $"seed {seed}: ");
            Assert.Equal(request.Parts.Where((_, i) => !nest.Left.Contains(i)).Sum(p => p.Count), nest.Panels.Sum(p => p.Pieces.Length));
            foreach (NestedPanel panel in nest.Panels)
            {
                Write(text, request, panel);
            }

            sets++;
        }

        Assert.True(OutsideTool.Python("nest_check.py", text.ToString(), "shapely").Trim() == "", $"seed {seed}");
    }

    private static NestRequest RandomRequest(Random random)
    {
        NestPart Part()
        {
            double a = 40 + (random.NextDouble() * 160);
            double b = 30 + (random.NextDouble() * 100);
            double r = Math.Min(a, b) * (0.2 + (0.7 * random.NextDouble()));
            Region shape = random.Next(4) switch
            {
                0 => NestShapes.Bracket(a, a * 0.3),
                1 => NestShapes.Frame(a, a * 0.35),
                2 => NestShapes.Plate(a, b, r, true),
                _ => NestShapes.Plate(a, b, r, false),
            };
            return new NestPart(shape, 1 + random.Next(3));
        }

        return new NestRequest(
            [.. Enumerable.Range(0, 1 + random.Next(5)).Select(_ => Part())], new Box2(10, 10, 330, 290), 3 + (random.NextDouble() * 20),
            random.Next(3) switch { 0 => [0], 1 => [0, Math.PI], _ => [.. Quarter] }, [])
        { Changes = 4 };
    }

    private static void Write(StringBuilder text, NestRequest request, NestedPanel panel)
    {
        text.Append(CultureInfo.InvariantCulture, $"panel {request.Gap:R} {request.Room.MinX:R} {request.Room.MinY:R} {request.Room.MaxX:R} {request.Room.MaxY:R}\n");
        foreach (NestedPiece piece in panel.Pieces)
        {
            text.Append("piece\n");
            foreach (Contour loop in piece.Shape.Loops)
            {
                text.Append("loop");
                for (int i = 0; i < loop.SegmentCount; i++)
                {
                    // A chord of an arc of radius r over an angle a is r·a²/8 from it.
                    int parts = loop[i].IsLine ? 1 : (int)Math.Ceiling(Math.Abs(loop[i].Sweep) / Math.Sqrt(8 * 0.002 / loop[i].Radius));
                    for (int k = 0; k < parts; k++)
                    {
                        Point2 p = loop[i].PointAt((double)k / parts);
                        text.Append(CultureInfo.InvariantCulture, $" {p.X:R} {p.Y:R}");
                    }
                }

                text.Append('\n');
            }
        }

        text.Append("end\n");
    }

    /// <summary>Legal, and nothing can be moved down or left by 0.1 mm.</summary>
    private static void AssertSettled(NestRequest request, NestResult nest, string which = "")
    {
        foreach (NestedPanel panel in nest.Panels)
        {
            for (int i = 0; i < panel.Pieces.Length; i++)
            {
                Assert.True(Lies(request, panel, i, default), $"{which}piece {i} is not legal");
                Assert.False(Lies(request, panel, i, new Point2(0, -0.1)), $"{which}piece {i} slides down");
                Assert.False(Lies(request, panel, i, new Point2(-0.1, 0)), $"{which}piece {i} slides left");
            }
        }
    }

    private static bool Lies(NestRequest request, NestedPanel panel, int piece, Point2 shift)
    {
        Region shape = panel.Pieces[piece].Shape.Placed(Placement.At(shift.X, shift.Y));
        Box2 box = shape.Box;
        Box2 room = request.Room.Grown(1e-8);
        return box.MinX >= room.MinX && box.MinY >= room.MinY && box.MaxX <= room.MaxX && box.MaxY <= room.MaxY
            && panel.Pieces.Where((_, i) => i != piece).All(p => Spacing.IsKept(shape, p.Shape, request.Gap))
            && request.Obstacles.All(o => Spacing.IsKept(shape, o.Shape, o.Gap));
    }

    private static string Written(NestResult nest) => string.Join('\n', nest.Panels.SelectMany((panel, n) => panel.Pieces.Select(p => string.Create(
        CultureInfo.InvariantCulture, $"{n} {p.Part} {p.Placement.Turn:R} {p.Placement.Shift.X:R} {p.Placement.Shift.Y:R}"))));
}
