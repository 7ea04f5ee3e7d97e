using System.Collections.Immutable;
using CsCheck;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Tests.Drawings;

public class DraughtingTests
{
    private static readonly Outline s_disc = new([new ArcCurve(new Point2(10, -5), 40, 1, 2 * Math.PI)], true);

    [Theory]
    [InlineData(MeasuredAlong.Horizontal, 10, null, 20 + 20)] // above the higher point: y = 20, and 10 mm of paper at 1:2
    [InlineData(MeasuredAlong.Horizontal, -10, null, -20)] // below the lower point: y = 0
    [InlineData(MeasuredAlong.Horizontal, -10, -50.0, -70)]
    [InlineData(MeasuredAlong.Vertical, 10, null, -20)] // left of x = 0
    [InlineData(MeasuredAlong.Vertical, -10, null, 100 + 20)] // right of x = 100
    [InlineData(MeasuredAlong.Vertical, -10, 130.0, 150)]
    public void A_dimension_line_lies_its_paper_distance_from_the_reference(MeasuredAlong along, double offset, double? reference, double level)
    {
        Mark[] marks = Draw(0.5, new LinearDimension(new Point2(0, 0), new Point2(100, 20), along, "1", offset, reference));
        bool horizontal = along == MeasuredAlong.Horizontal;

        // The arrowheads' tips are the measured coordinates on the line.
        Point2[] tips = [.. marks.OfType<Solid>().Select(s => s.Ring.Start)];
        Point2[] expected = horizontal ? [new(0, level), new(100, level)] : [new(level, 0), new(level, 20)];
        Assert.Equal(expected.Length, tips.Length);
        Assert.All(expected, e => Assert.InRange(tips.Min(t => t.DistanceTo(e)), 0, 1e-9));

        // The text stands clear of the line, on the upper side as it is read.
        Box2 text = marks.OfType<Lettered>().Single().Written.Box;
        Assert.True(horizontal ? text.MinY > level : text.MaxX < level);
    }

    [Theory]
    [InlineData(0, 0, 30, 40)]
    [InlineData(30, 40, 0, 0)]
    [InlineData(0, 0, -30, 40)]
    [InlineData(0, 0, 0, -50)]
    [InlineData(50, 0, 0, 0)]
    public void An_aligned_dimension_lies_to_the_left_and_reads_from_below_or_from_the_right(double x1, double y1, double x2, double y2)
    {
        var from = new Point2(x1, y1);
        var to = new Point2(x2, y2);
        Point2 left = (to - from).Unit().Left;
        Mark[] marks = Draw(1, new LinearDimension(from, to, MeasuredAlong.Aligned, "I", 7));
        Point2[] tips = [.. marks.OfType<Solid>().Select(s => s.Ring.Start)];
        Assert.Contains(tips, t => t.DistanceTo(from + (left * 7)) < 1e-9);
        Assert.Contains(tips, t => t.DistanceTo(to + (left * 7)) < 1e-9);

        // The one stroke of "I" is drawn upwards: its direction is the text's up.
        Point2 up = marks.OfType<Lettered>().Single().Written.Strokes.Single()[0].StartDirection;
        Assert.True(up.Y > 1e-9 || (Math.Abs(up.Y) < 1e-9 && up.X < 0), $"Text stands towards ({up.X:F3}, {up.Y:F3}).");
    }

    [Fact]
    public void What_does_not_fit_between_the_ends_goes_outside()
    {
        Mark[] marks = Draw(1, new LinearDimension(new Point2(0, 0), new Point2(2, 0), MeasuredAlong.Horizontal, "2.0", 9));
        Assert.True(marks.OfType<Lettered>().Single().Written.Box.MinX > 2);

        // Arrowheads point inwards from outside: their feet lie beyond the ends.
        Box2 heads = Draughting.BoxOf([.. marks.OfType<Solid>()]);
        Assert.Equal(-DrawingStyle.ArrowLength, heads.MinX, 9);
        Assert.Equal(2 + DrawingStyle.ArrowLength, heads.MaxX, 9);
    }

