using CsCheck;
using ToolpathForge.Proof;

namespace ToolpathForge.Tests.Proof;

/// <summary>Closed-form distances against cases worked by hand and against dense samples.</summary>
public class DistanceTests
{
    private static readonly Gen<PlanePoint> Points = Gen.Select(Gen.Double[-20, 20], Gen.Double[-20, 20], (x, y) => new PlanePoint(x, y));

    private static readonly Gen<PathPart> Lines = Gen.Select(Points, Points, (a, b) => PathPart.Line(a, b, 0, 0, 0, 1));

    private static readonly Gen<PathPart> Arcs = Gen.Select(
        Points, Gen.Double[0.1, 15], Gen.Double[-4, 4], Gen.Double[0.05, Math.PI / 2], Gen.Bool,
        (c, r, a, s, left) => PathPart.Arc(c, r, a, left ? s : -s, 0, 0, 0, 1));

    internal static readonly Gen<PathPart> Parts = Gen.OneOf(Lines, Arcs);

    private static PathPart Line(double ax, double ay, double bx, double by) => PathPart.Line(new(ax, ay), new(bx, by), 0, 0, 0, 1);

    /// <summary>From the start angle through the sweep, degrees.</summary>
    private static PathPart Arc(double cx, double cy, double r, double from, double sweep) =>
        PathPart.Arc(new(cx, cy), r, from * Math.PI / 180, sweep * Math.PI / 180, 0, 0, 0, 1);

    private static void Same(double expected, PathPart a, PathPart b)
    {
        Nearest there = Distances.Between(a, b);
        Assert.Equal(expected, there.Value, 12);
        Assert.Equal(expected, Distances.Between(b, a).Value, 12);
        Assert.Equal(expected, there.OnFirst.DistanceTo(there.OnSecond), 12);
    }

    [Fact]
    public void Between_lines()
    {
        Same(0, Line(0, 0, 2, 2), Line(0, 2, 2, 0));
        Same(1, Line(0, 0, 5, 0), Line(2, 1, 9, 1));
        Same(5, Line(0, 0, 1, 0), Line(4, 4, 4, 9));
        Same(2, Line(0, 0, 0, 0), Line(2, -1, 2, 1));
        Same(Math.Sqrt(2), Line(0, 0, 0, 0), Line(1, 1, 1, 1));
    }

    [Fact]
    public void Between_a_line_and_an_arc()
    {
        PathPart quarter = Arc(0, 0, 5, 0, 90);
        Same((10 / Math.Sqrt(2)) - 5, Line(0, 10, 10, 0), quarter);
        Same(0, Line(0, 0, 4, 4), quarter);
        Same(0, Line(1, 6, 6, 1), quarter);
        Same(5 - Math.Sqrt(8), Line(0, 0, 2, 2), quarter);
        Same(2, Line(7, 0, 9, -5), quarter);
        Same(1, Line(-1, 5, -9, 5), quarter);
        Same(5, Line(0, 0, 0, -3), quarter);
    }

    [Fact]
    public void Between_arcs()
    {
        PathPart quarter = Arc(0, 0, 5, 0, 90);
        Same(2, quarter, Arc(0, 0, 7, 30, 40));
        Same(0, quarter, Arc(5, 5, 5, 180, 90));
        Same(Math.Sqrt(200) - 5 - 3, quarter, Arc(10, 10, 3, 180, 90));
        Same(1, Arc(0, 0, 10, -45, 90), Arc(7, 0, 2, -45, 90));
        Same(0, Arc(0, 0, 10, -45, 90), Arc(7, 0, 3, -45, 90));
        Same(3, Arc(0, 0, 1, -45, 90), Arc(6, 0, 2, 135, 90));
    }

    [Fact]
    public void From_a_point_at_the_centre_of_an_arc_it_is_the_radius() =>
        Assert.Equal(5, Distances.Between(new PlanePoint(0, 0), Arc(0, 0, 5, 10, -70), out _), 12);

    [Fact]
    public void Least_distances_agree_with_dense_samples() =>
        Gen.Select(Parts, Parts).Sample((a, b) =>
        {
            Nearest there = Distances.Between(a, b);
            double sampled = double.PositiveInfinity;
            const int steps = 400;
            for (int i = 0; i <= steps; i++)
            {
                sampled = Math.Min(sampled, Distances.Between(a.PointAt((double)i / steps), b, out _));
            }

            // No sample is nearer, and the nearest sample is at most half a step away.
            Assert.InRange(there.Value, sampled - (a.Length / steps / 2) - 1e-9, sampled + 1e-9);
            Assert.Equal(there.Value, there.OnFirst.DistanceTo(there.OnSecond), 9);
            Assert.InRange(Distances.Between(there.OnFirst, a, out _), 0, 1e-6);
            Assert.InRange(Distances.Between(there.OnSecond, b, out _), 0, 1e-6);
        }, iter: 3000);

