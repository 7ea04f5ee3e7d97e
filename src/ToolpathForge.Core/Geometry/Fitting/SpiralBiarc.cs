namespace ToolpathForge.Geometry;

/// <summary>
/// Biarcs over a span of a spiral: a curve whose curvature rises or falls throughout, here of at most a quarter turn and without an inflection.
/// <para>
/// A spiral meets a circle at most three times, a touch counting twice (Kneser's nested circles). So its distance from an arc that touches it at one end has no
/// more than one maximum on the way, and that is found as a root: proven, not sampled. The radial distance is the distance both ways, because over at most
/// a quarter turn the curve runs round the centre in one sense: in the frame of the touch its slope never falls, so y ≤ x·tan(θ), and x·sin(θ) + (r - y)·cos(θ) > 0.
/// </para>
/// </summary>
internal sealed class SpiralBiarc
{
    /// <summary>Parameters are found to this share of the span: about where rounding of the points takes over.</summary>
    private const double ParameterAccuracy = 1e-15;

    private readonly Curve _spiral;
    private readonly double _from;
    private readonly double _to;
    private readonly Point2 _start;
    private readonly Point2 _end;
    private readonly Point2 _leaving;
    private readonly Point2 _arriving;
    private readonly double _turn;

    private SpiralBiarc(Curve spiral, double from, double to)
    {
        (_spiral, _from, _to) = (spiral, from, to);
        (_start, _end) = (spiral.PointAt(from), spiral.PointAt(to));
        (_leaving, _arriving) = (spiral.DirectionAt(from), spiral.DirectionAt(to));
        _turn = Biarc.AngleBetween(_leaving, _arriving);
    }

    /// <summary>The biarc whose joint lies on the curve.</summary>
    public static Biarc OnCurve(Curve spiral, double from, double to) => new SpiralBiarc(spiral, from, to).OnCurve();

    /// <summary>
    /// The biarc whose two arcs depart equally far: the least deviation that any joint gives, up to a seventh less than with the joint on the curve, most often nearly the same.
    /// </summary>
    public static Biarc Even(Curve spiral, double from, double to) => new SpiralBiarc(spiral, from, to).Even();

    private Biarc OnCurve()
    {
        double joint = JointOnCurve();
        Point2 meet = _spiral.PointAt(joint);

        // An arc that leaves along a tangent sweeps twice the angle between tangent and chord; its bulge is the tangent of half that angle.
        double first = Math.Tan(Biarc.AngleBetween(_leaving, meet - _start) / 2);
        double second = Math.Tan(Biarc.AngleBetween(_end - meet, _arriving) / 2);
        double deviation = Math.Max(
            Largest(_from, joint, _start, _leaving, Biarc.CurvatureOf(first, _start, meet)),
            Largest(_to, joint, _end, _arriving, Biarc.CurvatureOf(second, meet, _end)));
        return new Biarc(_from, _to, meet, first, second, deviation);
    }

    private double JointOnCurve()
    {
        // The turn of both arcs, less the turn of the curve. At the ends of the span its values are opposite, and it changes sign once between.
        double Excess(double t)
        {
            Point2 p = _spiral.PointAt(t);
            return (2 * (Biarc.AngleBetween(_leaving, p - _start) + Biarc.AngleBetween(_end - p, _arriving))) - _turn;
        }

        double atStart = (2 * Biarc.AngleBetween(_end - _start, _arriving)) - _turn;
        double atEnd = (2 * Biarc.AngleBetween(_leaving, _end - _start)) - _turn;
        return IsCircle() || atStart * atEnd >= 0
            ? (_from + _to) / 2
            : RootFinder.Find(Excess, _from, atStart, _to, atEnd, ParameterAccuracy * (_to - _from));
    }

    private bool IsCircle() => Math.Abs((2 * Biarc.AngleBetween(_end - _start, _arriving)) - _turn) < Biarc.DirectionNoise(_start, _end);

