using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.MarkingOut;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.MarkingOut;

public class HandLayoutTests
{
    private const double Inch = 25.4;

    public static TheoryData<string, string> Everything => [.. from shape in ShapeJobs.Shares from board in ShapeJobs.Boards select (shape, board)];

    // 7 1/2 by 4 1/4 in: y = 4 1/4 · √(1 - ((7 1/2 - x) / 7 1/2)²), worked by hand for 1, 3 and 5 in: 2.1203, 3.4 and 4.0069.
    [Fact]
    public void Ordinates_of_a_scoop_follow_the_equation_of_the_ellipse()
    {
        HandLayout layout = Of("kind = 'quarter-ellipse', form = 'scoop', run = '7 1/2', depth = '4 1/4'", "2x8");
        Assert.Equal(Inch / 2, layout.Step);
        Assert.Equal(16, layout.Ordinates.Length);
        foreach (Ordinate o in layout.Ordinates)
        {
            double share = (7.5 - (o.Along / Inch)) / 7.5;
            Assert.Equal(4.25 * Math.Sqrt(Math.Max(0, 1 - (share * share))) * Inch, Assert.Single(o.Heights), 1e-6);
        }

        double At(double inches) => layout.Ordinates.Single(o => Math.Abs(o.Along - (inches * Inch)) < 1e-6).Heights[0] / Inch;
        Assert.Equal([2.1203, 3.4, 4.0069], ((double[])[1, 3, 5]).Select(x => Math.Round(At(x), 4)));
    }

