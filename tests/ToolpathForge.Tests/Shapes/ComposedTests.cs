using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Shapes;

public class ComposedTests
{
    private const double Width = 139.7;

    /// <summary>Direction of travel by differences, not by the curve's own derivative.</summary>
    private static Point2 Direction(Curve curve, double t, double step) => ((curve.PointAt(t + step) - curve.PointAt(t)) / step).Unit();

    // Two arcs, or two ellipses, touch where they meet: the slopes from both sides, taken by differences of the second order, agree.
    [Theory]
    [InlineData("kind = 'ogee', form = 'scoop', run = '4', depth = '2 1/2'")]
    [InlineData("kind = 'ogee', form = 'belly', run = '4', depth = '2 1/2', first-share = 0.35")]
    [InlineData("kind = 'ogee', form = 'scoop', run = '3', depth = '3', turn = '70 deg', first-share = 0.7")]
    [InlineData("kind = 'ellipse-ogee', form = 'scoop', run = '4', depth = '2 1/2', first-share = 0.3")]
    [InlineData("kind = 'ellipse-ogee', form = 'belly', run = '4', depth = '2 1/2'")]
    [InlineData("kind = 'eased-bevel', form = 'belly', run = '4', depth = '2 1/2', radius = '1'")]
    [InlineData("kind = 'eased-bevel', form = 'scoop', run = '4', depth = '2 1/2', radius = '1'")]
    public void What_flows_into_each_other_does_so_to_the_last_digit(string shape)
    {
        ImmutableArray<Curve> curves = ShapeJobs.Made(shape).Exact.Curves;
        for (int i = 0; i + 2 < curves.Length; i++)
        {
            Assert.Equal(0, curves[i].End.DistanceTo(curves[i + 1].Start), 10);
            Assert.Equal(0, curves[i].DirectionAt(1).Cross(curves[i + 1].DirectionAt(0)), 12);

            // One-sided differences of the second order: (-3 f(0) + 4 f(h) - f(2h)) / 2h, off by h² f'''/3.
            const double H = 1e-4;
            Point2 arriving = (3 * curves[i].PointAt(1)) - (4 * curves[i].PointAt(1 - H)) + curves[i].PointAt(1 - (2 * H));
            Point2 leaving = (4 * curves[i + 1].PointAt(H)) - (3 * curves[i + 1].PointAt(0)) - curves[i + 1].PointAt(2 * H);
            Assert.InRange(Math.Abs(Corners.TurnBetween(arriving, leaving)), 0, 1e-6);
        }
    }

    // The ogee by hand: run 4, depth 3, in two equal halves that begin along the edge. Half a chord is 2.5 long and slopes by atan(3/4), so the radius is
    // 2.5/(2 sin) = 2.5/1.2.
    [Fact]
    public void The_ogees_radius_is_that_worked_by_hand()
    {
        Profile p = ShapeJobs.Made("kind = 'ogee', form = 'belly', run = '4', depth = '3'");
        Assert.All(p.Exact.Curves.OfType<ArcCurve>(), a => Assert.Equal(2.5 / 1.2 * 25.4, a.Radius, 9));
        Assert.Equal(2, p.Exact.Curves.OfType<ArcCurve>().Count());
        Assert.Equal(4 * 25.4, p.Start.X - p.Nose.X, 9);
        Assert.Equal(3 * 25.4, p.Start.Y - p.Nose.Y, 9);
    }

    // A smooth arc follows from the heading before it and its end: after a line at 30° to a point at 45°, it turns by twice the 15° between.
    [Fact]
    public void A_smooth_arc_is_settled_by_the_part_before_it()
    {
        Profile p = ShapeJobs.Made("""
            kind = 'composed', part = [
                { kind = 'straight', length = '1', angle = '30 deg' }, { kind = 'arc', form = 'belly', run = '2', depth = '2', join = 'smooth' } ]
            """);
        ArcCurve arc = Assert.Single(p.Exact.Curves.OfType<ArcCurve>());
        Assert.Equal(Math.PI / 6, arc.Sweep, 9);
        Assert.Equal(Math.Sqrt(8) * 25.4 / (2 * Math.Sin(Math.PI / 12)), arc.Radius, 7);
    }

