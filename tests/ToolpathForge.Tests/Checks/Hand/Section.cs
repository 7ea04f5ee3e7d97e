using ToolpathForge.Catalogue;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Checks.Hand;

/// <summary>
/// The section through router, pattern and board as polygons, put together for one depth and then looked at. Y is the height over the router's base (below
/// it negative), the edge that is followed lies at X 0, the work to its left. Nothing here knows a limit: areas are cut out of each other and measured.
/// </summary>
internal sealed class Section
{
    // What rides on an edge is pressed into it by this much, so that contact becomes an area.
    private const double Press = 0.001;

    private readonly List<Point2> _guide;
    private readonly List<Point2> _bearing;
    private readonly double _boardTop;
    private readonly double _boardBottom;
    private readonly double _cutterTop;
    private readonly double _cutterBottom;

    private Section(HandSetUp s, double depth, double guideTop, double guideBottom, double boardTop, double bearingTop)
    {
        _guide = Rectangle(-40, guideBottom, 0, guideTop);
        _bearing = Rectangle(-Press, bearingTop - s.Bearing.Height, s.Bearing.Diameter, bearingTop);
        _boardTop = boardTop;
        _boardBottom = boardTop - s.Board;
        _cutterTop = s.Cutter - depth;
        _cutterBottom = -depth;
    }

    internal static Section PatternOnTop(HandSetUp s, double depth) =>
        new(s, depth, 0, -s.Pattern, -s.Pattern, s.Cutter - depth + s.Bearing.Gap + s.Bearing.Height);

    internal static Section EdgeOnTop(HandSetUp s, double edge, double depth) =>
        new(s, depth, 0, -edge, 0, s.Cutter - depth + s.Bearing.Gap + s.Bearing.Height);

    internal static Section PatternBelow(HandSetUp s, double depth) =>
        new(s, depth, -s.Board, -s.Board - s.Pattern, 0, -depth - s.Bearing.Gap);

    /// <summary>Height over which bearing and guide touch, mm.</summary>
    internal double Contact => Area(Clip(_bearing, _guide)) / Press;

    /// <summary>How far the cutter goes past the board's lower face, mm; negative where it does not get there.</summary>
    internal double Below => _boardBottom - _cutterBottom;

    /// <summary>How far the cutter's upper end stands over a level, mm.</summary>
    internal double Above(double level) => _cutterTop - level;

    internal double BoardTop => _boardTop;

    internal double GuideBottom => _guide.Min(p => p.Y);

    internal double BearingBottom => _bearing.Min(p => p.Y);

    private static List<Point2> Rectangle(double left, double bottom, double right, double top) =>
        [new(left, bottom), new(right, bottom), new(right, top), new(left, top)];

    // Sutherland and Hodgman's clipping of one convex polygon by another; shoelace area.
    private static List<Point2> Clip(List<Point2> subject, List<Point2> by)
    {
        List<Point2> rest = subject;
        for (int i = 0; i < by.Count; i++)
        {
            Point2 a = by[i];
            Point2 along = by[(i + 1) % by.Count] - a;
            double Side(Point2 p) => along.Cross(p - a);
            List<Point2> kept = [];
            for (int j = 0; j < rest.Count; j++)
            {
                Point2 p = rest[j];
                Point2 q = rest[(j + 1) % rest.Count];
                if (Side(p) >= 0)
                {
                    kept.Add(p);
                }

                if (Side(p) * Side(q) < 0)
                {
                    kept.Add(p + ((q - p) * (Side(p) / (Side(p) - Side(q)))));
                }
            }

            rest = kept;
        }

        return rest;
    }

    private static double Area(List<Point2> ring)
    {
        double twice = 0;
        for (int i = 0; i < ring.Count; i++)
        {
            twice += ring[i].Cross(ring[(i + 1) % ring.Count]);
        }

        return twice / 2;
    }
}
