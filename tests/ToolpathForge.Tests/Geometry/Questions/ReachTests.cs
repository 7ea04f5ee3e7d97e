using CsCheck;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Questions;

public class ReachTests
{
    private const double R = 3.175;

    /// <summary>How far the samples of the exhaustive look may lie from the nearest bit: half a step of 1/50 of the longest segment, about 80 mm, and the way round a vertex.</summary>
    private const double SamplingSlack = 0.8;

    [Fact]
    public void An_inside_corner_keeps_its_rest()
    {
        Unreached rest = Assert.Single(Reach.Of(CornersTests.Ell, R, Side.Right));
        Assert.Equal(R * (Math.Sqrt(2) - 1), rest.Left, 1e-9);
        Assert.Equal(0, rest.At.DistanceTo(new Point2(40, 30)), 1e-9);
        Assert.Equal(0, rest.From.DistanceTo(new Point2(40 + R, 30)), 1e-9);
        Assert.Equal(0, rest.To.DistanceTo(new Point2(40, 30 + R)), 1e-9);
        Assert.Equal(2 * R, rest.Length, 1e-9);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(75)]
    [InlineData(120)]
    [InlineData(160)]
    public void A_corner_of_any_angle_keeps_what_the_formula_says(double turn)
    {
        double t = turn * Math.PI / 180;
        Contour vee = Contour.Polyline(new(-200, 0), new(0, 0), Point2.Direction(-t) * 200);
        Unreached rest = Assert.Single(Reach.Of(vee, R, Side.Right));
        Assert.Equal((R / Math.Cos(t / 2)) - R, rest.Left, 1e-8);
        Assert.Equal(2 * R * Math.Tan(t / 2), rest.Length, 1e-8);
        Assert.Empty(Reach.Of(vee, R, Side.Left));
    }

    [Fact]
    public void A_hollow_arc_tighter_than_the_bit_keeps_a_crescent()
    {
        // Quarter fillet of 2 between square edges, bit 5: (R - r)(√2 - 1) at its middle; contact is lost R - r before the arc.
        double q = Math.Tan(Math.PI / 8);
        var fillet = new Contour([new(50, 0, 0), new(2, 0, -q), new(0, 2, 0), new(0, 50, 0)], false);
        Unreached rest = Assert.Single(Reach.Of(fillet, 5, Side.Right));
        Assert.Equal(3 * (Math.Sqrt(2) - 1), rest.Left, 1e-9);
        Assert.Equal(0, rest.At.DistanceTo(new Point2(2 - Math.Sqrt(2), 2 - Math.Sqrt(2))), 1e-9);
        Assert.Equal(6 + Math.PI, rest.Length, 1e-9);
        Assert.Empty(Reach.Of(fillet, 2, Side.Right));
        Assert.Empty(Reach.Of(fillet, 1.9, Side.Right));
    }

    [Fact]
    public void A_slot_narrower_than_the_bit_stays_shut()
    {
        // 4 wide, 20 deep, into the top edge: the bit rests on both lips.
        Contour plate = Contour.Polygon(new(0, 0), new(60, 0), new(60, 40), new(32, 40), new(32, 20), new(28, 20), new(28, 40), new(0, 40));
        Unreached rest = Assert.Single(Reach.Of(plate, R, Side.Right));
        double height = Math.Sqrt((R * R) - 4);
        Assert.Equal(Math.Sqrt(((20 + height) * (20 + height)) + 4) - R, rest.Left, 1e-9);
        Assert.Equal(44, rest.Length, 1e-9);
        Assert.Empty(Reach.Of(plate, 2, Side.Right).Where(u => u.Left > 2 * (Math.Sqrt(2) - 1) + 1e-9));
    }

    [Fact]
    public void A_hole_of_the_bits_own_size_is_reached_and_a_smaller_one_not_at_all()
    {
        Contour hole = Contour.Circle(new Point2(7, 8), R).Reversed();
        Assert.Empty(Reach.Of(hole, R, Side.Right));
        Unreached none = Assert.Single(Reach.Of(hole, R + 0.01, Side.Right));
        Assert.Equal(double.PositiveInfinity, none.Left);
        Assert.Equal(hole.Length, none.Length, 1e-9);
        Assert.Empty(Reach.Of(hole, 50, Side.Left));
    }

    [Fact]
    public void Two_pieces_side_by_side_shut_the_bit_out_between_them()
    {
        Contour low = Contour.Polygon(new(0, 0), new(100, 0), new(100, 20), new(0, 20));
        Contour high = Contour.Polygon(new(0, 24), new(100, 24), new(100, 44), new(0, 44));
        Unreached[] rest = [.. Reach.Of([low, high], R, Side.Right)];
        Assert.Equal(2, rest.Length);
        double middle = Math.Sqrt(((50 + Math.Sqrt((R * R) - 4)) * (50 + Math.Sqrt((R * R) - 4))) + 4) - R;
        Assert.All(rest, r => Assert.Equal(middle, r.Left, 1e-9));
        Assert.All(rest, r => Assert.Equal(100, r.Length, 1e-9));
        Assert.Empty(Reach.Of([low, high], 2, Side.Right));
    }

