using CsCheck;
using ToolpathForge.DrawingHost;
using ToolpathForge.Geometry;
using ToolpathForge.Plugin;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Plugin;

/// <summary>Where previews lie in a drawing: beside what is selected, and no two on each other.</summary>
public class PreviewLayoutTests
{
    private const double Inch = 25.4;

    private static readonly Gen<double> s_coordinate = Gen.Double[-500, 500];

    [Fact]
    public void The_box_of_a_polyline_holds_its_arcs() =>
        Gen.Select(s_coordinate, s_coordinate, Gen.Double[-6, 6]).Array[2, 9].Select(Gen.Bool).Sample((corners, closed) =>
        {
            var entity = new WireEntity { Kind = "polyline", Points = [.. corners.Select(c => new[] { c.Item1, c.Item2 })], Bulges = [.. corners.Select(c => c.Item3)], Closed = closed };
            double[] box = EntityBox.Of([entity])!;
            for (int i = 0; i < (closed ? corners.Length : corners.Length - 1); i++)
            {
                (double x, double y, double bulge) = corners[i];
                (Point2 from, Point2 to) = (new Point2(x, y), new Point2(corners[(i + 1) % corners.Length].Item1, corners[(i + 1) % corners.Length].Item2));

                // A point of the arc at each share of its angle, 4 atan(bulge): the chord is turned by half of what is swept so far, less half of the whole.
                for (int k = 0; k <= 32; k++)
                {
                    double whole = 4 * Math.Atan(bulge), part = whole * k / 32;
                    double share = Math.Abs(whole) < 1e-9 ? k / 32.0 : Math.Sin(part / 2) / Math.Sin(whole / 2);
                    Point2 chord = to - from;
                    double turn = (part - whole) / 2;
                    Holds(box, Box2.Empty.Including(from + (new Point2((chord.X * Math.Cos(turn)) - (chord.Y * Math.Sin(turn)), (chord.X * Math.Sin(turn)) + (chord.Y * Math.Cos(turn))) * share)));
                }
            }
        });

    [Fact]
    public void The_box_of_an_ellipse_holds_it() =>
        Gen.Select(s_coordinate, s_coordinate, Gen.Double[1, 300], Gen.Double[0.05, 3]).Sample((x, y, major, ratio) =>
        {
            var entity = new WireEntity { Kind = "ellipse", Centre = [x, y], Major = [0.6 * major, 0.8 * major], Ratio = ratio };
            var curve = new EllipseCurve(new Point2(x, y), new Point2(0.6 * major, 0.8 * major), new Point2(-0.8 * major, 0.6 * major) * ratio, 0, 2 * Math.PI);
            double[] box = EntityBox.Of([entity])!;
            foreach (int i in Enumerable.Range(0, 64))
            {
                Point2 p = curve.PointAt(i / 64.0);
                Holds(box, Box2.Empty.Including(p));
            }
        });

    [Fact]
    public void What_is_malformed_has_no_box()
    {
        WireEntity[] malformed = [new() { Kind = "line" }, new() { Kind = "polyline", Points = [[1]], Bulges = [1] }, new() { Kind = "arc", Radius = 3 }, new() { Kind = "no-such" }];
        Assert.Null(EntityBox.Of(malformed));
        Assert.Null(EntityBox.Of([]));
    }

    [Fact]
    public void A_wish_for_a_place_is_followed_and_programs_follow_on_to_the_right()
    {
        WireBed[] beds = [new() { Program = 0, Box = [-10, -5, 300, 200] }, new() { Program = 1, Box = [-4, 0, 100, 100] }];
        var layout = new PreviewLayout(new SessionWish { X = 7, Y = 3 }, beds, [], 1);
        Assert.Equal((7, 3), layout.Zero(0));
        Assert.Equal((7 + 300 + 20 + 4, 3), layout.Zero(1));
        Assert.Equal((7, 3), new PreviewLayout(new SessionWish { X = 7, Y = 3 }, null, [], 1).Zero(1));
    }