    // With a radius as well the arc is settled without the join, and misses it: 15.0° less what the inscribed angle asin(√8/2/6) leaves.
    [Fact]
    public void A_join_that_is_not_smooth_is_refused_with_the_mismatch()
    {
        (Profile? profile, IReadOnlyList<Finding> findings) = ShapeJobs.Scale("""
            kind = 'composed', part = [
                { kind = 'straight', length = '1', angle = '30 deg' },
                { kind = 'arc', form = 'belly', run = '2', depth = '2', radius = '6', join = 'smooth' } ]
            """);
        Assert.Null(profile);
        Finding finding = Assert.Single(findings);
        Assert.Equal("join-not-smooth", finding.Kind.Code);
        Assert.Equal(15 - (Math.Asin(Math.Sqrt(2) / 6) * 180 / Math.PI), finding.Found!.Value.Value, 9);
        Assert.Contains("Part 2", FindingText.Word(finding, LengthUnit.Inch).Message, StringComparison.Ordinal);
        Assert.Contains("0.866", FindingText.Word(finding, LengthUnit.Inch).Message, StringComparison.Ordinal);
    }

    // The same arc with the radius that the join asks for passes.
    [Fact]
    public void A_join_that_fits_is_taken()
    {
        double radius = Math.Sqrt(8) * 25.4 / (2 * Math.Sin(Math.PI / 12));
        string written = radius.ToString("F6", System.Globalization.CultureInfo.InvariantCulture);
        Assert.NotNull(ShapeJobs.Made($$"""
            kind = 'composed', part = [
                { kind = 'straight', length = '1', angle = '30 deg' },
                { kind = 'arc', form = 'belly', run = '2', depth = '2', radius = '{{written}} mm', join = 'smooth' } ]
            """));
    }

    // Between two straight edges the fillet begins r·tan(turn/2) from the corner; everywhere it touches both sides and is as far from the corner as it must.
    [Fact]
    public void A_fillet_between_lines_has_its_tangent_length()
    {
        Profile p = ShapeJobs.Made("kind = 'step', run = '3', depth = '2', fillet = '1/2'");
        ArcCurve fillet = Assert.Single(p.Exact.Curves.OfType<ArcCurve>());
        Assert.Equal(12.7, fillet.Radius, 12);
        Assert.Equal(-Math.PI / 2, fillet.Sweep, 12);
        Assert.Equal((2 * 25.4) - 12.7, p.Exact.Curves[0].Length, 9);
        Assert.Equal((3 * 25.4) - 12.7, p.Exact.Curves[2].Length, 9);
    }

    [Theory]
    [InlineData("{ kind = 'straight', depth = '1/2' }, { kind = 'fillet', radius = '3/8' }, { kind = 'ellipse', form = 'belly', run = '3', depth = '1 1/2' }", 9.524999999999999)]
    [InlineData("{ kind = 'ellipse', form = 'belly', run = '2', depth = '1' }, { kind = 'fillet', radius = '1/4' }, { kind = 'ellipse', form = 'belly', run = '1', depth = '1 1/2' }", 6.35)]
    [InlineData("{ kind = 'cove', radius = '1' }, { kind = 'fillet', radius = '1/4' }, { kind = 'cove', radius = '3/4' }", 6.35)]
    [InlineData("{ kind = 'arc', form = 'scoop', radius = '2', turn = '40 deg' }, { kind = 'fillet', radius = '1/2' }, { kind = 'straight', run = '2', depth = '1/8' }", 12.7)]
    [InlineData("{ kind = 'ellipse', form = 'scoop', run = '3', depth = '2' }, { kind = 'fillet', radius = '3/4' }", 19.049999999999997)]
    public void A_fillet_touches_both_sides(string parts, double radius)
    {
        ImmutableArray<Curve> curves = ShapeJobs.Made($"kind = 'composed', part = [ {parts} ]").Exact.Curves;
        int fillet = Enumerable.Range(1, curves.Length - 2).Single(i => curves[i] is ArcCurve arc && Math.Abs(arc.Radius - radius) < 1e-9);
        foreach (int i in (int[])[fillet - 1, fillet])
        {
            Assert.Equal(0, curves[i].End.DistanceTo(curves[i + 1].Start), 9);
            Assert.Equal(0, curves[i].DirectionAt(1).Cross(curves[i + 1].DirectionAt(0)), 9);
            Assert.True(curves[i].DirectionAt(1).Dot(curves[i + 1].DirectionAt(0)) > 0);
        }
    }

