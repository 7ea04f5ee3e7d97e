using System.Collections.Immutable;
using System.Text.Json;
using CsCheck;
using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Exchange.Reading;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Exchange;

/// <summary>Splines of any degree, weights and knots: computed as de Boor does, written as what they are, read back by ezdxf and by us.</summary>
public class SplineExchangeTests
{
    private const double Near = 1e-6;

    /// <summary>Clamped and floating ends, inner knots once or several times, knots shifted and stretched, weights from 1e-7 to 1e7.</summary>
    private static readonly Gen<SplineCurve> s_splines = (
        from degree in Gen.Int[1, SplineCurve.HighestDegree]
        from n in Gen.Int[degree + 1, 14]
        from poles in Gen.Select(Gen.Double[-300, 300], Gen.Double[-300, 300], (x, y) => new Point2(x, y)).Array[n]
        from steps in Gen.OneOf(Gen.Const(0.0), Gen.Const(1.0), Gen.Double[0.01, 3]).Array[n + degree]
        from clamped in Gen.Bool
        from shift in Gen.OneOf(Gen.Const(0.0), Gen.Double[-1e7, 1e7])
        from stretch in Gen.OneOf(Gen.Const(0.0), Gen.Double[-6, 6])
        from rational in Gen.Bool
        from weights in Gen.Double[0.1, 10].Array[n]
        from level in Gen.OneOf(Gen.Const(0.0), Gen.Double[-6, 6])
        select SplineCurve.BSpline(degree, poles, Knots(degree, n, steps, clamped, shift, Math.Pow(10, stretch)), rational ? [.. weights.Select(w => w * Math.Pow(10, level))] : []))
        // One without size is rightly left out.
        .Where(spline => spline.Poles.Any(p => p.DistanceTo(spline.Poles[0]) > 1e-3));

    private static double[] Knots(int degree, int poles, double[] steps, bool clamped, double shift, double stretch)
    {
        var knots = new List<double> { 0 };
        while (knots.Count < poles + degree + 1)
        {
            int at = knots.Count;
            bool held = clamped && (at <= degree || at > poles);
            bool full = knots.Count(k => k == knots[^1]) >= degree;
            double step = held ? 0 : full || at == poles ? Math.Max(0.5, steps[at - 1]) : steps[at - 1];
            knots.Add(knots[^1] + step);
        }

        // A shift may not swallow the differences: knots of no more than nine digits before their differences.
        double way = Math.Min(Math.Abs(shift), 1e4 * stretch) * Math.Sign(shift);
        return [.. knots.Select(k => (k * stretch) + way)];
    }

    [Fact]
    public void Points_are_those_of_the_recursion() => s_splines.Sample(
        spline =>
        {
            for (double share = 0; share <= 1; share += 1.0 / 64)
            {
                Point2 expected = DeBoor.PointAt(spline, share);
                Assert.True(expected.DistanceTo(spline.PointAt(share)) < Near / 10, $"{spline} at {share}: {spline.PointAt(share)} instead of {expected}");
            }
        },
        iter: LongRun.Iterations(500, 50_000));

    [Fact]
    public void The_outside_library_finds_the_same_points_and_nothing_to_mend() => s_splines.Array[30].Sample(
        splines =>
        {
            JsonElement file = JsonDocument.Parse(OutsideTool.Python("dxf_read.py", Written(splines), "ezdxf")).RootElement;
            Assert.Equal(0, file.GetProperty("errors").GetArrayLength() + file.GetProperty("fixes").GetArrayLength());
            Assert.Equal(4, file.GetProperty("units").GetInt32());
            JsonElement[] entities = [.. file.GetProperty("entities").EnumerateArray()];
            Assert.Equal(splines.Length, entities.Length);
            for (int i = 0; i < splines.Length; i++)
            {
                Assert.Equal("SPLINE", entities[i].GetProperty("kind").GetString());
                Point2[] points = Points(entities[i], "points");
                for (int j = 0; j < points.Length; j++)
                {
                    double off = points[j].DistanceTo(DeBoor.PointAt(splines[i], j / 32.0));
                    Assert.True(off < Near, $"{splines[i]}: {off:G3} off at {j}/32");
                }

                // Corners of its flattening lie on the curve.
                Point2[] flattened = Points(entities[i], "flattened");
                Assert.True(splines[i].Start.DistanceTo(flattened[0]) < Near && splines[i].End.DistanceTo(flattened[^1]) < Near, $"{splines[i]}: ends of its flattening");
                foreach (Point2 p in flattened)
                {
                    double off = Nearest.Distance(splines[i], p, 400);
                    Assert.True(off < Near, $"{splines[i]}: {p} of its flattening is {off:G3} off");
                }
            }
        },
        iter: 2,
        threads: 1);

    [Fact]
    public void Our_reader_finds_the_same_curve() => s_splines.Sample(
        spline =>
        {
            Curve read = Assert.Single(Assert.Single(Drawn.Strict(Written([spline])).Entities).Path.Curves);
            for (double share = 0; share <= 1; share += 1.0 / 32)
            {
                double off = read.PointAt(share).DistanceTo(DeBoor.PointAt(spline, share));
                Assert.True(off < Near, $"{spline}: {off:G3} off at {share}");
            }
        },
        iter: LongRun.Iterations(500, 50_000));

    [Fact]
    public void Knots_too_uneven_for_decimals_come_as_the_pieces_between_them()
    {
        // Half of the curve runs over a billionth of the knots.
        Point2[] poles = [new(0, 0), new(10, 30), new(40, 30), new(50, 0), new(80, -30)];
        var spline = SplineCurve.BSpline(3, poles, [0, 0, 0, 0, 1e-9, 1, 1, 1, 1], [1, 2, 1, 3, 1]);
        ReadDrawing read = Drawn.Strict(Written([spline]));
        Assert.Equal(2, read.Entities.Length);
        Assert.Equal(spline.Length, read.Entities.Sum(e => e.Path.Curves.Single().Length), 1e-6);
        Assert.Equal(DeBoor.PointAt(spline, 1e-9).X, read.Entities[0].Path.Curves[0].End.X, Near);
        Assert.Equal(spline.End, read.Entities[1].Path.Curves[0].End);
    }

    [Fact]
    public void A_closed_path_of_all_curves_comes_back_as_one_outline()
    {
        var ellipse = new EllipseCurve(new(0, 50), new(30, 0), new(0, 50), Math.PI / 2, -Math.PI / 2);
        var bezier = SplineCurve.Bezier(new(30, 50), new(30, 20), new(50, 20), new(60, 0));
        var path = new Outline([ellipse, bezier, new LineCurve(new(60, 0), new(0, 0)), new LineCurve(new(0, 0), new(0, 100))], true);
        ReadDrawing read = Drawn.Strict(DxfWriter.Write([new DxfLayer("edge", LineRole.FinishedEdge, [path], [])]));
        Assert.Equal("ELLIPSE SPLINE LINE LINE", string.Join(' ', read.Entities.Select(e => e.Kind)));
        TracedRegion region = Assert.Single(DrawingTrace.Of(read, "drawing.dxf").Regions);
        Assert.Single(region.Region.Loops);
    }

    private static string Written(IEnumerable<SplineCurve> splines) =>
        DxfWriter.Write([new DxfLayer("edge", LineRole.FinishedEdge, [.. splines.Select(s => new Outline([s], false))], ImmutableArray<Contour>.Empty)]);

    private static Point2[] Points(JsonElement entity, string name) =>
        [.. entity.GetProperty(name).EnumerateArray().Select(p => new Point2(p[0].GetDouble(), p[1].GetDouble()))];
}