    [Fact]
    public void A_stretch_across_the_first_vertex_is_told_once()
    {
        Contour ell = CornersTests.Ell;
        Unreached expected = Assert.Single(Reach.Of(ell, R, Side.Right));
        for (int first = 0; first < 6; first++)
        {
            Vertex[] turned = [.. ell.Vertices[first..].ToArray(), .. ell.Vertices[..first].ToArray()];
            Unreached rest = Assert.Single(Reach.Of(new Contour(turned, true), R, Side.Right));
            Assert.Equal(expected.Left, rest.Left, 1e-12);
            Assert.Equal(expected.Length, rest.Length, 1e-12);
        }
    }

    // A ring of vertices at random radii about the origin never crosses itself; small bulges keep it so.
    internal static readonly Gen<Contour> GenRing =
        from n in Gen.Int[4, 14]
        from radii in Gen.Double[20, 50].Array[n]
        from bulges in Gen.Double[-0.25, 0.25].Array[n]
        select new Contour([.. Enumerable.Range(0, n).Select(i => new Vertex(Point2.Direction(i * 2 * Math.PI / n) * radii[i], bulges[i] / n))], true);

    [Fact]
    public void Touching_agrees_with_trying_it_point_by_point() =>
        Gen.Select(GenRing, Gen.Double[0.5, 15]).Sample((ring, radius) =>
        {
            Unreached[] rest = [.. Reach.Of(ring, radius, Side.Right, 0)];
            for (int i = 0; i < ring.SegmentCount; i++)
            {
                for (double share = 0.02; share < 1; share += 0.04)
                {
                    Point2 p = ring[i].PointAt(share);
                    double room = ring.Distance(p + (ring[i].DirectionAt(share).Right * radius)) - radius;
                    if (room < -1e-6)
                    {
                        // It cannot touch here, so some stretch keeps at least what an exhaustive look for nearer bits finds.
                        double left = NearestBit(ring, p, radius);
                        Assert.Contains(rest, r => r.Left >= left - SamplingSlack);
                    }
                }
            }

            double untouched = rest.Sum(r => r.Length);
            Assert.Equal(Untouched(ring, radius), untouched, 0.03 * ring.Length);
        }, iter: 40);

    [Fact]
    public void Reversing_with_the_other_side_and_moving_change_nothing()
    {
        int compared = 0;
        Gen.Select(GenRing, Gen.Double[0.5, 15], Gen.Double[-3, 3]).Sample((ring, radius, turn) =>
        {
            static (double Left, double Length) Figures(IEnumerable<Unreached> places) => (places.Select(p => p.Left).DefaultIfEmpty().Max(), places.Sum(p => p.Length));
            (double Left, double Length) rest = Figures(Reach.Of(ring, radius, Side.Right));

            // Where the bit only just touches within a stretch, a rounding decides whether that touch counts, and what is left jumps. Bits a little thicker or
            // thinner jump there too: such a ring says nothing about reversing and moving.
            if (((double[])[1e-6, -1e-6, 1e-5, -1e-5, 1e-4, -1e-4]).Select(more => Figures(Reach.Of(ring, radius + more, Side.Right))).Any(f =>
                Math.Abs(f.Left - rest.Left) > 0.01 || Math.Abs(f.Length - rest.Length) > 0.01))
            {
                return;
            }

            Interlocked.Increment(ref compared);

            // What is left ends where the bit leaves an edge over a chord: a rounding of 1e-9 mm moves that by √(2 R 1e-9), a few ten-thousandths.
            foreach ((double left, double length) in ((double, double)[])
            [
                Figures(Reach.Of(ring.Reversed(), radius, Side.Left)), Figures(Reach.Of(ring.Placed(new Placement(turn, new Point2(3000, -2000), false)), radius, Side.Right)),
            ])
            {
                Assert.Equal(rest.Left, left, 0.01);
                Assert.Equal(rest.Length, length, 0.01);
            }
        }, iter: 100);
        Assert.InRange(compared, 20, 100);
    }

    private static double Untouched(Contour ring, double radius)
    {
        double sum = 0;
        for (int i = 0; i < ring.SegmentCount; i++)
        {
            const int Steps = 200;
            for (int k = 0; k < Steps; k++)
            {
                double share = (k + 0.5) / Steps;
                Point2 center = ring[i].PointAt(share) + (ring[i].DirectionAt(share).Right * radius);
                sum += ring.Distance(center) < radius - 1e-6 ? ring[i].Length / Steps : 0;
            }
        }

        return sum;
    }

    private static double NearestBit(Contour ring, Point2 p, double radius)
    {
        double nearest = double.PositiveInfinity;
        for (int i = 0; i < ring.SegmentCount; i++)
        {
            for (double share = 0; share <= 1; share += 0.02)
            {
                Point2 center = ring[i].PointAt(share) + (ring[i].DirectionAt(share).Right * radius);
                if (ring.Distance(center) > radius - 1e-6)
                {
                    nearest = Math.Min(nearest, center.DistanceTo(p));
                }
            }
        }

        return nearest - radius;
    }
}