    [Theory]
    [InlineData("{ kind = 'straight', depth = '1/4' }, { kind = 'fillet', radius = '1/2' }, { kind = 'straight', run = '3' }", "fillet-too-large", 6.35)]
    [InlineData("{ kind = 'cove', radius = '1' }, { kind = 'fillet', radius = '1/4' }, { kind = 'straight', run = '2' }", "fillet-no-corner", null)]
    [InlineData("{ kind = 'fillet', radius = '1/4' }, { kind = 'cove', radius = '1' }", "fillet-no-corner", null)]
    [InlineData("{ kind = 'arc', form = 'belly', run = '2', depth = '1', radius = '1' }", "arc-radius-short", 28.3981)]
    [InlineData("{ kind = 'straight', run = '1', depth = '2' }, { kind = 'arc', form = 'belly', run = '2', depth = '1' }", "arc-wrong-way", null)]
    [InlineData("{ kind = 'straight', length = '2' }", "part-unsettled", null)]
    [InlineData("{ kind = 'straight', length = '2', run = '1' }", "part-unsettled", null)]
    [InlineData("{ kind = 'arc', form = 'belly', radius = '2' }", "part-unsettled", null)]
    [InlineData("{ kind = 'straight', run = '2' }, { kind = 'straight', depth = '2' }", "shape-leaves-board", null)]
    [InlineData("{ kind = 'straight', length = '2', angle = '120 deg' }", "shape-leaves-board", null)]
    [InlineData("{ kind = 'straight', length = '4', angle = '10 deg' }, { kind = 'straight', length = '2', angle = '175 deg' }", "shape-too-sharp", 15.0)]
    [InlineData(
        "{ kind = 'straight', depth = '2' }, { kind = 'straight', run = '3' }, { kind = 'arc', form = 'belly', radius = '1/2', turn = '180 deg' }, { kind = 'straight', length = '2' }, { kind = 'straight', length = '2', angle = '-90 deg' }, { kind = 'straight', run = '1' }",
        "shape-crosses-itself",
        null)]
    [InlineData("{ kind = 'straight', depth = '5' }", "shape-too-deep", Width * 7 / 8)]
    [InlineData("{ kind = 'arc', form = 'belly', run = '4', depth = '1', radius = '2 1/8' }, { kind = 'straight', depth = '1' }", "shape-leaves-board", null)]
    public void What_cannot_be_is_refused(string parts, string code, double? allowed)
    {
        (Profile? profile, IReadOnlyList<Finding> findings) = ShapeJobs.Scale($"kind = 'composed', part = [ {parts} ]");
        Assert.Null(profile);
        Finding finding = Assert.Single(findings);
        Assert.Equal(code, finding.Kind.Code);
        Assert.DoesNotContain("{", FindingText.Word(finding, LengthUnit.Inch).ToString(), StringComparison.Ordinal);
        if (allowed is { } value)
        {
            Quantity told = code == "shape-too-sharp" ? finding.Found!.Value : finding.Allowed!.Value;
            Assert.Equal(value, told.Value, 3);
        }
    }

    // A line shorter than the last digit of where it begins has no direction, and the arc after it would begin elsewhere.
    [Theory]
    [InlineData("0.000000001 mm")]
    [InlineData("0.005 mm")]
    public void A_part_of_next_to_nothing_is_refused(string depth)
    {
        (Profile? profile, IReadOnlyList<Finding> findings) = ShapeJobs.Scale(
            $"kind = 'composed', part = [{{ kind = 'straight', depth = '1/2' }}, {{ kind = 'straight', depth = '{depth}' }}, {{ kind = 'ellipse', run = '2', depth = '2', form = 'scoop' }}]");
        Assert.Null(profile);
        Assert.Equal("shape-size-next-to-nothing", Assert.Single(findings).Kind.Code);
    }
}
