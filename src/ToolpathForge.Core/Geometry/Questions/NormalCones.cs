namespace ToolpathForge.Geometry;

/// <summary>
/// Which ways the edges of closed loops look to one side: the normals of each edge, and of the vertex at which it begins where that points to the side. Two points that face each other
/// look opposite ways, so a pair of edges without opposite normals has no such points; seen by one product, and of most edges that lie near each other it is so.
/// </summary>
internal sealed class NormalCones
{
    /// <summary>Forgiven on both sides of a cone, radians: ten times what the exact test forgives.</summary>
    private const double Slack = 1e-5;

    private readonly Cone[] _cones;

    /// <summary>Of all edges of an index whose rows are all closed.</summary>
    internal NormalCones(EdgeIndex index, Side side)
    {
        _cones = new Cone[index.Edges.Length];
        double sign = side == Side.Left ? 1 : -1;
        for (int owner = 0; owner + 1 < index.FirstOf.Length; owner++)
        {
            int before = index.FirstOf[owner + 1] - 1;
            for (int edge = index.FirstOf[owner]; edge < index.FirstOf[owner + 1]; before = edge++)
            {
                _cones[edge] = Of(index.Edges[before], index.Edges[edge], sign);
            }
        }
    }

    /// <summary>Whether some normal of one is opposite to some normal of the other. Never false where it is so.</summary>
    internal bool MayFace(int a, int b)
    {
        ref readonly Cone one = ref _cones[a];
        ref readonly Cone two = ref _cones[b];
        double between = -((one.X * two.X) + (one.Y * two.Y));

        // Together the half widths may be more than half a turn, and then anything faces anything. What is no number faces everything.
        return !(between < (one.Cos * two.Cos) - (one.Sin * two.Sin)) || (one.Sin * two.Cos) + (one.Cos * two.Sin) <= 0;
    }

    private static Cone Of(in Edge before, in Edge edge, double sign)
    {
        // The middle of an arc looks the way its chord does, half its sweep to both sides.
        (double x, double y) = (-edge.Uy * sign, edge.Ux * sign);
        Point2 arriving = before.EndDirection;
        Point2 leaving = edge.StartDirection;
        double turn = Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving));
        double half = 2 * Math.Atan(edge.Bulge);
        double least = -Math.Abs(half);
        double most = Math.Abs(half);
        if (!(Math.Abs(turn) <= Math.PI - Slack))
        {
            // Back on itself: to which side it points is a matter of the last digit. Nor does an edge of no length say.
            (least, most) = (-Math.PI, Math.PI);
        }
        else if (turn * sign < 0)
        {
            least = Math.Min(least, -half - turn);
            most = Math.Max(most, -half - turn);
        }

        double middle = (least + most) / 2;
        (double sin, double cos) = Math.SinCos(middle);
        (double sinWidth, double cosWidth) = Math.SinCos(Math.Min(Math.PI, ((most - least) / 2) + Slack));
        return new Cone((x * cos) - (y * sin), (x * sin) + (y * cos), cosWidth, sinWidth);
    }

    /// <summary>Direction of the middle; cosine and sine of half the width.</summary>
    private readonly record struct Cone(double X, double Y, double Cos, double Sin);
}
