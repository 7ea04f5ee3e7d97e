using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>One tooth of a comb.</summary>
/// <param name="At">The point on the curve, mm.</param>
/// <param name="Normal">Unit normal to the left of travel. A tooth is drawn against it, by the curvature times a scale, so that combs of a convex outline stand outwards.</param>
/// <param name="Curvature">Signed, 1/mm, positive when turning left.</param>
/// <param name="Along">Length from the beginning, mm.</param>
/// <param name="Piece">Which curve or segment, from 0.</param>
public readonly record struct CombTooth(Point2 At, Point2 Normal, double Curvature, double Along, int Piece);

/// <summary>A joint at which direction or curvature changes at once.</summary>
/// <param name="At">Where, mm.</param>
/// <param name="Turn">Turn of the direction, radians in (-π, π], positive to the left; a joint that turns less than the least is told as smooth, with its true turn.</param>
/// <param name="Before">Curvature where it arrives, 1/mm.</param>
/// <param name="After">Curvature where it leaves, 1/mm.</param>
/// <param name="IsCorner">Whether it turns by the least that counts as a corner, or more.</param>
/// <param name="Piece">The curve or segment that leaves it.</param>
public readonly record struct CombJump(Point2 At, double Turn, double Before, double After, bool IsCorner, int Piece);

/// <summary>Where a curve goes over from bending one way to bending the other.</summary>
/// <param name="From">Where it last bent the first way, mm.</param>
/// <param name="To">Where it begins to bend the other way; the same point where nothing straight lies between.</param>
/// <param name="ToLeft">Whether it bends left afterwards.</param>
public readonly record struct BendChange(Point2 From, Point2 To, bool ToLeft);

/// <summary>Curvature along a curve, as a draughtsman's comb shows it: fair where the tips of the teeth run smoothly, with every jump and change of sign told.</summary>
/// <param name="Teeth">In the order of travel; each piece has one at either end, so that a jump has two.</param>
/// <param name="Jumps">Joints at which the direction turns by a corner, or the curvature changes.</param>
/// <param name="BendChanges">Changes of sign, corners not counted as bends.</param>
public sealed record CurvatureComb(ImmutableArray<CombTooth> Teeth, ImmutableArray<CombJump> Jumps, ImmutableArray<BendChange> BendChanges)
{
    /// <summary>Curvatures that differ by less than this share of the larger are the same: what rounding leaves between two curves drawn as one.</summary>
    private const double SameCurvature = 1e-9;

    /// <summary>Curvature below this is none, 1/mm: a metre of it rises by 1.25e-7 mm, which counts as straight.</summary>
    private const double NoCurvature = 1e-12;

    /// <summary>The comb of lines and arcs: constant on each, with a jump at nearly every joint.</summary>
    /// <param name="contour">Open or closed; no segment of no length.</param>
    /// <param name="step">Teeth at most this far apart, mm, more than 0.</param>
    /// <param name="leastTurn">Joints that turn less are smooth, radians.</param>
    /// <exception cref="ArgumentOutOfRangeException">A step that is not more than 0.</exception>
    public static CurvatureComb Of(Contour contour, double step, double leastTurn = Corners.LeastTurn)
    {
        Curve[] curves = [.. Enumerable.Range(0, contour.SegmentCount).Select(i => CurveOf(contour[i]))];
        return new CombMaking(step, leastTurn).Make(curves, contour.IsClosed);
    }

    /// <summary>The comb of exact curves.</summary>
    /// <param name="outline">Open or closed.</param>
    /// <param name="step">Teeth at most about this far apart, mm, more than 0; at least nine on each curve that is not straight.</param>
    /// <param name="leastTurn">Joints that turn less are smooth, radians.</param>
    /// <exception cref="ArgumentOutOfRangeException">A step that is not more than 0.</exception>
    public static CurvatureComb Of(Outline outline, double step, double leastTurn = Corners.LeastTurn) =>
        new CombMaking(step, leastTurn).Make([.. outline.Curves], outline.IsClosed);

