using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.Tests.Shapes;

public class QuarterEllipseTests
{
    private const double Inch = 25.4;

    internal static ShapeSpec Spec(string form, Measure run, Measure depth, double round = 0, double angle = 0, string longSide = "top")
    {
        Answer Size(Measure m) => new(m, default, "", Place.None);
        Answer Word(string w) => new(default, default, w, Place.None);
        return new ShapeSpec(
            ShapeList.All.Single(s => s.Id == "quarter-ellipse"),
            ImmutableDictionary<string, Answer>.Empty
                .Add("form", Word(form)).Add("run", Size(run)).Add("depth", Size(depth)).Add("round", Size(Measure.Fixed(round)))
                .Add("keep-ratio", Size(Measure.Fixed(3)))
                .Add("end-cut", new Answer(default, new Angle(angle), "", Place.None)).Add("long-side", Word(longSide)),
            Place.None);
    }

    private static Profile Scaled(ShapeSpec spec, double width)
    {
        var findings = new List<Finding>();
        Profile? profile = spec.Shape.Scale(spec, width, findings);
        Assert.Empty(findings);
        return profile!;
    }

    // 0.58 w by 0.40 w rounded to 1/8 in, worked by hand on the dressed widths 3 1/2, 5 1/2, 9 1/4 in (American Softwood Lumber Standard PS 20).
    [Theory]
    [InlineData(3.5, 2, 1.375)]
    [InlineData(5.5, 3.25, 2.25)]
    [InlineData(9.25, 5.375, 3.75)]
    public void Shares_of_the_width_are_rounded_to_sizes_that_a_rule_shows(double width, double run, double depth)
    {
        Profile p = Scaled(Spec("scoop", Measure.Share(0.58), Measure.Share(0.40), Inch / 8), width * Inch);
        Assert.Equal(run * Inch, p.Run, 9);
        Assert.Equal(depth * Inch, p.Depth, 9);
    }

    [Theory]
    [InlineData("scoop", "top", 10)]
    [InlineData("scoop", "bottom", 15)]
    [InlineData("belly", "top", 8)]
    [InlineData("belly", "bottom", 0)]
    public void The_tip_is_at_zero_and_the_board_on_the_left(string form, string longSide, double angle)
    {
        const double Width = 184.15;
        Profile p = Scaled(Spec(form, Measure.Fixed(190.5), Measure.Fixed(107.95), 0, angle, longSide), Width);
        Assert.Equal(Width, p.Start.Y, 9);
        Assert.Equal(0, p.End.Y, 9);
        Assert.Equal(0, Math.Min(p.Nose.X, p.End.X), 9);
        Assert.Equal(190.5, p.Start.X - p.Nose.X, 9);
        Assert.Equal(107.95, p.Start.Y - p.Nose.Y, 9);
        Assert.Equal((Width - 107.95) * Math.Tan(angle * Math.PI / 180), Math.Abs(p.Nose.X - p.End.X), 9);
        Assert.Equal(longSide == "top" ? angle : -angle, p.EndAngle);
        Assert.Equal(angle > 0, longSide == "top" ? p.Nose.X > p.End.X : p.Nose.X < p.End.X);

        // The middle of the curve lies on the tip's side of its chord for a belly, on the board's for a scoop.
        Point2 middle = p.Exact.Curves[0].PointAt(0.5);
        Point2 chord = p.Nose - p.Start;
        Assert.Equal(form == "scoop", chord.Cross(middle - p.Start) > 0);
        Assert.Equal(0, p.Exact.Curves[0].End.DistanceTo(p.Nose), 9);
    }

    // A belly leaves the lower edge along the board; a scoop meets it square: slopes of an ellipse at its vertices.
    [Fact]
    public void Slopes_at_the_lower_edge()
    {
        Point2 belly = Scaled(Spec("belly", Measure.Fixed(80), Measure.Fixed(60)), 140).Exact.Curves[0].DirectionAt(0);
        Point2 scoop = Scaled(Spec("scoop", Measure.Fixed(80), Measure.Fixed(60)), 140).Exact.Curves[0].DirectionAt(0);
        Assert.Equal(-1, belly.X, 9);
        Assert.Equal(-1, scoop.Y, 9);
    }

    [Fact]
    public void A_curve_that_leaves_no_end_is_refused()
    {
        ShapeSpec spec = Spec("scoop", Measure.Fixed(100), Measure.Share(0.95));
        var findings = new List<Finding>();
        Assert.Null(spec.Shape.Scale(spec, 100, findings));
        Assert.Equal("shape-too-deep", Assert.Single(findings).Kind.Code);
    }
}
