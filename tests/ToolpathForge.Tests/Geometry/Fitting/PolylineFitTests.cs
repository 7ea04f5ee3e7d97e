using CsCheck;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Fitting;

public class PolylineFitTests
{
    private static Contour Chords(bool closed, params IEnumerable<Point2>[] parts)
    {
        var points = new List<Point2>();
        foreach (Point2 p in parts.SelectMany(p => p))
        {
            if (points.Count == 0 || points[^1].DistanceTo(p) > 1e-9)
            {
                points.Add(p);
            }
        }

        if (closed && points[0].DistanceTo(points[^1]) < 1e-9)
        {
            points.RemoveAt(points.Count - 1);
        }

        return closed ? Contour.Polygon([.. points]) : Contour.Polyline([.. points]);
    }

    private static IEnumerable<Point2> Along(Curve curve, int chords) => Enumerable.Range(0, chords + 1).Select(i => curve.PointAt(i / (double)chords));

    [Theory]
    [InlineData(90)]
    [InlineData(200)]
    [InlineData(361)]
    public void A_circle_of_chords_is_a_few_arcs_again(int chords)
    {
        double radius = 40;
        double sagitta = radius * (1 - Math.Cos(Math.PI / chords));
        ArcsOfPolyline fit = PolylineFit.Fit(Chords(true, Along(new ArcCurve(new Point2(3, 4), radius, 0.2, 2 * Math.PI), chords)), 1.01 * sagitta);
        Assert.InRange(fit.Contour.SegmentCount, 2, 4);
        for (int i = 0; i < fit.Contour.SegmentCount; i++)
        {
            Assert.Equal(radius, fit.Contour[i].Radius, 1e-6);
        }

        Assert.Equal(sagitta, fit.Bound, 1e-7);
    }

