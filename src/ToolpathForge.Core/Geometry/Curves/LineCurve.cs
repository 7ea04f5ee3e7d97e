namespace ToolpathForge.Geometry;

/// <summary>A straight line between two points.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
public sealed record LineCurve(Point2 From, Point2 To) : Curve
{
    /// <inheritdoc/>
    public override double Length => From.DistanceTo(To);

    /// <inheritdoc/>
    public override Point2 PointAt(double t) => From.Towards(To, t);

    /// <inheritdoc/>
    public override Point2 FirstDerivative(double t) => To - From;

    /// <inheritdoc/>
    public override Point2 SecondDerivative(double t) => default;

    /// <inheritdoc/>
    public override Curve Reversed() => new LineCurve(To, From);

    /// <inheritdoc/>
    public override Curve Placed(Placement placement) => new LineCurve(placement.Apply(From), placement.Apply(To));
}
