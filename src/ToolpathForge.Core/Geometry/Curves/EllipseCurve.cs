namespace ToolpathForge.Geometry;

/// <summary>
/// A piece of an ellipse: centre + Major·cos(u) + Minor·sin(u), u from <paramref name="StartParameter"/> through <paramref name="Sweep"/>.
/// The parameter u is the eccentric angle, not the direction seen from the centre.
/// </summary>
/// <param name="Center">The centre.</param>
/// <param name="Major">One semi-axis as a vector, mm.</param>
/// <param name="Minor">The other semi-axis, square to the first; it may be the longer one, and may lie to either side.</param>
/// <param name="StartParameter">Radians.</param>
/// <param name="Sweep">Signed radians, at most a full turn.</param>
public sealed record EllipseCurve(Point2 Center, Point2 Major, Point2 Minor, double StartParameter, double Sweep) : Curve
{
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
