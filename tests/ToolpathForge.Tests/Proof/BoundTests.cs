using System.Globalization;
using System.Text;
using CsCheck;
using ToolpathForge.Geometry;
using ToolpathForge.Proof;

namespace ToolpathForge.Tests.Proof;

/// <summary>The proof's figures are bounds: never below what dense sampling finds, and no looser than they need to be.</summary>
public class BoundTests
{
    private const double Radius = 3.175;
    private const double Tolerance = 0.1;

    // A whole ellipse, cut along a polygon whose corners lie up to 0.3 mm off their place.
    [Fact]
    public void Gouge_and_left_over_are_bounds_and_tight() =>
        Gen.Select(Gen.Double[20, 150], Gen.Double[0.3, 1], Gen.Double[-0.3, 0.3].Array[60, 90], Gen.Double[-3, 3]).Sample((a, ratio, noise, turn) =>
        {
            double b = a * ratio;
            var curve = new EllipseCurve(new Point2(200, 200), Point2.Direction(turn) * a, Point2.Direction(turn).Left * b, 0, 2 * Math.PI);
            Point2[] path = [.. noise.Select((off, i) =>
            {
                double t = (double)i / noise.Length;
                return Rounded(curve.PointAt(t) + (curve.DirectionAt(t).Right * (Radius + off)));
            })];
            ProofReport report = Prover.Prove(Program(path), Target(curve));
            Assert.True(report.IsRead);

            double gouge = 0;
            double left = 0;
            for (int i = 0; i < path.Length; i++)
            {
                var chord = new Segment(path[i], path[(i + 1) % path.Length]);
                for (int k = 0; k <= 40; k++)
                {
                    gouge = Math.Max(gouge, Radius - Distance(curve, chord.PointAt(k / 40.0)));
                }
            }

            Contour track = Contour.Polygon(path);
            for (int k = 0; k < 1500; k++)
            {
                left = Math.Max(left, track.Distance(curve.PointAt(k / 1500.0)) - Radius);
            }

            // Never below what sampling finds. Above it by what lies between samples, and, far past the tolerance, by what the search no longer narrows.
            Assert.InRange(report.WorstGouge, gouge - 1e-6, (gouge * 1.1) + 0.01);
            Assert.InRange(report.WorstLeftover, left - 1e-6, (left * 1.1) + 0.01);
        }, iter: 6);

    private static Point2 Rounded(Point2 p) => new(Math.Round(p.X, 4), Math.Round(p.Y, 4));

    private static double Distance(EllipseCurve curve, Point2 p)
    {
        int best = 0;
        for (int i = 1; i < 180; i++)
        {
            best = curve.PointAt(i / 180.0).DistanceTo(p) < curve.PointAt(best / 180.0).DistanceTo(p) ? i : best;
        }

        (double low, double high) = ((best - 1) / 180.0, (best + 1) / 180.0);
        for (int i = 0; i < 80; i++)
        {
            double third = (high - low) / 3;
            (low, high) = curve.PointAt(low + third).DistanceTo(p) < curve.PointAt(high - third).DistanceTo(p) ? (low, high - third) : (low + third, high);
        }

        return curve.PointAt((low + high) / 2).DistanceTo(p);
    }

    private static string Program(Point2[] path)
    {
        var text = new StringBuilder("G21 G90 G17 G94\nT1 M6\nM3 S16000\nG4 P3\nG0 Z20\n");
        text.Append(CultureInfo.InvariantCulture, $"G0 X{path[0].X:0.####} Y{path[0].Y:0.####}\nG1 Z-0.3 F300\n");
        foreach (Point2 p in path.Skip(1).Append(path[0]))
        {
            text.Append(CultureInfo.InvariantCulture, $"G1 X{p.X:0.####} Y{p.Y:0.####} F1500\n");
        }

        return text.Append("G0 Z20\nM5\nM30\n").ToString();
    }

    private static Target Target(EllipseCurve e) => new()
    {
        Pieces =
        [
            new TargetPiece
            {
                Name = "ellipse",
                Loops = [[new EllipseEdge(P(e.Center), P(e.Major), P(e.Minor), 0, 2 * Math.PI)]],
                Bottom = 0,
                Top = 6,
            },
        ],
        Stock = [TargetStock.Box(0, 0, 400, 400, 0, 6)],
        Floor = -0.3,
        ClearHeight = 10,
        Tools = [new TargetTool { Number = 1, Diameter = 2 * Radius, MayPlunge = true }],
        Tolerance = Tolerance,
        Increment = 0.0001,
    };

    private static PlanePoint P(Point2 p) => new(p.X, p.Y);
}