    private static Curve CurveOf(Segment s) => s.IsLine
        ? new LineCurve(s.Start, s.End)
        : new ArcCurve(s.Center, s.Radius, (s.Start - s.Center).Angle, s.Sweep);

    private sealed class CombMaking(double step, double leastTurn)
    {
        private readonly double _step = step > 0 ? step : throw new ArgumentOutOfRangeException(nameof(step), step, "Teeth stand some way apart.");
        private readonly ImmutableArray<CombTooth>.Builder _teeth = ImmutableArray.CreateBuilder<CombTooth>();
        private readonly ImmutableArray<CombJump>.Builder _jumps = ImmutableArray.CreateBuilder<CombJump>();
        private readonly ImmutableArray<BendChange>.Builder _changes = ImmutableArray.CreateBuilder<BendChange>();
        private double _along;
        private int _sign;
        private Point2 _lastBent;
        private double _lastAt;
        private int _lastPiece = -1;
        private int _firstSign;
        private Point2 _firstBent;

        internal CurvatureComb Make(Curve[] curves, bool closed)
        {
            for (int i = 0; i < curves.Length; i++)
            {
                if (i > 0)
                {
                    Joint(curves[i - 1], curves[i], i);
                }

                Walk(curves[i], i);
            }

            if (closed)
            {
                Joint(curves[^1], curves[0], 0);
                if (_firstSign != _sign)
                {
                    _changes.Add(new BendChange(_lastBent, _firstBent, _firstSign > 0));
                }
            }

            return new CurvatureComb(_teeth.ToImmutable(), _jumps.ToImmutable(), _changes.ToImmutable());
        }

        private void Joint(Curve before, Curve after, int piece)
        {
            double turn = Corners.TurnBetween(before.DirectionAt(1), after.DirectionAt(0));
            double k0 = before.CurvatureAt(1);
            double k1 = after.CurvatureAt(0);
            bool corner = Math.Abs(turn) >= leastTurn;
            if (corner || Math.Abs(k1 - k0) > Math.Max(NoCurvature, SameCurvature * Math.Max(Math.Abs(k0), Math.Abs(k1))))
            {
                _jumps.Add(new CombJump(after.Start, turn, k0, k1, corner, piece));
            }
        }

        private void Walk(Curve curve, int piece)
        {
            double length = curve.Length;
            int count = Math.Max(curve is LineCurve ? 1 : 8, (int)Math.Min(1e6, Math.Ceiling(length / _step)));
            double from = 0;
            for (int k = 0; k <= count; k++)
            {
                double t = (double)k / count;
                Point2 at = curve.PointAt(t);
                double curvature = curve.CurvatureAt(t);
                if (k > 0)
                {
                    _along += curve is LineCurve or ArcCurve ? length / count : ArcLength.Between(curve.FirstDerivative, from, t);
                }

                Sign(curve, curvature, at, t, piece);
                _teeth.Add(new CombTooth(at, curve.DirectionAt(t).Left, curvature, _along, piece));
                from = t;
            }
        }

        private void Sign(Curve curve, double curvature, Point2 at, double t, int piece)
        {
            if (!(Math.Abs(curvature) > NoCurvature))
            {
                return;
            }

            int sign = Math.Sign(curvature);
            if (_sign != 0 && sign != _sign)
            {
                Point2 to = at;
                Point2 last = _lastBent;
                if (_lastPiece == piece)
                {
                    // Within one curve, since the tooth that last bent: by halving, to the last digit.
                    (double low, double high) = (_lastAt, t);
                    while (high - low > 1e-15 * Math.Max(1, high) && low + ((high - low) / 2) is var middle && middle > low && middle < high)
                    {
                        if (Math.Sign(curve.CurvatureAt(middle)) == _sign)
                        {
                            low = middle;
                        }
                        else
                        {
                            high = middle;
                        }
                    }

                    last = to = curve.PointAt(high);
                }

                _changes.Add(new BendChange(last, to, sign > 0));
            }

            if (_sign == 0)
            {
                (_firstSign, _firstBent) = (sign, at);
            }

            (_sign, _lastBent, _lastAt, _lastPiece) = (sign, at, t, piece);
        }
    }
}
