using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Fitting;

/// <summary>
/// A fitted chain keeps its bound when it is moved aside: each arc's radius grows or shrinks by the distance. Against the exact parallel curve of the ellipse,
/// x = cos t (a + d b/g), y = sin t (b + d a/g), g² = a² sin² t + b² cos² t (texts on differential geometry).
/// </summary>
public class ParallelCurveTests
{
    private const double A = 200;
    private const double B = 120;

    [Theory]
    [InlineData(3.175, 0.01)]
    [InlineData(6.35, 0.001)]
    [InlineData(-3.175, 0.01)]
    [InlineData(-60, 0.01)]
    [InlineData(-70, 0.01)]
    [InlineData(-71.9, 0.1)]
    public void The_parallel_departs_no_farther_than_the_fit(double distance, double tolerance)
    {
        FittedContour fit = ArcFit.Fit(new Outline([EllipseFitTests.Quarter(A, B)], false), tolerance);
        Contour moved = Moved(fit.Contour, distance);
        for (int i = 0; i <= 4000; i++)
        {
            Assert.InRange(moved.Distance(Parallel(i / 4000.0 * Math.PI / 2, distance)), 0, fit.Bound + 1e-9);
        }

        // And back: every point of the moved chain is as far from the ellipse as it should be, up to the bound.
        for (int s = 0; s < moved.SegmentCount; s++)
        {
            for (double share = 0; share <= 1; share += 0.05)
            {
                double off = Departure.ToCurve(EllipseFitTests.Quarter(A, B), moved[s].PointAt(share));
                Assert.InRange(off, Math.Abs(distance) - fit.Bound - 1e-9, Math.Abs(distance) + fit.Bound + 1e-9);
            }
        }
    }

    [Theory]
    [InlineData(3.175)]
    [InlineData(-3.175)]
    public void The_offset_engine_keeps_the_bound_as_well(double distance)
    {
        // The plate of the sample: a quarter ellipse and straight edges; the part of the offset that stands for the ellipse.
        var outline = new Outline(
            [
                EllipseFitTests.Quarter(A, B),
                new LineCurve(new Point2(0, B), new Point2(-80, B)),
                new LineCurve(new Point2(-80, B), new Point2(-80, -40)),
                new LineCurve(new Point2(-80, -40), new Point2(A, -40)),
                new LineCurve(new Point2(A, -40), new Point2(A, 0)),
            ],
            true);
        FittedContour fit = ArcFit.Fit(outline, 0.01);
        Contour offset = Assert.Single(Offsetter.Closed(fit.Contour, distance).Loops).Contour;
        for (int i = 1; i < 2000; i++)
        {
            Assert.InRange(offset.Distance(Parallel(i / 2000.0 * Math.PI / 2, distance)), 0, fit.Bound + 1e-9);
        }
    }

    private static Point2 Parallel(double t, double d)
    {
        (double sin, double cos) = Math.SinCos(t);
        double g = Math.Sqrt((A * A * sin * sin) + (B * B * cos * cos));
        return new Point2(cos * (A + (d * B / g)), sin * (B + (d * A / g)));
    }

    private static Contour Moved(Contour contour, double distance)
    {
        var vertices = new List<Vertex>();
        for (int i = 0; i < contour.SegmentCount; i++)
        {
            vertices.Add(new Vertex(contour[i].Start + (contour[i].StartDirection.Right * distance), contour[i].Bulge));
        }

        vertices.Add(new Vertex(contour.End + (contour[contour.SegmentCount - 1].EndDirection.Right * distance)));
        return new Contour([.. vertices], false);
    }
}
