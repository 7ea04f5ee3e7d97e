using System.Globalization;
using System.Text;
using CsCheck;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Planning;
using ToolpathForge.Service.Files;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>
/// Outlines whose ends, bulges and radii lie at the edge of what counts as straight, as the same point or as a gap: from the drawing through to the proven program. Whatever comes of
/// them is a proven program or a finding, never an exception and never a program that fails its proof.
/// </summary>
public class EdgeOfToleranceTests
{
    // Signed sizes spread evenly over the decades round every tolerance that geometry compares against.
    private static readonly Gen<double> Tiny = Gen.Select(Gen.Double[-11, -2], Gen.Bool, (exponent, negative) => (negative ? -1 : 1) * Math.Pow(10, exponent));

    private static readonly Gen<double> Bulge = Gen.Frequency((4, Gen.Const(0d)), (4, Tiny), (2, Gen.Double[-0.9, 0.9]));

    private static readonly Gen<(double Angle, double Radius, double Bulge, double Dx, double Dy)> Corner =
        Gen.Select(Gen.Double[-0.3, 0.3], Gen.Double[60, 110], Bulge, Gen.Frequency((3, Gen.Const(0d)), (2, Tiny)), Gen.Frequency((3, Gen.Const(0d)), (2, Tiny)));

    private static readonly Gen<string> Drawing = Gen.Select(
        Corner.Array[5, 12], Gen.Bool, Gen.Int[1, 40], (corners, loose, extra) => loose ? Loose(corners) : Polyline(corners, extra));

    [Fact]
    public void Every_outline_is_proven_or_answered() => Drawing.Sample(
        dxf =>
        {
            ReadDrawing drawing = DrawingReader.ReadRepairing(Encoding.UTF8.GetBytes(dxf), "part.dxf", null, null, CancellationToken.None);
            var read = JobFile.Read(
                "format = 1\nname = 'Test'\nunit = 'mm'\ntolerance = '0.1 mm'\nmachine = 'desktop-400'\ndialect = 'metric-centre'\n[[make]]\nid = 'part'\nkind = 'outline'\ndrawing = '@part'\n" + OutlineJobs.Usual,
                "part.toml",
                null,
                new Dictionary<string, ReadDrawing>(StringComparer.Ordinal) { ["part"] = drawing },
                CancellationToken.None);
            if (read.Job is null)
            {
                Assert.True(read.Findings.Any(f => f.Kind.Severity == Severity.Stop), "No job, and nothing that says why.");
                return;
            }

            Plan plan = Planner.Plan(read.Job);
            Assert.True(plan.FailedProofs.IsEmpty, string.Join("; ", plan.FailedProofs.SelectMany(p => p.Proof.Faults).Take(3)));
            Assert.True(!plan.Programs.IsEmpty || plan.IsStopped, "No program, and nothing that says why.");
        },
        iter: LongRun.Iterations(400, 100_000),
        threads: 1);

    private static Point2[] Points((double Angle, double Radius, double Bulge, double Dx, double Dy)[] corners) =>
    [
        .. corners.Select((c, i) => new Point2(150, 150) + (Point2.Direction((i + c.Angle) * 2 * Math.PI / corners.Length) * c.Radius)),
    ];

    // One closed polyline; a corner may be there twice, a hair apart.
    private static string Polyline((double Angle, double Radius, double Bulge, double Dx, double Dy)[] corners, int extra)
    {
        Point2[] points = Points(corners);
        var text = new StringBuilder("0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\nA\n70\n1\n");
        for (int i = 0; i < points.Length; i++)
        {
            Write(text, 10, points[i].X).Append(Pair(20, points[i].Y)).Append(Pair(42, SameArc(corners, points, i)));
            if (i % 3 == extra % 3 && corners[i].Dx != 0)
            {
                Write(text, 10, points[i].X + corners[i].Dx).Append(Pair(20, points[i].Y + corners[i].Dy)).Append(Pair(42, 0));
            }
        }

        return text.Append("0\nENDSEC\n0\nEOF\n").ToString();
    }

    // Lines and two-point polylines one by one, each beginning a hair from where the one before ends.
    private static string Loose((double Angle, double Radius, double Bulge, double Dx, double Dy)[] corners)
    {
        Point2[] points = Points(corners);
        var text = new StringBuilder("0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n");
        for (int i = 0; i < points.Length; i++)
        {
            Point2 to = points[(i + 1) % points.Length];
            text.Append("0\nLWPOLYLINE\n8\nA\n70\n0\n").Append(Pair(10, points[i].X + corners[i].Dx)).Append(Pair(20, points[i].Y + corners[i].Dy))
                .Append(Pair(42, SameArc(corners, points, i))).Append(Pair(10, to.X)).Append(Pair(20, to.Y));
        }

        return text.Append("0\nENDSEC\n0\nEOF\n").ToString();
    }

    // Tiny figures stand for the height of the arc above its chord, mm; others are bulges as they are.
    private static double SameArc((double Angle, double Radius, double Bulge, double Dx, double Dy)[] corners, Point2[] points, int i)
    {
        double size = corners[i].Bulge;
        return Math.Abs(size) < 0.011 ? size * 2 / points[i].DistanceTo(points[(i + 1) % points.Length]) : size * 0.3;
    }

    private static string Pair(int code, double value) => string.Create(CultureInfo.InvariantCulture, $"{code}\n{value:R}\n");

    private static StringBuilder Write(StringBuilder text, int code, double value) => text.Append(Pair(code, value));
}
