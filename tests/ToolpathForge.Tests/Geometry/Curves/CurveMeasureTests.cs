using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Curves;

public class CurveMeasureTests
{
    // Abramowitz & Stegun, Handbook of Mathematical Functions, Table 17.1: the complete elliptic integral of the second kind.
    [Theory]
    [InlineData(0.5, 1.350643881)]
    [InlineData(0.75, 1.211056028)]
    [InlineData(0.9, 1.104774733)]
    [InlineData(0.99, 1.015993545)]
    public void A_quadrant_is_as_long_as_the_published_table_says(double m, double integral)
    {
        double b = Math.Sqrt(1 - m);
        Assert.Equal(integral, new EllipseCurve(default, new Point2(1, 0), new Point2(0, b), 0, Math.PI / 2).Length, 1e-9);
        Assert.Equal(800 * integral, new EllipseCurve(new Point2(5, 5), new Point2(0, 200), new Point2(200 * b, 0), 0.3, 2 * Math.PI).Length, 1e-6);
    }

    [Fact]
    public void A_circle_and_an_all_but_flat_ellipse()
    {
        Assert.Equal(Math.PI * 2 * 37, new EllipseCurve(default, new Point2(37, 0), new Point2(0, -37), 1, -2 * Math.PI).Length, 1e-10);
        Assert.Equal(Math.PI * 37, new EllipseCurve(default, new Point2(37, 0), new Point2(0, 37), 1e20, Math.PI).Length, 1e-9);
        Assert.Equal(4 * 100, new EllipseCurve(default, new Point2(100, 0), new Point2(0, 1e-4), 0, 2 * Math.PI).Length, 1e-7);
    }

    [Fact]
    public void Length_of_many_turns_is_that_of_each_and_never_takes_forever()
    {
        var whole = new EllipseCurve(default, new Point2(200, 0), new Point2(0, 120), 0.3, 2 * Math.PI);
        double part = (whole with { Sweep = 1 }).Length;
        Assert.Equal((3 * whole.Length) + part, (whole with { Sweep = (6 * Math.PI) + 1 }).Length, 1e-6);
        Assert.Equal((3 * whole.Length) + part, (whole with { StartParameter = 1.3, Sweep = -(6 * Math.PI) - 1 }).Length, 1e-6);
        Assert.Equal(whole.Length * 1e20 / (2 * Math.PI), (whole with { Sweep = 1e20 }).Length, 1e10);
        Assert.True(double.IsNaN((whole with { Sweep = double.NaN }).Length) || (whole with { Sweep = double.NaN }).Length == 0);
    }

    [Fact]
    public void Lengths_of_parts_add_up()
    {
        var whole = new EllipseCurve(default, new Point2(80, 10), new Point2(-4, 32), -1, 5);
        double sum = Enumerable.Range(0, 10).Sum(i => (whole with { StartParameter = -1 + (i * 0.5), Sweep = 0.5 }).Length);
        Assert.Equal(whole.Length, sum, 1e-10);
        Assert.Equal(whole.Length, whole.Reversed().Length, 1e-10);
    }

    [Fact]
    public void A_spline_that_is_a_parabola_is_as_long_as_the_formula_says()
    {
        // y = x² from 0 to 1: (2√5 + asinh 2)/4.
        SplineCurve parabola = SplineCurve.Bezier(new Point2(0, 0), new Point2(0.5, 0), new Point2(1, 1));
        Assert.Equal(((2 * Math.Sqrt(5)) + Math.Asinh(2)) / 4, parabola.Length, 1e-12);
        Assert.Equal(2, parabola.CurvatureAt(0), 1e-12);
        Assert.Equal(2 / Math.Pow(1 + 4, 1.5), parabola.CurvatureAt(1), 1e-12);
    }

    // Radii of curvature at the ends of the axes b²/a and a²/b; in between κ = ab/w³: texts on differential geometry.
    [Fact]
    public void Curvature_of_an_ellipse()
    {
        var e = new EllipseCurve(default, new Point2(200, 0), new Point2(0, 120), 0, Math.PI / 2);
        Assert.Equal(72, 1 / e.CurvatureAt(0), 1e-10);
        Assert.Equal(200.0 * 200 / 120, 1 / e.CurvatureAt(1), 1e-10);
        double t = 0.6 * Math.PI / 2;
        double w = Math.Sqrt(Math.Pow(200 * Math.Sin(t), 2) + Math.Pow(120 * Math.Cos(t), 2));
        Assert.Equal(200 * 120 / (w * w * w), e.CurvatureAt(0.6), 1e-15);
        Assert.Equal(-e.CurvatureAt(0.6), e.Reversed().CurvatureAt(0.4), 1e-15);
    }