    // Two plates that only fit the bed one at a time: stock, pieces and ways of each lie clear of the drawing and of each other.
    [Fact]
    public async Task Two_programs_lie_beside_the_drawing_and_each_other()
    {
        WireEntity[] plates = [Plate(0, 250, 180), Plate(400, 260, 190)];
        using var host = new DrawingFileHost(new DrawingDocument(), null, TextWriter.Null);
        host.Document.Selected.AddRange(plates.Select(p => HostUnit.Scaled(p, 1)));
        using var session = new PluginSession(host, null, Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll"));
        SessionResult result = await session.FulfilAsync(new SessionWish { Job = new SelectionJob().Text() }, TestContext.Current.CancellationToken);
        Assert.Equal(SessionEnd.Done, result.End);
        Assert.Equal(2, result.Programs.Count);

        Box2 drawing = Of(plates), first = Of(Drawn("p1-")), second = Of(Drawn("p2-"));
        Assert.True(drawing.MaxX < first.MinX && first.MaxX < second.MinX);
        Assert.InRange(first.MinX - drawing.MaxX, 20 - 1e-6, 20 + 1e-6);
        Assert.Equal(drawing.MinY, first.MinY, 6);

        // Pieces are shown as large as they are, inside of what they are cut from, which lies inside of nothing else.
        foreach ((string program, double width, double height) in new[] { ("p1-", 260.0, 190.0), ("p2-", 250.0, 180.0) })
        {
            Box2 piece = Of(Drawn(program + "piece")), stock = Of(Drawn(program + "stock"));
            Assert.Equal((width, height), (Math.Round(Math.Max(piece.Width, piece.Height), 6), Math.Round(Math.Min(piece.Width, piece.Height), 6)));
            Assert.True(stock.MinX <= piece.MinX && stock.MaxX >= piece.MaxX && stock.MinY <= piece.MinY && stock.MaxY >= piece.MaxY);
            Box2 finish = Of([.. Drawn(program).Where(e => e.Layer!.EndsWith("-finish", StringComparison.Ordinal))]);
            Assert.Equal(piece.MinX, finish.MinX + (Inch / 8), 1);
            Assert.Equal(piece.MaxY, finish.MaxY - (Inch / 8), 1);
        }

        IReadOnlyList<WireEntity> Drawn(string prefix) => [.. host.Document.Preview.Where(e => e.Layer!.StartsWith("toolpath-" + prefix, StringComparison.Ordinal))];
    }

    private static WireEntity Plate(double x, double width, double height) =>
        new() { Kind = "polyline", Points = [[x, 0], [x + width, 0], [x + width, height], [x, height]], Closed = true };

    private static Box2 Of(IReadOnlyList<WireEntity> entities)
    {
        Assert.NotEmpty(entities);
        Box2 box = Box2.Empty;
        foreach (WireEntity e in entities)
        {
            double[][] ends = e.Kind switch
            {
                "line" => [e.From!, e.To!],
                "polyline" => e.Points!,
                _ => [.. Enumerable.Range(0, 33).Select(i => (e.Start!.Value + (e.Sweep!.Value * i / 32)) * Math.PI / 180).Select(a => new[] { e.Centre![0] + (e.Radius!.Value * Math.Cos(a)), e.Centre[1] + (e.Radius.Value * Math.Sin(a)) })],
            };
            box = ends.Aggregate(box, (all, p) => all.Including(new Point2(p[0], p[1])));
        }

        return box;
    }

    private static void Holds(double[] box, Box2 inner)
    {
        const double Rounding = 1e-6;
        Assert.True(box[0] <= inner.MinX + Rounding && box[1] <= inner.MinY + Rounding && box[2] >= inner.MaxX - Rounding && box[3] >= inner.MaxY - Rounding, $"{string.Join(' ', box)} against {inner}");
    }
}
