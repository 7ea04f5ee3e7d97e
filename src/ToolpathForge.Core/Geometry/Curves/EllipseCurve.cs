namespace ToolpathForge.Geometry;

/// <summary>
/// A piece of an ellipse: centre + Major·cos(u) + Minor·sin(u), u from <paramref name="StartParameter"/> through <paramref name="Sweep"/>.
/// The parameter u is the eccentric angle, not the direction seen from the centre.
/// </summary>
/// <param name="Center">The centre.</param>
/// <param name="Major">One semi-axis as a vector, mm.</param>
/// <param name="Minor">The other semi-axis, square to the first; it may be the longer one, and may lie to either side.</param>
/// <param name="StartParameter">Radians.</param>
/// <param name="Sweep">Signed radians, at most a full turn; the length of more is right as well.</param>
public sealed record EllipseCurve(Point2 Center, Point2 Major, Point2 Minor, double StartParameter, double Sweep) : Curve
{
    /// <summary>
    /// Beyond this, radians, a parameter is first brought within one turn: its neighbours lie 1e-10 apart there, and from 1e16 on so far apart that the next axis end may be
    /// the same number again.
    /// </summary>
    private const double LargestPlainParameter = 1e6;

    /// <summary>
    /// Length along the curve, mm, by quadrature from axis end to axis end. A whole quadrant is a·E(1 - b²/a²), E the complete elliptic integral of the second kind (DLMF 19.30).
    /// </summary>
    public override double Length
    {
        get
        {
            double start = Math.Abs(StartParameter) < LargestPlainParameter ? StartParameter : WithinOneTurn(StartParameter);
            double turns = Math.Floor(Math.Abs(Sweep) / (2 * Math.PI));
            if (!(turns > 1))
            {
                return Between(start, start + Sweep);
            }

            // Turn by turn a sweep without sense would never end.
            return (turns * Between(0, 2 * Math.PI)) + Between(start, start + (Sweep % (2 * Math.PI)));
        }
    }

    private double Between(double from, double to)
    {
        (double low, double high) = (Math.Min(from, to), Math.Max(from, to));
        double sum = 0;
        for (double at = low; at < high;)
        {
            double next = Math.Min(high, (Math.Floor(at / (Math.PI / 2)) + 1) * (Math.PI / 2));
            sum += ArcLength.Between(u => (Minor * Math.Cos(u)) - (Major * Math.Sin(u)), at, next);
            at = next;
        }

        return sum;
    }

    private static double WithinOneTurn(double parameter)
    {
        (double sin, double cos) = Turning.SinCos(parameter);
        return Math.Atan2(sin, cos);
    }

    /// <inheritdoc/>
    public override Point2 PointAt(double t)
    {
        (double sin, double cos) = Turning.SinCos(StartParameter + (Sweep * t));
        return Center + (Major * cos) + (Minor * sin);
    }

    /// <inheritdoc/>
    public override Point2 FirstDerivative(double t)
    {
        (double sin, double cos) = Turning.SinCos(StartParameter + (Sweep * t));
        return ((Minor * cos) - (Major * sin)) * Sweep;
    }

    /// <inheritdoc/>
    public override Point2 SecondDerivative(double t)
    {
        (double sin, double cos) = Turning.SinCos(StartParameter + (Sweep * t));
        return ((Major * cos) + (Minor * sin)) * (-Sweep * Sweep);
    }

    /// <inheritdoc/>
    public override Curve Reversed() => this with { StartParameter = StartParameter + Sweep, Sweep = -Sweep };

    /// <inheritdoc/>
    public override Curve Placed(Placement placement) =>
        new EllipseCurve(placement.Apply(Center), placement.Direction(Major), placement.Direction(Minor), StartParameter, Sweep);
}
