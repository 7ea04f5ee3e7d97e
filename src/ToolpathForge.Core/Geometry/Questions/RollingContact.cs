namespace ToolpathForge.Geometry;

/// <summary>A stretch of a contour along which a round bit either touches or cannot.</summary>
/// <param name="Contour">Which contour of those given.</param>
/// <param name="Piece">The part of the contour; its two ends are one point where the bit turns about a vertex.</param>
/// <param name="First">Centre of the bit that touches at its beginning.</param>
/// <param name="Last">Centre of the bit that touches at its end.</param>
/// <param name="Touches">Whether the bit can be there without cutting in anywhere.</param>
internal readonly record struct ContactStretch(int Contour, Segment Piece, Point2 First, Point2 Last, bool Touches);

/// <summary>
/// Rolls a bit along contours. Over each segment, and about each vertex that points at the bit, its centre runs on a line or an arc; that is cut wherever it
/// could come nearer to any segment than the radius, which happens only on the segment's two parallels and on circles about its ends. Between cuts the answer is one,
/// and the middle gives it.
/// </summary>
internal sealed class RollingContact
{
    /// <summary>
    /// A centre may lie nearer to the contour than the radius by this, mm: the rounding of crossings at the largest coordinate that is accepted, ten times over.
    /// </summary>
    private const double Forgiven = 1e-9;

    private readonly IReadOnlyList<Contour> _contours;
    private readonly double _radius;
    private readonly Side _side;
    private readonly Segment[] _segments;
    private readonly Box2[] _boxes;

    private RollingContact(IReadOnlyList<Contour> contours, double radius, Side side)
    {
        _contours = contours;
        _radius = radius;
        _side = side;
        _segments = [.. contours.SelectMany(c => Enumerable.Range(0, c.SegmentCount).Select(i => c[i])).Where(HasLength)];
        _boxes = [.. _segments.Select(s => s.Box)];
    }

    /// <summary>All stretches, contour by contour, in the order of travel.</summary>
    public static List<ContactStretch> Roll(IReadOnlyList<Contour> contours, double radius, Side side) => new RollingContact(contours, radius, side).Run();

    private static bool HasLength(Segment s) => s.Chord > Accuracy.SamePoint;

    private List<ContactStretch> Run()
    {
        var stretches = new List<ContactStretch>();
        for (int c = 0; c < _contours.Count; c++)
        {
            Contour contour = _contours[c];
            Segment[] own = [.. Enumerable.Range(0, contour.SegmentCount).Select(i => contour[i]).Where(HasLength)];
            for (int i = 0; i < own.Length; i++)
            {
                if (i > 0 || contour.IsClosed)
                {
                    RollAbout(c, own[(i + own.Length - 1) % own.Length], own[i], stretches);
                }

                RollAlong(c, own[i], stretches);
            }
        }

        return stretches;
    }

    private Point2 Towards(Point2 direction) => (_side == Side.Left ? direction.Left : direction.Right) * _radius;

    private void RollAlong(int contour, Segment s, List<ContactStretch> stretches)
    {
        bool hollow = !s.IsLine && (s.Bulge > 0) == (_side == Side.Left);
        if (hollow && s.Radius < _radius + Accuracy.SamePoint)
        {
            // Rounder than the hollow: touches nowhere; equal to it: everywhere at once.
            Point2 center = s.Center;
            stretches.Add(new ContactStretch(contour, s, center, center, Math.Abs(s.Radius - _radius) <= Accuracy.SamePoint && IsFree(center)));
            return;
        }

        var path = new Segment(s.Start + Towards(s.StartDirection), s.End + Towards(s.EndDirection), s.IsLine ? 0 : s.Bulge);
        Split(contour, s, path, stretches);
    }

    private void RollAbout(int contour, Segment arriving, Segment leaving, List<ContactStretch> stretches)
    {
        double turn = Corners.TurnBetween(arriving.EndDirection, leaving.StartDirection);
        bool pointsAtBit = (turn > 0) == (_side == Side.Right);
        if (!pointsAtBit || Math.Abs(turn) < Accuracy.SameDirection)
        {
            return;
        }

        Point2 at = leaving.Start;
        var path = new Segment(at + Towards(arriving.EndDirection), at + Towards(leaving.StartDirection), Math.Tan(turn / 4));
        Split(contour, new Segment(at, at), path, stretches);
    }

    private void Split(int contour, Segment piece, Segment path, List<ContactStretch> stretches)
    {
        var cuts = new List<double> { 0, 1 };
        Box2 near = path.Box.Grown(_radius);
        for (int j = 0; j < _segments.Length; j++)
        {
            if (near.Meets(_boxes[j]))
            {
                Cut(path, _segments[j], cuts);
            }
        }

        cuts.Sort();
        for (int k = 0; k + 1 < cuts.Count; k++)
        {
            double from = cuts[k];
            double to = cuts[k + 1];
            if (to > from)
            {
                bool touches = IsFree(path.PointAt((from + to) / 2));
                Segment part = piece.Start == piece.End ? piece : piece.Part(from, to);
                stretches.Add(new ContactStretch(contour, part, path.PointAt(from), path.PointAt(to), touches));
            }
        }
    }

    private void Cut(Segment path, Segment s, List<double> cuts)
    {
        if (ShallowCrossings.IsShallow(path) || ShallowCrossings.IsShallow(s))
        {
            ShallowCrossings.Add(path, s, _radius, cuts);
            return;
        }

        Carriers.CrossCircle(path, s.Start, _radius, cuts);
        Carriers.CrossCircle(path, s.End, _radius, cuts);
        if (s.IsLine)
        {
            Point2 off = s.StartDirection.Left * _radius;
            Carriers.CrossLine(path, s.Start + off, s.End + off, cuts);
            Carriers.CrossLine(path, s.Start - off, s.End - off, cuts);
        }
        else
        {
            Carriers.CrossCircle(path, s.Center, s.Radius + _radius, cuts);
            Carriers.CrossCircle(path, s.Center, Math.Abs(s.Radius - _radius), cuts);
        }
    }

    private bool IsFree(Point2 center)
    {
        double least = _radius - Forgiven;
        for (int j = 0; j < _segments.Length; j++)
        {
            if (_boxes[j].Distance(center) < least && _segments[j].Distance(center) < least)
            {
                return false;
            }
        }

        return true;
    }
}
