namespace ToolpathForge.Geometry;

/// <summary>A circular arc, up to a full turn.</summary>
/// <param name="Center">The centre.</param>
/// <param name="Radius">More than 0, mm.</param>
/// <param name="StartAngle">Radians counter-clockwise from X.</param>
/// <param name="Sweep">Signed radians, positive counter-clockwise, at most a full turn.</param>
public sealed record ArcCurve(Point2 Center, double Radius, double StartAngle, double Sweep) : Curve
{
    /// <inheritdoc/>
    public override double Length => Radius * Math.Abs(Sweep);

    /// <inheritdoc/>
    public override Point2 PointAt(double t) => Center + (Turning.Direction(StartAngle + (Sweep * t)) * Radius);

    /// <inheritdoc/>
    public override Point2 FirstDerivative(double t) => Turning.Direction(StartAngle + (Sweep * t)).Left * (Radius * Sweep);

    /// <inheritdoc/>
    public override Point2 SecondDerivative(double t) => Turning.Direction(StartAngle + (Sweep * t)) * (-Radius * Sweep * Sweep);

    /// <inheritdoc/>
    public override Curve Reversed() => new ArcCurve(Center, Radius, StartAngle + Sweep, -Sweep);

    /// <inheritdoc/>
    public override Curve Placed(Placement placement)
    {
        Point2 first = placement.Direction(Point2.Direction(StartAngle));
        return new ArcCurve(placement.Apply(Center), Radius, first.Angle, placement.Mirrored ? -Sweep : Sweep);
    }
}
