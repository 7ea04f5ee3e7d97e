using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Shapes;

public class DrawnTests
{
    // The quarter ellipse drawn by hand in some unit of its own is the shape of that name.
    [Theory]
    [InlineData("scoop", "{ kind = 'ellipse', x = 4, y = 3, radius-x = 4, radius-y = 3, form = 'scoop' }")]
    [InlineData("belly", "{ kind = 'ellipse', x = 40, y = 30, radius-x = 30, radius-y = 40, tilt = '90 deg', form = 'belly' }")]
    public void A_drawn_quarter_is_the_quarter_ellipse(string form, string curve)
    {
        Profile drawn = ShapeJobs.Made($"kind = 'drawn', depth = '3', curve = [ {curve} ]");
        Profile known = ShapeJobs.Made($"kind = 'quarter-ellipse', form = '{form}', run = '4', depth = '3'");
        var a = (EllipseCurve)drawn.Exact.Curves[0];
        var b = (EllipseCurve)known.Exact.Curves[0];
        Assert.Equal(0, a.Center.DistanceTo(b.Center), 9);
        Assert.Equal(b.Length, a.Length, 8);
        for (double t = 0; t <= 1; t += 0.125)
        {
            Point2 p = a.PointAt(t) - b.Center;
            Assert.Equal(1, Math.Pow(p.X / (4 * 25.4), 2) + Math.Pow(p.Y / (3 * 25.4), 2), 9);
        }

        Assert.Equal(known.Run, drawn.Run, 9);
        Assert.Equal(known.Depth, drawn.Depth, 9);
    }

    // Stretched by 2 along the board only, every point of an arc, a tilted ellipse or a Bézier curve goes where the stretch takes it.
    [Theory]
    [InlineData("{ kind = 'arc', x = 3, y = 2, radius = 4, form = 'scoop' }")]
    [InlineData("{ kind = 'arc', x = 3, y = 2, radius = 4, form = 'belly', way = 'short' }")]
    [InlineData("{ kind = 'ellipse', x = 3, y = 2, radius-x = 6, radius-y = 5, tilt = '30 deg', form = 'belly' }")]
    [InlineData("{ kind = 'bezier', x1 = 0, y1 = 1, x2 = 2, y2 = 0.5, x = 3, y = 2 }")]
    public void Stretching_is_exact(string curve)
    {
        Profile plain = ShapeJobs.Made($"kind = 'drawn', depth = '2', curve = [ {curve} ]");
        Profile wide = ShapeJobs.Made($"kind = 'drawn', run = '6', depth = '2', curve = [ {curve} ]");
        Assert.Equal(2 * plain.Run, wide.Run, 9);
        Curve a = plain.Exact.Curves[0];
        Curve b = wide.Exact.Curves[0];
        for (double t = 0; t <= 1; t += 0.0625)
        {
            Point2 p = a.PointAt(t);
            Point2 q = b.PointAt(t);
            Assert.Equal(plain.Start.X - p.X, (wide.Start.X - q.X) / 2, 1e-9);
            Assert.Equal(p.Y, q.Y, 1e-9);
        }
    }

    // A line from elsewhere, of several splines with weights, is placed by the same door; the closed form is the point of a rational quadratic that is a quarter circle.
    [Fact]
    public void Any_open_chain_of_curves_can_be_placed()
    {
        double w = Math.Sqrt(0.5);
        var quarter = SplineCurve.RationalBezier([new Point2(10, 5), new Point2(10, 9), new Point2(14, 9)], [1, w, 1]);
        var line = new Outline([new LineCurve(new Point2(10, 2), new Point2(10, 5)), quarter], false);
        ShapeSpec spec = ShapeJobs.Read("kind = 'drawn', depth = '7 in', curve = [ { kind = 'line', x = 1, y = 1 } ]", "2x10").Makes[0].Shape;
        var findings = new List<Finding>();
        Profile p = Drawn.Place(line, spec, 9.25 * 25.4, findings)!;
        Assert.Empty(findings);
        Assert.Equal(4 * 25.4, p.Run, 9);
        Assert.Equal(7 * 25.4, p.Depth, 9);
        Point2 center = p.Nose + new Point2(0, 4 * 25.4);
        Curve curve = p.Exact.Curves[1];
        Assert.All(Enumerable.Range(0, 9), i => Assert.Equal(4 * 25.4, curve.PointAt(i / 8.0).DistanceTo(center), 1e-9));
    }

    [Theory]
    [InlineData("curve = [ { kind = 'line', x = 4, y = 3 } ]", "drawn-no-size")]
    [InlineData("run = '3', curve = [ { kind = 'line', x = -4, y = 3 } ]", "drawn-not-forwards")]
    [InlineData("depth = '3', curve = [ { kind = 'line', x = 4, y = 0 } ]", "drawn-not-forwards")]
    [InlineData("depth = '3', curve = [ { kind = 'arc', x = 4, y = 3, radius = 2, form = 'scoop' } ]", "drawn-radius-short")]
    [InlineData("depth = '3', curve = [ { kind = 'line', x = 0, y = 0 } ]", "part-unsettled")]
    [InlineData("depth = '3', curve = [ { kind = 'bezier', x1 = 1, y1 = 2, x2 = 3, y2 = 2, x = 4, y = 0.0001 } ]", "drawn-too-large")]
    [InlineData("depth = '3', curve = [ { kind = 'bezier', x1 = 12, y1 = 5, x2 = -6, y2 = 5, x = 4, y = 3 } ]", "shape-crosses-itself")]
    [InlineData("depth = '3', curve = [ { kind = 'bezier', x1 = 1, y1 = -1, x2 = 3, y2 = 3, x = 4, y = 3 } ]", "shape-leaves-board")]
    public void What_cannot_be_is_refused(string answers, string code)
    {
        (Profile? profile, IReadOnlyList<Finding> findings) = ShapeJobs.Scale($"kind = 'drawn', {answers}");
        Assert.Null(profile);
        Finding finding = Assert.Single(findings);
        Assert.Equal(code, finding.Kind.Code);
        Assert.DoesNotContain("{", FindingText.Word(finding, LengthUnit.Inch).ToString(), StringComparison.Ordinal);
    }
}