    [Fact]
    public void A_plate_with_rounded_corners_and_a_notch_comes_back_as_it_was_drawn()
    {
        Contour plate = Chords(
            true,
            [new Point2(10, 0), new Point2(190, 0)],
            Along(new ArcCurve(new Point2(190, 10), 10, -Math.PI / 2, Math.PI / 2), 40),
            [new Point2(200, 110)],
            Along(new ArcCurve(new Point2(190, 110), 10, 0, Math.PI / 2), 40),
            [new Point2(120, 120), new Point2(120, 100), new Point2(80, 100), new Point2(80, 120), new Point2(10, 120)],
            Along(new ArcCurve(new Point2(10, 110), 10, Math.PI / 2, Math.PI / 2), 40),
            [new Point2(0, 10)],
            Along(new ArcCurve(new Point2(10, 10), 10, Math.PI, Math.PI / 2), 40));
        ArcsOfPolyline fit = PolylineFit.Fit(plate, 0.01);
        Assert.Equal(12, fit.Contour.SegmentCount);
        Assert.Equal(4, Enumerable.Range(0, 12).Count(i => !fit.Contour[i].IsLine));
        Assert.All(Enumerable.Range(0, 12).Where(i => !fit.Contour[i].IsLine), i => Assert.Equal(10, fit.Contour[i].Radius, 1e-6));
        Assert.Equal(
            [new Point2(120, 120), new Point2(120, 100), new Point2(80, 100), new Point2(80, 120)],
            Corners.Of(fit.Contour).Select(c => c.At).OrderBy(p => p.X == 80 ? 1 : 0).ThenBy(p => p.X == 80 ? p.Y : -p.Y));
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.1)]
    public void A_quarter_ellipse_of_chords_takes_few_arcs_without_corners(double tolerance)
    {
        EllipseCurve ellipse = EllipseFitTests.Quarter(200, 120);
        Contour chords = Chords(false, Along(ellipse, 1000));
        ArcsOfPolyline fit = PolylineFit.Fit(chords, tolerance);
        int exact = ArcFit.Fit(new Outline([ellipse], false), tolerance).Contour.SegmentCount;
        Assert.InRange(fit.Contour.SegmentCount, 2, exact + 4);
        Assert.Empty(Corners.Of(fit.Contour));
        Holds(chords, fit, tolerance);
    }

    [Fact]
    public void Polygons_stay_polygons()
    {
        Contour hexagon = Contour.Polygon([.. Enumerable.Range(0, 6).Select(i => Point2.Direction(i * Math.PI / 3) * 20)]);
        Assert.Equal(hexagon.Vertices, PolylineFit.Fit(hexagon, 0.05).Contour.Vertices);

        // 24 corners of 15° are no sharp corners, but the chords are far too long for an arc within the tolerance.
        Contour coarse = Contour.Polygon([.. Enumerable.Range(0, 24).Select(i => Point2.Direction(i * Math.PI / 12) * 50)]);
        Assert.Equal(coarse.Vertices, PolylineFit.Fit(coarse, 0.05).Contour.Vertices);
        Contour line = Contour.Polyline(new Point2(0, 0), new Point2(10, 3));
        Assert.Equal(line.Vertices, PolylineFit.Fit(line, 0.05).Contour.Vertices);
    }

    [Fact]
    public void Arcs_that_are_there_pass_through()
    {
        double q = Math.Tan(Math.PI / 8);
        var plate = new Contour([new(10, 0, 0), new(90, 0, q), new(100, 10, 0), new(100, 50, 0), new(0, 50, 0), new(0, 10, q)], true);
        Assert.Equal(plate.Vertices, PolylineFit.Fit(plate, 0.05).Contour.Vertices);
    }

    [Fact]
    public void The_bound_holds_and_corners_are_kept() =>
        Gen.Select(SplineBoundTests.GenBezier, SplineBoundTests.GenBezier, Gen.Int[50, 400], Gen.Double[-2, 0], Gen.Double[0, 1e-4]).Sample((one, two, chords, exponent, noise) =>
        {
            // Two curves end to end with a corner between, their points moved a little as if written with few decimals.
            Point2 shift = one.End - two.Start;
            var random = new Random(chords);
            IEnumerable<Point2> second = Along(two, chords).Select(p => p + shift);
            Contour exact = Chords(false, Along(one, chords), second);
            Point2[] moved = [.. exact.Vertices.ToArray().Select(v => v.Point + (Point2.Direction(random.NextDouble() * 7) * noise))];
            Contour contour = Contour.Polyline(moved);
            double tolerance = Math.Pow(10, exponent);
            ArcsOfPolyline fit = PolylineFit.Fit(contour, tolerance);
            Holds(contour, fit, tolerance);
            Point2[] kept = [.. Corners.Of(fit.Contour).Select(c => c.At)];
            Assert.All(Corners.Of(contour, PolylineFit.CornerTurn), c => Assert.Contains(c.At, kept));
        }, iter: 60);

    [Fact]
    public void A_closed_smooth_curve_has_no_corner_where_it_begins()
    {
        var ellipse = new EllipseCurve(default, new Point2(70, 0), new Point2(0, 30), 0.7, 2 * Math.PI);
        Contour chords = Chords(true, Along(ellipse, 700));
        ArcsOfPolyline fit = PolylineFit.Fit(chords, 0.02);
        Assert.True(fit.Contour.IsClosed);
        Assert.Empty(Corners.Of(fit.Contour));
        Assert.InRange(fit.Contour.SegmentCount, 16, 60);
        Holds(chords, fit, 0.02);
    }

    private static void Holds(Contour chords, ArcsOfPolyline fit, double tolerance)
    {
        Assert.InRange(fit.Bound, 0, tolerance + Accuracy.StraightSagitta);
        Assert.Equal(chords.Start, fit.Contour.Start);
        Assert.Equal(chords.End, fit.Contour.End);
        for (int i = 0; i < chords.SegmentCount; i += 3)
        {
            Assert.InRange(fit.Contour.Distance(chords[i].PointAt(0.5)), 0, fit.Bound + 1e-10);
            Assert.InRange(fit.Contour.Distance(chords[i].Start), 0, fit.Bound + 1e-10);
        }

        for (int i = 0; i < fit.Contour.SegmentCount; i++)
        {
            for (double share = 0; share <= 1; share += 0.2)
            {
                Assert.InRange(chords.Distance(fit.Contour[i].PointAt(share)), 0, fit.Bound + 1e-10);
            }
        }
    }
}