    [Fact]
    public void A_spline_passes_through_the_points_of_its_definition()
    {
        // Uniform cubic at its knots: a sixth, two thirds, a sixth of the control points there.
        Point2[] p = [new(0, 0), new(10, 30), new(40, 20), new(50, -10), new(80, 0)];
        SplineCurve spline = SplineCurve.BSpline(3, p, [0, 1, 2, 3, 4, 5, 6, 7, 8]);
        Assert.Equal(0, spline.Start.DistanceTo((p[0] / 6) + (p[1] * 2 / 3) + (p[2] / 6)), 1e-13);
        Assert.Equal(0, spline.PointAt(0.5).DistanceTo((p[1] / 6) + (p[2] * 2 / 3) + (p[3] / 6)), 1e-13);
        Assert.Equal(0, spline.End.DistanceTo((p[2] / 6) + (p[3] * 2 / 3) + (p[4] / 6)), 1e-13);
        for (double t = 0.05; t < 1; t += 0.1)
        {
            Assert.Equal(0, (spline.FirstDerivative(t) - ((spline.PointAt(t + 1e-6) - spline.PointAt(t - 1e-6)) / 2e-6)).Length, 1e-6);
            Assert.Equal(0, (spline.SecondDerivative(t) - ((spline.FirstDerivative(t + 1e-6) - spline.FirstDerivative(t - 1e-6)) / 2e-6)).Length, 1e-3);
            Assert.Equal(0, spline.Reversed().PointAt(1 - t).DistanceTo(spline.PointAt(t)), 1e-12);
        }
    }

    [Fact]
    public void A_rational_spline_is_the_circle_it_should_be()
    {
        double w = Math.Sqrt(0.5);
        SplineCurve circle = SplineCurve.BSpline(
            2,
            [new(5, 0), new(5, 5), new(0, 5), new(-5, 5), new(-5, 0), new(-5, -5), new(0, -5), new(5, -5), new(5, 0)],
            [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
            [1, w, 1, w, 1, w, 1, w, 1]);
        for (double t = 0; t <= 1; t += 0.01)
        {
            Assert.Equal(5, circle.PointAt(t).Length, 1e-13);
        }

        Assert.Equal(10 * Math.PI, circle.Length, 1e-10);
        FittedContour fit = ArcFit.Fit(new Outline([circle], true), 0.01);
        Assert.Equal(2, fit.Contour.SegmentCount);
        Assert.All([0, 1], i => Assert.Equal(5, fit.Contour[i].Radius, 1e-10));
        Assert.Equal(0, fit.Bound, 1e-9);
    }

    [Fact]
    public void Straight_parts_of_a_spline_come_out_as_lines()
    {
        // Straight, a bend, straight: knots doubled so that the pieces are these.
        SplineCurve bent = SplineCurve.BSpline(
            3,
            [new(0, 0), new(10, 0), new(20, 0), new(30, 0), new(40, 0), new(50, 10), new(50, 20), new(50, 30), new(50, 40), new(50, 50)],
            [0, 0, 0, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3, 3]);
        FittedContour fit = ArcFit.Fit(new Outline([bent], false), 0.01);
        Assert.Equal(new Segment(new Point2(0, 0), new Point2(30, 0)), fit.Contour[0]);
        Assert.Equal(new Segment(new Point2(50, 20), new Point2(50, 50)), fit.Contour[fit.Contour.SegmentCount - 1]);
        Assert.Empty(Corners.Of(fit.Contour));
    }

    [Fact]
    public void What_is_no_spline_is_refused()
    {
        Point2[] p = [new(0, 0), new(1, 0), new(2, 1), new(3, 3)];
        Assert.Throws<ArgumentException>(() => SplineCurve.BSpline(3, p, [0, 0, 0, 0, 1, 1, 1]));
        Assert.Throws<ArgumentException>(() => SplineCurve.BSpline(3, p, [0, 0, 0, 0, 1, 1, 1, 0.5]));
        Assert.Throws<ArgumentException>(() => SplineCurve.BSpline(3, p, [0, 0, 0, 0, 0, 0, 0, 0]));
        Assert.Throws<ArgumentException>(() => SplineCurve.BSpline(9, p, [0, 0, 0, 0, 1, 1, 1, 1]));
        Assert.Throws<ArgumentException>(() => SplineCurve.BSpline(1, p, [0, 0, 1, 1, 2, 2]));
        Assert.Throws<ArgumentException>(() => SplineCurve.RationalBezier(p, [1, 1, 0, 1]));
        Assert.Throws<ArgumentException>(() => SplineCurve.RationalBezier(p, [1, 1, 1]));
        Assert.Throws<ArgumentException>(() => SplineCurve.Bezier(new Point2(0, 0), new Point2(double.NaN, 1)));
        Assert.Throws<ArgumentException>(() => SplineCurve.Bezier(new Point2(0, 0), new Point2(1e25, 1)));
    }

    // A half and a whole turn have the same length wherever they begin; beyond 1e16 the next axis end used to be the same number, and the sum never ended.
    [Theory]
    [InlineData(1e3)]
    [InlineData(-1e9)]
    [InlineData(1e16)]
    [InlineData(-1e17)]
    [InlineData(1e300)]
    public void A_far_start_parameter_changes_no_length(double start)
    {
        double whole = new EllipseCurve(default, new Point2(200, 0), new Point2(0, 120), 0, 2 * Math.PI).Length;
        Assert.Equal(whole, new EllipseCurve(default, new Point2(200, 0), new Point2(0, 120), start, 2 * Math.PI).Length, 1e-6);
        Assert.Equal(whole / 2, new EllipseCurve(default, new Point2(200, 0), new Point2(0, 120), start, -Math.PI).Length, 1e-6);
    }
}
