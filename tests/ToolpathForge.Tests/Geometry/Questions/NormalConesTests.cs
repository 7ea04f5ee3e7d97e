using CsCheck;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Questions;

/// <summary>What is passed over because it looks another way does so.</summary>
public class NormalConesTests
{
    // A second loop is turned so that the normal of a place of one of its edges is just opposite to that of a place of the first: this pair must never be passed over.
    [Fact]
    public void Edges_with_opposite_normals_may_face() =>
        Gen.Select(Gen.Select(Gen.Double[-50, 50], Gen.Double[-50, 50], Gen.Double[-1, 1]).Array[3, 12], Gen.Int[0, 1000], Gen.Int[0, 1000], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Bool)
            .Sample((corners, first, second, s, t, left) =>
            {
                Vertex[] row = [.. corners.Select((c, i) => new Vertex(c.Item1, c.Item2, i % 3 == 0 ? 0 : c.Item3))];
                int i = first % row.Length, j = second % row.Length;
                Segment a = Of(row, i), b = Of(row, j);
                if (a.Chord < 1 || b.Chord < 1)
                {
                    return;
                }

                double turn = (DirectionAt(a, s).Angle + Math.PI) - DirectionAt(b, t).Angle;
                Vertex[] turned = [.. row.Select(v => new Vertex(Turned(v.Point, turn) + new Point2(500, 0), v.Bulge))];
                var index = new EdgeIndex([(row, true), (turned, true)], 0);
                Assert.True(new NormalCones(index, left ? Side.Left : Side.Right).MayFace(i, row.Length + j));
            });

    // At a vertex that points to the side, everything between the normals of its two edges; at one that points away, nothing of the kind.
    [Theory]
    [InlineData(Side.Right, true)]
    [InlineData(Side.Left, false)]
    public void A_vertex_looks_every_way_between_its_edges(Side side, bool faces)
    {
        // The corner at (10, 0) of a square points right and down; the short edges of the diamond to the lower right of it look up and left, and down and right.
        Vertex[] square = [new(0, 0, 0), new(10, 0, 0), new(10, 10, 0), new(0, 10, 0)];
        Vertex[] diamond = [new(20, -20, 0), new(30, -10, 0), new(20, 0, 0), new(10, -10, 0)];
        var cones = new NormalCones(new EdgeIndex([(square, true), (diamond, true)], 0), side);
        Assert.Equal(faces, cones.MayFace(1, 4 + 2) || cones.MayFace(1, 4 + 3));
    }

    [Fact]
    public void Neighbours_of_a_round_outline_look_apart()
    {
        Vertex[] row = [.. Enumerable.Range(0, 100).Select(i => new Vertex(Point2.Direction(i * Math.PI / 50) * 60))];
        var outside = new NormalCones(new EdgeIndex([(row, true)], 0), Side.Right);
        Assert.DoesNotContain(Enumerable.Range(1, 40), j => outside.MayFace(0, j));
        Assert.True(outside.MayFace(0, 50));
    }

    private static Segment Of(Vertex[] row, int i) => new(row[i].Point, row[(i + 1) % row.Length].Point, row[i].Bulge);

    private static Point2 DirectionAt(Segment s, double t) => Turned(s.StartDirection, s.IsLine ? 0 : s.Sweep * t);

    private static Point2 Turned(Point2 p, double by) => new((p.X * Math.Cos(by)) - (p.Y * Math.Sin(by)), (p.X * Math.Sin(by)) + (p.Y * Math.Cos(by)));
}