    // A belly begins along the edge: y = d · (1 - √(1 - (x / r)²)).
    [Fact]
    public void Ordinates_of_a_belly_follow_the_equation_of_the_ellipse()
    {
        HandLayout layout = Of("kind = 'quarter-ellipse', form = 'belly', run = '70 mm', depth = '50 mm'", "2x8", 10);
        Assert.Equal([0, 10, 20, 30, 40, 50, 60, 70], layout.Ordinates.Select(o => Math.Round(o.Along, 6)));
        Assert.All(layout.Ordinates, o => Assert.Equal(50 * (1 - Math.Sqrt(Math.Max(0, 1 - (o.Along * o.Along / 4900)))), Assert.Single(o.Heights), 1e-4));
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void Every_ordinate_of_every_shape_lies_on_its_curve_and_no_station_is_left_out(string shape, string board)
    {
        HandLayout layout = Of(shape, board);
        Assert.All(layout.Ordinates, o => Assert.All(o.Heights, h => Assert.InRange(layout.Curves.Min(c => Off(c, new Point2(o.Along, h))), 0, 1e-6)));
        double high = layout.Ordinates.Max(o => o.Along);
        for (double x = 0; x < high; x += layout.Step)
        {
            Assert.NotEmpty(layout.Ordinates.Single(o => Math.Abs(o.Along - x) < 1e-6).Heights);
        }

        // Begin and end of the curve are among them.
        Assert.Equal(0, layout.Ordinates.Single(o => Math.Abs(o.Along) < 1e-6).Heights[0], 1e-6);
        Point2 end = layout.Curves[^1].End;
        Assert.Equal(0, layout.Ordinates.Single(o => Math.Abs(o.Along - end.X) < 1e-6).Heights.Min(h => Math.Abs(h - end.Y)), 1e-3);
    }

    // The curve's own points against the sweeps: none is farther from the nearest sweep than is told, and a sweep keeps its radius at both ends.
    [Theory]
    [MemberData(nameof(Everything))]
    public void Sweeps_of_the_compass_stay_within_what_is_told(string shape, string board)
    {
        HandLayout layout = Of(shape, board);
        Assert.All(layout.Arcs, a => Assert.InRange(a.Departure, 0, Inch / 64));
        Assert.All(layout.Arcs, a => Assert.Equal(a.Radius, a.To.DistanceTo(a.Center), 1e-6 * Math.Max(1, a.Radius)));
        Assert.Equal(layout.Curves.Count(c => c is ArcCurve), layout.Arcs.Count(a => a.IsExact));
        foreach (Curve curve in layout.Curves.Where(c => c is not LineCurve))
        {
            for (int i = 0; i <= 200; i++)
            {
                Point2 p = curve.PointAt(i / 200.0);
                CompassArc nearest = layout.Arcs.MinBy(a => Math.Abs(p.DistanceTo(a.Center) - a.Radius))!;
                Assert.InRange(Math.Abs(p.DistanceTo(nearest.Center) - nearest.Radius), 0, layout.Arcs.Max(a => a.Departure) + 1e-6);
            }
        }
    }

    // A sixteenth of an inch outside everywhere, never inside: measured from the saw line to points of the finished edge a fiftieth of a millimetre apart or nearer.
    [Theory]
    [MemberData(nameof(Everything))]
    public void The_saw_line_leaves_a_sixteenth(string shape, string board)
    {
        HandLayout layout = Of(shape, board);
        Assert.NotEmpty(layout.SawLine);
        Point2[] edge = [.. ((Curve[])[.. layout.Curves, layout.EndCut]).SelectMany(c => Enumerable.Range(0, 5001).Select(i => c.PointAt(i / 5000.0)))];
        foreach (Contour part in layout.SawLine)
        {
            for (int i = 0; i < part.SegmentCount; i++)
            {
                foreach (double share in (double[])[0.02, 0.5])
                {
                    Point2 p = part[i].PointAt(share);
                    Assert.Equal(Inch / 16, edge.Min(e => e.DistanceTo(p)), 0.05);
                }
            }
        }
    }

    // A belly leaves the lower edge along it: what lies a sixteenth outside of it there is below the board.
    [Theory]
    [MemberData(nameof(Everything))]
    public void The_saw_line_stays_in_the_board_and_reaches_its_edges(string shape, string board)
    {
        HandLayout layout = Of(shape, board);
        Assert.All(layout.SawLine, part => Assert.True(part.Box.MinY > -1e-6));
        Assert.Equal(0, layout.SawLine.Min(part => part.Box.MinY), 0.01);
    }

    // At every scale that the page may take, the word that says where the pencil is lies clear of the curve.
    [Theory]
    [MemberData(nameof(Everything))]
    public void The_pencil_is_named_off_the_curve(string shape, string board)
    {
        foreach (EllipseStick stick in Of(shape, board).Sticks)
        {
            foreach ((bool between, double scale) in (ReadOnlySpan<(bool, double)>)[(true, 1), (false, 1), (true, 0.25), (false, 0.25)])
            {
                Lettered word = Draughting.Marks(StickDrawing.Of(stick, between, LengthUnit.Inch, scale), scale).OfType<Lettered>().Single(l => l.Written.Text == "pencil");
                Assert.All(Enumerable.Range(0, 201), i => Assert.False(word.Written.Box.Contains(stick.Curve.PointAt(i / 200.0))));

                // Nor does it lie on the stick, which is 2.6 mm of paper wide.
                Box2 clear = word.Written.Box.Grown(1.3 / scale);
                foreach (StickPlace place in (ReadOnlySpan<StickPlace>)[stick.At(0.4, between), stick.At(0.75, between)])
                {
                    Assert.All(Enumerable.Range(0, 401), i => Assert.False(clear.Contains(place.Ends.From.Towards(place.Ends.To, i / 400.0))));
                }
            }
        }
    }

    // Of every shape on every board, at full size: no word lies on another.
    [Theory]
    [MemberData(nameof(Everything))]
    public void No_lettering_of_a_paper_pattern_overlaps_another(string shape, string board)
    {
        var piece = (ProfilePiece)Planned(shape, board);
        Drawing drawing = PaperPattern.Of(piece, HandLayout.Of(piece.Profile, LengthUnit.Inch), LengthUnit.Inch);
        Lettered[] words = [.. Draughting.Marks(drawing, 1).OfType<Lettered>()];
        for (int i = 0; i < words.Length; i++)
        {
            for (int k = i + 1; k < words.Length; k++)
            {
                Assert.False(words[i].Written.Box.Meets(words[k].Written.Box), $"'{words[i].Written.Text}' lies on '{words[k].Written.Text}'");
            }
        }
    }

    [Theory]
    [InlineData(60.0, LengthUnit.Inch, 6.35)]
    [InlineData(190.5, LengthUnit.Inch, 12.7)]
    [InlineData(80.0, LengthUnit.Millimetre, 5.0)]
    [InlineData(300.0, LengthUnit.Millimetre, 20.0)]
    [InlineData(5000.0, LengthUnit.Millimetre, 100.0)]
    public void The_usual_step_asks_for_no_more_than_sixteen_heights(double run, LengthUnit unit, double step) => Assert.Equal(step, Ordinates.UsualStep(run, unit), 1e-12);

    private static HandLayout Of(string shape, string board, double? step = null) => HandLayout.Of(ShapeJobs.Made(shape, board), LengthUnit.Inch, step);

    private static Piece Planned(string shape, string board) => Assert.Single(DrawPlan.Of(ShapeJobs.Read(shape, board)).Pieces);

    /// <summary>How far a point is from a curve by the curve's own equation, mm; for other curves the nearest of many points, refined.</summary>
    private static double Off(Curve curve, Point2 p)
    {
        switch (curve)
        {
            case LineCurve line:
                Point2 along = (line.To - line.From).Unit();
                double at = Math.Clamp((p - line.From).Dot(along), 0, line.Length);
                return p.DistanceTo(line.From + (along * at));
            case ArcCurve arc:
                return Math.Abs(p.DistanceTo(arc.Center) - arc.Radius);
            default:
                double best = 0;
                for (double width = 1; width > 1e-9; width /= 8)
                {
                    double from = Math.Max(0, best - width);
                    double to = Math.Min(1, best + width);
                    best = Enumerable.Range(0, 65).Select(i => from + ((to - from) * i / 64)).MinBy(t => curve.PointAt(t).DistanceTo(p));
                }

                return curve.PointAt(best).DistanceTo(p);
        }
    }
}