    [Fact]
    public void Signs_keep_their_size_on_paper_and_things_keep_theirs_in_the_drawing()
    {
        foreach (double scale in (double[])[1, 0.5, 0.04])
        {
            Mark[] marks = Draw(scale, new Text("H", Point2.Origin, TextAlign.Start, 5), new DirectionArrow(LineRole.CutPath, Point2.Origin, new Point2(0, 3)), new ExactStroke(LineRole.Edge, s_disc));
            Assert.Equal(5, marks.OfType<Lettered>().Single().Written.Box.Height * scale, 9);
            Box2 head = marks.OfType<Solid>().Single().Ring.Box;
            Assert.Equal(DrawingStyle.ArrowLength, head.Height * scale, 9);
            Assert.Equal(0, head.Center.Y, 9);
            Assert.Equal(80, Draughting.BoxOf([.. marks.OfType<ExactStroke>()]).Width, 9);
        }
    }

    [Fact]
    public void Every_element_can_be_drawn_and_is_boxed()
    {
        Drawing sheet = ScoopPlate.Sheet(0.5);
        Type[] kinds = [.. typeof(DrawingElement).Assembly.GetTypes().Where(t => !t.IsAbstract && t.IsSubclassOf(typeof(DrawingElement)))];
        Assert.Empty(kinds.Except(sheet.Elements.Select(e => e.GetType())).Except([typeof(Solid), typeof(Lettered)]));
        ImmutableArray<Mark> marks = Draughting.Marks(sheet, 0.5);
        Assert.Contains(marks, m => m is Solid);
        Assert.Contains(marks, m => m is Lettered);
        Box2 box = Draughting.BoxOf(marks);
        Assert.All(marks, m => Assert.False(Draughting.BoxOf([m]).IsEmpty));
        Assert.True(box.Width > 355 && box.Width < 600);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_scale_that_is_none_is_refused(double scale) => Assert.Throws<ArgumentOutOfRangeException>(() => Draughting.Marks(ScoopPlate.Sheet(1), scale));

    [Fact]
    public void Paper_is_as_large_as_needed_or_takes_the_largest_common_scale_that_fits()
    {
        Drawing drawing = new("", "", [new Stroke(LineRole.Edge, Contour.Polygon(new(-100, -50), new(300, -50), new(300, 150), new(-100, 150)))]);
        Assert.Equal(new SheetPaper(210, 110, 0.5, new Point2(55, 30)), SheetPaper.Around(drawing, 0.5, 5));
        SheetPaper a4 = SheetPaper.Within(drawing, 210, 297, 10)!;
        Assert.Equal(1 / 2.5, a4.Scale);
        Assert.Equal(new Point2(105, 148.5), a4.ToPaper(new Point2(100, 50)));
        Assert.Null(SheetPaper.Within(drawing, 10, 10, 4));
    }

    [Fact]
    public void A_line_through_a_disc_is_its_chord()
    {
        // Turned by 1 radian and through the centre the line passes the disc's seam, where start and end agree only up to rounding.
        Gen.Select(Gen.Double[-Math.PI, Math.PI], Gen.Double[-39.9, 39.9]).Sample(Check, iter: 1000);
        foreach (double turn in (double[])[0, Math.PI, -Math.PI, 1e-15, -1e-15])
        {
            Check(1 + turn, 0);
        }

        static void Check(double angle, double height)
        {
            Point2 along = Point2.Direction(angle);
            double level = new Point2(10, -5).Dot(along.Left) + height;
            List<(double From, double To)> found = AreaLines.Inside([s_disc], along, level);
            Assert.True(found.Count == 1, $"At {angle:R}, {height:R}: {found.Count} stretches.");
            (double from, double to) = found[0];
            double half = Math.Sqrt((40 * 40) - (height * height));
            double middle = new Point2(10, -5).Dot(along);
            Assert.Equal(middle - half, from, 6);
            Assert.Equal(middle + half, to, 6);
        }
    }

    [Fact]
    public void Stretches_inside_an_area_are_inside_at_any_angle_and_through_corners()
    {
        Contour star = Contour.Polygon(new(0, 0), new(40, 10), new(80, 0), new(70, 40), new(80, 80), new(40, 70), new(0, 80), new(10, 40));
        Contour hole = Contour.Circle(new Point2(40, 40), 12);
        ImmutableArray<Outline> rings = [Outlines.Of(star), Outlines.Of(hole)];
        Gen.Select(Gen.OneOf(Gen.Double[-4, 4], Gen.Const(0.0), Gen.Const(Math.PI / 2)), Gen.OneOf(Gen.Double[-100, 100], Gen.Int[-10, 10].Select(i => i * 10.0))).Sample((angle, level) =>
        {
            Point2 along = Point2.Direction(angle);
            foreach ((double from, double to) in AreaLines.Inside(rings, along, level))
            {
                if (to - from > 1e-6)
                {
                    Point2 middle = (along.Left * level) + (along * ((from + to) / 2));
                    double edge = Math.Min(star.Distance(middle), hole.Distance(middle));
                    Assert.True(edge < 1e-6 || (star.Contains(middle) && !hole.Contains(middle)));
                }
            }
        });
    }

    [Fact]
    public void Grain_stays_inside_runs_along_the_fibres_and_is_the_same_each_time()
    {
        var grain = new GrainLines([s_disc], 0.3);
        Mark[] marks = Draw(0.5, grain);
        Assert.InRange(marks.Length, 20, 200);
        foreach (Stroke fibre in marks.Cast<Stroke>())
        {
            Assert.Equal(LineRole.Grain, fibre.Role);
            Assert.InRange(Math.Abs(fibre.Path[0].StartDirection.Cross(Point2.Direction(0.3))), 0, 1e-9);
            Assert.All([fibre.Path.Start, fibre.Path.End], p => Assert.InRange(p.DistanceTo(new Point2(10, -5)), 0, 40 + 1e-6));
        }

        Assert.Equal(Paths(marks), Paths(Draw(0.5, grain)));
        static IEnumerable<Point2> Paths(Mark[] all) => all.Cast<Stroke>().SelectMany(s => (Point2[])[s.Path.Start, s.Path.End]);
    }

    [Fact]
    public void The_box_of_a_curve_touches_its_farthest_points()
    {
        Gen<EllipseCurve> curves =
            from angle in Gen.Double[-4, 4]
            from major in Gen.Double[1, 300]
            from minor in Gen.Double[1, 300]
            from start in Gen.Double[-8, 8]
            from sweep in Gen.Double[-2 * Math.PI, 2 * Math.PI]
            let axis = Point2.Direction(angle)
            select new EllipseCurve(new Point2(3, 4), axis * major, axis.Left * minor, start, sweep);
        curves.Sample(curve =>
        {
            Box2 box = CurveExtent.Box(new Outline([curve], false));
            Box2 seen = Enumerable.Range(0, 2001).Select(i => curve.PointAt(i / 2000.0)).Aggregate(Box2.Empty, (b, p) => b.Including(p));
            Assert.True(box.Grown(1e-9).Contains(new Point2(seen.MinX, seen.MinY)) && box.Grown(1e-9).Contains(new Point2(seen.MaxX, seen.MaxY)));
            Assert.InRange(box.Width - seen.Width, -1e-9, 1e-3);
            Assert.InRange(box.Height - seen.Height, -1e-9, 1e-3);
        });
    }

    [Fact]
    public void Rows_keep_short_measures_near_and_chains_in_line()
    {
        LinearDimension Across(double from, double to, string text) => new(new Point2(from, 0), new Point2(to, 0), MeasuredAlong.Horizontal, text, -1);
        ImmutableArray<LinearDimension> rows = DimensionRows.Arrange(
            new Box2(0, -30, 200, 100), 1, Across(0, 200, "whole"), Across(0, 60, "a"), Across(60, 200, "b"), Across(20, 100, "over both"), Across(0, 60, "again") with { Offset = 1 });
        Assert.Equal([25.0, 9, 9, 17, 9], rows.Select(r => Math.Abs(r.Offset)));
        Assert.All(rows.Take(4), r => Assert.Equal(-30, r.Reference));
        Assert.Equal(100, rows[4].Reference);
        Assert.True(rows[4].Offset > 0 && rows[0].Offset < 0);
    }

    [Fact]
    public void No_two_dimension_lines_of_a_row_overlap()
    {
        Gen<LinearDimension> dimensions =
            from a in Gen.Double[0, 200]
            from b in Gen.Double[0, 200]
            from along in Gen.OneOf(Gen.Const(MeasuredAlong.Horizontal), Gen.Const(MeasuredAlong.Vertical))
            from side in Gen.OneOf(Gen.Const(-1.0), Gen.Const(1.0))
            select new LinearDimension(new Point2(a, a), new Point2(b, b), along, $"{b - a:F1}", side);
        dimensions.Array[1, 12].Sample(all =>
        {
            ImmutableArray<LinearDimension> rows = DimensionRows.Arrange(new Box2(0, 0, 200, 200), 0.5, [.. all]);
            for (int i = 0; i < rows.Length; i++)
            {
                for (int j = i + 1; j < rows.Length; j++)
                {
                    if (rows[i].Along == rows[j].Along && rows[i].Offset == rows[j].Offset)
                    {
                        (double from, double to) = (Math.Max(Low(rows[i]), Low(rows[j])), Math.Min(High(rows[i]), High(rows[j])));
                        Assert.True(to - from < 1e-6, "Two measures in one row overlap.");
                    }
                }
            }
        });
        static double Low(LinearDimension d) => Math.Min(d.From.X, d.To.X);
        static double High(LinearDimension d) => Math.Max(d.From.X, d.To.X);
    }

    [Fact]
    public void A_curve_of_another_kind_is_drawn_boxed_and_hatched_by_chords()
    {
        var wave = new Outline([new Wave(), new LineCurve(new Point2(100, 0), new Point2(100, -40)), new LineCurve(new Point2(100, -40), new Point2(0, -40)), new LineCurve(new Point2(0, -40), new Point2(0, 0))], true);
        Box2 box = Draughting.BoxOf([new ExactStroke(LineRole.Edge, wave)]);
        Assert.Equal(10, box.MaxY, 2);
        Assert.Equal(2, AreaLines.Inside([wave], new Point2(1, 0), -5).Count);
        string svg = SvgWriter.Write(new Drawing("wave", "", [new ExactStroke(LineRole.Edge, wave)]), 1);
        Assert.True(svg.Count(c => c == 'L') > 250);
    }

    private static Mark[] Draw(double scale, params DrawingElement[] elements) => [.. Draughting.Marks(new Drawing("", "", [.. elements]), scale)];

    /// <summary>Stands for a kind of curve that the drawings know nothing of: one period of a sine.</summary>
    private sealed record Wave : Curve
    {
        public override Point2 PointAt(double t) => new(100 * t, 10 * Math.Sin(2 * Math.PI * t));

        public override Point2 FirstDerivative(double t) => new(100, 20 * Math.PI * Math.Cos(2 * Math.PI * t));

        public override Point2 SecondDerivative(double t) => new(0, -40 * Math.PI * Math.PI * Math.Sin(2 * Math.PI * t));

        public override Curve Reversed() => throw new NotSupportedException();

        public override Curve Placed(Placement placement) => throw new NotSupportedException();
    }
}