    [Fact]
    public void From_points_agree_with_dense_samples() =>
        Gen.Select(Points, Parts).Sample((p, part) =>
        {
            double value = Distances.Between(p, part, out PlanePoint on);
            Assert.Equal(value, p.DistanceTo(on), 9);
            double sampled = Enumerable.Range(0, 1001).Min(i => part.PointAt(i / 1000.0).DistanceTo(p));
            Assert.InRange(value, sampled - (part.Length / 2000) - 1e-9, sampled + 1e-9);
        }, iter: 3000);

    [Fact]
    public void Farthest_distances_are_never_below_a_sample_and_are_reached() =>
        Gen.Select(Parts, Parts, Points).Sample((a, b, p) =>
        {
            double most = FarthestDistances.FromPoint(a, p), bound = FarthestDistances.InFrontOf(a, b, 1e-6);
            double sampledPoint = 0, sampled = 0;
            for (int i = 0; i <= 400; i++)
            {
                PlanePoint q = a.PointAt(i / 400.0);
                sampledPoint = Math.Max(sampledPoint, q.DistanceTo(p));
                sampled = Math.Max(sampled, Distances.Between(q, b, out _));
            }

            Assert.InRange(most, sampledPoint - 1e-9, sampledPoint + (a.Length / 800) + 1e-9);
            if (double.IsFinite(bound))
            {
                Assert.InRange(bound, sampled - 1e-9, sampled + (a.Length / 800) + 2.1e-6);
            }
        }, iter: 3000);

    [Fact]
    public void A_stretch_cut_where_it_leaves_the_front_has_a_half_in_front_or_none()
    {
        int inFront = 0;
        Gen.Select(Parts, Parts).Sample((a, b) =>
        {
            double share = FarthestDistances.LeavesFrontAt(a, b);
            if (share is > 1e-6 and < 1 - 1e-6)
            {
                // At the limit the point lies on the perpendicular through an end of the other part.
                PlanePoint q = a.PointAt(share);
                PlanePoint s = b.DirectionAt(b.Start), e = b.DirectionAt(b.End);
                double off = Math.Min(Math.Abs(q.Minus(b.Start).Dot(s)), Math.Abs(q.Minus(b.End).Dot(e)));
                Assert.InRange(off, 0, 1e-6);
                Interlocked.Increment(ref inFront);
            }
        }, iter: 2000);
        Assert.True(inFront > 100);
    }

    [Fact]
    public void Boxes_hold_their_parts() =>
        Parts.Sample(part =>
        {
            Box box = part.Box.Grown(1e-9);
            Box tight = Box.Around(part.Start, part.Start);
            for (int i = 0; i <= 400; i++)
            {
                Assert.True(box.Contains(part.PointAt(i / 400.0)));
                tight = tight.With(part.PointAt(i / 400.0));
            }

            double step = (part.Length / 400) + 2e-9;
            Assert.True(box.MaxX - tight.MaxX <= step && tight.MinX - box.MinX <= step && box.MaxY - tight.MaxY <= step && tight.MinY - box.MinY <= step);
        }, iter: 1000);

    [Fact]
    public void Inside_is_told_by_angle_swept() =>
        Gen.Select(Points, Gen.Double[0.2, 4], Gen.Bool).Sample((p, w, hasHole) =>
        {
            // A lens-ended slot 20 long and 2w wide, with or without a round hole: the distance to its spine decides.
            List<TargetEdge> outline =
            [
                new LineEdge(new(-10, -w), new(10, -w)), new ArcEdge(new(10, 0), w, -Math.PI / 2, Math.PI),
                new LineEdge(new(10, w), new(-10, w)), new ArcEdge(new(-10, 0), w, Math.PI / 2, Math.PI),
            ];
            var piece = new TargetPiece
            {
                Name = "slot",
                Loops = hasHole ? [[.. outline], [new ArcEdge(new(0, 0), w / 2, 0, -Math.Tau)]] : [[.. outline]],
                Bottom = 0,
                Top = 1,
            };
            double spine = Distances.Between(p, Line(-10, 0, 10, 0), out _);
            bool isInside = spine < w && !(hasHole && p.Length < w / 2);
            bool isClear = Math.Abs(spine - w) > 1e-6 && Math.Abs(p.Length - (w / 2)) > 1e-6;
            Assert.True(!isClear || Region.Of(piece, 1e-4).Contains(p) == isInside);
        }, iter: 3000);
}