    private Biarc Even()
    {
        Biarc best = OnCurve();
        if (IsCircle())
        {
            return best;
        }

        // The half sweeps of both arcs add up to half the turn, and both arcs run forwards only if the chord points between theirs.
        double chord = Biarc.AngleBetween(_leaving, _end - _start);
        double low = Math.Min(Math.Abs(_turn) / 2, Math.Max(0, Math.Abs(chord) - (Math.Abs(_turn) / 2)));
        double high = Math.Min(Math.Abs(_turn) / 2, Math.Abs(chord));
        double sense = Math.Sign(_turn);
        double half = RootFinder.Find(h => Unevenness(sense * h, out _), low, -1, high, 1, 1e-14 * high);
        Unevenness(sense * half, out Biarc even);
        return even.Deviation < best.Deviation ? even : best;
    }

    /// <summary>How much farther the first arc departs than the second, as a share of both: from -1 to 1, growing with the first arc's sweep.</summary>
    private double Unevenness(double firstHalf, out Biarc biarc)
    {
        double secondHalf = (_turn / 2) - firstHalf;
        Point2 firstChord = _leaving.Rotated(firstHalf);
        Point2 secondChord = _arriving.Rotated(-secondHalf);
        Point2 way = _end - _start;
        double length = way.Cross(secondChord) / firstChord.Cross(secondChord);
        Point2 meet = _start + (firstChord * length);
        Point2 along = _leaving.Rotated(2 * firstHalf);
        double first = Math.Tan(firstHalf / 2);
        double second = Math.Tan(secondHalf / 2);
        double firstCurvature = Biarc.CurvatureOf(first, _start, meet);
        double secondCurvature = Biarc.CurvatureOf(second, meet, _end);

        // Curve and arcs are compared up to the joint's normal, on which both centres lie.
        double split = RootFinder.Find(
            t => (_spiral.PointAt(t) - meet).Dot(along), _from, (_start - meet).Dot(along), _to, (_end - meet).Dot(along), ParameterAccuracy * (_to - _from));
        double atFirst = Inner(_from, split, _start, _leaving, firstCurvature);
        double atSecond = Inner(_to, split, _end, _arriving, secondCurvature);
        double atJoint = Distance(split, _start, _leaving.Left, firstCurvature);
        biarc = new Biarc(_from, _to, meet, first, second, Math.Max(atJoint, Math.Max(atFirst, atSecond)));
        double sum = atFirst + atSecond;
        return sum > 0 ? (atFirst - atSecond) / sum : 0;
    }

    /// <summary>The largest distance from an arc that touches the curve at one parameter and crosses it at another.</summary>
    private double Largest(double touch, double cross, Point2 point, Point2 direction, double curvature)
    {
        double inner = Inner(touch, cross, point, direction, curvature);
        return inner > 0 ? inner : Distance((touch + cross) / 2, point, direction.Left, curvature);
    }

    /// <summary>The maximum of the distance between the touch and another parameter; 0 if it only grows or falls there.</summary>
    private double Inner(double touch, double until, Point2 point, Point2 direction, double curvature)
    {
        Point2 normal = direction.Left;

        // The slope of the power of the curve's point about the circle, divided by the way from the touch, where it has a double zero.
        double Slope(double t)
        {
            Point2 q = _spiral.PointAt(t) - point;
            Point2 d = _spiral.FirstDerivative(t);
            return (d.Dot(normal) - (curvature * q.Dot(d))) / (t - touch);
        }

        double atTouch = _spiral.SecondDerivative(touch).Dot(normal) - (curvature * _spiral.FirstDerivative(touch).LengthSquared);
        double atEnd = Slope(until);
        return Math.Sign(atTouch) * Math.Sign(atEnd) < 0
            ? Distance(RootFinder.Find(Slope, touch, atTouch, until, atEnd, 1e-9 * Math.Abs(until - touch)), point, normal, curvature)
            : 0;
    }

    private double Distance(double t, Point2 point, Point2 normal, double curvature)
    {
        // Power form: stays exact for arcs that are nearly straight, where centre and radius would cancel.
        Point2 q = _spiral.PointAt(t) - point;
        double power = q.Dot(normal) - (curvature * q.LengthSquared / 2);
        return Math.Abs(2 * power / (1 + Math.Sqrt(Math.Max(0, 1 - (2 * curvature * power)))));
    }
}
